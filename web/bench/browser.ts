/** The built app, given out by the real server on a free port of this machine, in the Chromium of this machine. */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import type { Browser, BrowserContext, Page } from 'playwright-core';
import { chromium } from 'playwright-core';
import { CHROMIUM_FLAGS, CHROMIUM_HELP, findChromium } from '../../scripts/find-chromium.mjs';
import { listen } from './in-page.ts';

const ROOT = join(import.meta.dirname, '..', '..');

export interface Served {
  readonly address: string;
  readonly stop: () => void;
}

export async function serve(): Promise<Served> {
  const server = spawn(process.execPath, [join(ROOT, 'server', 'main.ts'), '--port', '0'], {
    stdio: ['ignore', 'pipe', 'inherit', 'ipc'],
  });
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    server.stdout?.on('data', (chunk: Buffer) => {
      said += chunk.toString();
      const [, found] = /(http:\S+)/.exec(said) ?? [];
      if (found !== undefined) resolve(found);
    });
    server.once('exit', () => reject(new Error(`The server ended before it was open:\n${said}`)));
  });
  return { address, stop: () => server.kill() };
}

export async function openBrowser(): Promise<Browser> {
  const executablePath = findChromium();
  if (executablePath === undefined) throw new Error(`The bench needs Chromium. ${CHROMIUM_HELP}`);
  return chromium.launch({ executablePath, args: CHROMIUM_FLAGS });
}

export interface Workshop {
  readonly context: BrowserContext;
  /** The address of a place of the demo. */
  readonly addressOf: (place: string) => Promise<string>;
}

/** A browser's profile with the demo workshop in it, as a person has it on the second visit. */
export async function withDemo(browser: Browser, { address }: Served): Promise<Workshop> {
  const context = await browser.newContext({
    locale: 'en-GB',
    viewport: { width: 1280, height: 800 },
    reducedMotion: 'reduce',
  });
  await context.addInitScript(listen);
  const page = await context.newPage();
  await page.goto(address);
  await page.getByRole('button', { name: 'Load the demo workshop' }).click();
  await page.getByRole('link', { name: 'Larkrise spring' }).waitFor();
  const addresses = new Map<string, string>();
  for (const link of await page.getByRole('link').all()) {
    const path = (await link.getAttribute('href')) ?? '';
    if (path.startsWith('/places/')) {
      addresses.set((await link.textContent())?.trim() ?? '', new URL(path, address).href);
    }
  }
  await page.close();
  return {
    context,
    addressOf: async (place) => {
      const found = addresses.get(place);
      if (found === undefined) throw new Error(`The demo workshop has no place called ${place}.`);
      return found;
    },
  };
}

/** Waits until the place is answered and the search for changes is over. */
export async function settled(page: Page): Promise<void> {
  await page.locator('.changes .answer-body:not(.stale)').waitFor();
}
