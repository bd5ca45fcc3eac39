import react from '@vitejs/plugin-react';
import { defineConfig } from 'vite';

/** Our own packages only define things; what a page does not use of them need not be in it. */
const treeshake = {
  moduleSideEffects: (id: string) => !/\/(engine|units|records|papers)\/[^?]*\.ts$/.test(id),
};

export default defineConfig({
  plugins: [react()],
  server: {
    host: '127.0.0.1',
    port: 4750,
    // Where scripts/dev.mjs has started the service.
    proxy: { '/api': process.env.FALLWRIGHT_API ?? 'http://127.0.0.1:4760' },
  },
  preview: { host: '127.0.0.1' },
  worker: { format: 'es', rolldownOptions: { treeshake } },
  build: {
    rolldownOptions: { treeshake },
    target: 'es2023',
    // Fonts stay files: the server's policy allows none in data URLs, and files are cached on their own.
    assetsInlineLimit: 0,
  },
});
