import { defineConfig } from 'vitest/config';

export default defineConfig({
  test: {
    include: [
      '{engine,units,records,papers,cli,server,web,checks,examples,scripts}/**/*.test.{ts,tsx}',
    ],
    exclude: ['**/node_modules/**', '**/dist/**'],
    environment: 'node',
    // A child process or a real server may need longer than a sum does.
    testTimeout: 30_000,
  },
});
