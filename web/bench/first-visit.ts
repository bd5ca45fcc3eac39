/** What a first visit costs: the JavaScript that is fetched before anything is touched, and the time to a first answer. */
import { gzipSync } from 'node:zlib';
import type { Workshop } from './browser.ts';

/** How much slower the processor is made. */
export const SLOWED = 4;

/** Bytes of JavaScript, gzipped, that an address fetches before anything is touched. */
export async function scriptBytes(workshop: Workshop, address: string): Promise<number> {
  const page = await workshop.context.newPage();
  const sizes = new Map<string, Promise<number>>();
  page.on('response', (response) => {
    const url = response.url();
    if (!/\.js$/.test(new URL(url).pathname)) return;
    sizes.set(
      url,
      response.body().then((body) => gzipSync(body, { level: 9 }).length),
    );
  });
  await page.goto(address, { waitUntil: 'networkidle' });
  await page.waitForTimeout(1000);
  const bytes = (await Promise.all(sizes.values())).reduce((sum, size) => sum + size, 0);
  await page.close();
  return bytes;
}

export interface FirstAnswer {
  /** From the start of the navigation to the answer painted. */
  readonly painted: number;
  /** The part of it in which the worker was started and at work. */
  readonly worker: number;
}

/** Opens a place with nothing in the cache and the page's thread slowed. */
export async function firstAnswer(workshop: Workshop, address: string): Promise<FirstAnswer> {
  const page = await workshop.context.newPage();
  const session = await workshop.context.newCDPSession(page);
  await session.send('Network.setCacheDisabled', { cacheDisabled: true });
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOWED });
  await page.goto(address);
  await page.waitForFunction(() => window.listening.firstAnswer !== undefined);
  const { first, asked } = await page.evaluate(() => ({
    first: window.listening.firstAnswer,
    asked: window.listening.asked.find(({ what }) => what === 'answer'),
  }));
  await page.close();
  if (first === undefined || asked?.answered === undefined) throw new Error('No answer came.');
  return { painted: first.painted, worker: asked.answered - asked.posted };
}
