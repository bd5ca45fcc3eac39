/** The gallery: every state of every screen, at the phone's and the desk's width, by day and by night. */
import { defineConfig } from '@playwright/test';
import tests from './playwright.config.ts';

const widths = { desk: 1280, phone: 360 } as const;

export default defineConfig({
  ...tests,
  testDir: 'tests/gallery',
  testMatch: '*.shots.ts',
  timeout: 60_000,
  projects: (['desk', 'phone'] as const).flatMap((size) =>
    (['paper', 'night'] as const).map((theme) => ({
      name: `${widths[size]}-${theme}`,
      use: {
        viewport: { width: widths[size], height: 800 },
        colorScheme: theme === 'night' ? ('dark' as const) : ('light' as const),
        locale: 'en-GB',
      },
    })),
  ),
});
