/** Browser tests: the built app, given out by the real server, in the Chromium of this machine. */
import { join } from 'node:path';
import { defineConfig } from '@playwright/test';
import { CHROMIUM_FLAGS, CHROMIUM_HELP, findChromium } from '../scripts/find-chromium.mjs';

const executablePath = findChromium();
if (executablePath === undefined) throw new Error(`Browser tests need Chromium. ${CHROMIUM_HELP}`);

/** Away from the port of `npm start`, so that a running workshop is not disturbed. */
const port = process.env.FALLWRIGHT_TEST_PORT ?? '4790';
const baseURL = `http://127.0.0.1:${port}/`;

export default defineConfig({
  testDir: 'tests',
  outputDir: 'test-results',
  fullyParallel: true,
  forbidOnly: process.env.CI === 'true',
  retries: 0,
  workers: 2,
  // Judgement: a page that is answered in two seconds takes ten on a machine that is busy with other tests.
  timeout: 90_000,
  expect: { timeout: 20_000 },
  reporter: 'list',
  use: {
    baseURL,
    launchOptions: { executablePath, args: CHROMIUM_FLAGS },
    screenshot: 'only-on-failure',
    // Each test asks the server, not what an earlier page kept; offline.spec.ts allows it.
    serviceWorkers: 'block',
  },
  projects: [
    { name: 'desk', use: { viewport: { width: 1280, height: 800 } } },
    {
      name: 'phone',
      grepInvert: /@any-width/,
      use: { viewport: { width: 360, height: 740 }, hasTouch: true, isMobile: true },
    },
  ],
  webServer: {
    command: `"${process.execPath}" "${join(import.meta.dirname, '..', 'server', 'main.ts')}" --port ${port}`,
    url: `${baseURL}api/health`,
    reuseExistingServer: false,
    timeout: 20_000,
  },
});
