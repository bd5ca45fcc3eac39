/** The traces of the Beat leaf with a film of 20,000 frames: drawn when it comes, drawn whole again, and zoomed. */
import type { Workshop } from './browser.ts';

/** Points of each line. The leaf asks for one beat more than it shows, so that half of them are cut off. */
export const POINTS = 20_000;
const FILMED = 2 * POINTS;
const ZOOMED_FOR = 3000;

export interface TraceTimes {
  /** Points that each line has. */
  readonly points: number;
  /** From the film's arrival to the whole leaf painted: traces, ram in section, drive line. */
  readonly leaf: number;
  /** From the key that shows all to the traces painted, several times. */
  readonly drawn: readonly number[];
  /** Gaps between frames while the wheel zooms. */
  readonly frames: readonly number[];
}

export async function traceTimes(workshop: Workshop, place: string): Promise<TraceTimes> {
  const page = await workshop.context.newPage();
  await page.addInitScript((frames) => {
    window.listening.filmFrames = frames;
  }, FILMED);
  await page.addInitScript(() => {
    const observer = new MutationObserver(() => {
      if (document.querySelector('.beat-plot .beat-line') === null) return;
      observer.disconnect();
      requestAnimationFrame(() => {
        const { port1, port2 } = new MessageChannel();
        port1.onmessage = () => performance.mark('leaf painted');
        port2.postMessage(null);
      });
    });
    observer.observe(document, { childList: true, subtree: true });
  });
  await page.goto(`${await workshop.addressOf(place)}/beat`);
  await page.waitForFunction(() => performance.getEntriesByName('leaf painted').length > 0);
  const leaf = await page.evaluate(
    () =>
      (performance.getEntriesByName('leaf painted')[0]?.startTime ?? 0) -
      (window.listening.filmArrived ?? 0),
  );
  const scrubber = page.locator('.beat input[type=range]');
  const points = Number(await scrubber.getAttribute('max')) + 1;
  await page.locator('.beat-plot').scrollIntoViewIfNeeded();
  await scrubber.focus();
  const drawn: number[] = [];
  for (let i = 0; i < 20; i++) {
    await page.keyboard.press('+');
    await page.waitForTimeout(100);
    await page.evaluate(() => {
      const line = document.querySelector('.beat-plot .beat-line');
      if (line === null) throw new Error('there is no trace');
      window.addEventListener(
        'keydown',
        ({ timeStamp }) => {
          const observer = new MutationObserver(() => {
            observer.disconnect();
            requestAnimationFrame(() => {
              const { port1, port2 } = new MessageChannel();
              port1.onmessage = () =>
                performance.measure('drawn', { start: timeStamp, end: performance.now() });
              port2.postMessage(null);
            });
          });
          observer.observe(line, { attributes: true });
        },
        { capture: true, once: true },
      );
    });
    await page.keyboard.press('0');
    await page.waitForFunction(
      (count) => performance.getEntriesByName('drawn').length > count,
      drawn.length,
    );
    drawn.push(
      await page.evaluate(() => performance.getEntriesByName('drawn').at(-1)?.duration ?? 0),
    );
  }
  const frames = await page.evaluate(zoomWithWheel, ZOOMED_FOR);
  await page.close();
  return { points, leaf, drawn, frames };
}

/** Turns the wheel over the traces at every frame, in for half a second and out again; gives the gaps between frames. */
function zoomWithWheel(duration: number): Promise<number[]> {
  const plot = document.querySelector('.beat-plot');
  if (plot === null) throw new Error('there is no trace');
  const { left, top, width, height } = plot.getBoundingClientRect();
  const gaps: number[] = [];
  return new Promise((resolve) => {
    let last: number | undefined;
    let begun: number | undefined;
    const frame = (now: number): void => {
      begun ??= now;
      if (last !== undefined) gaps.push(now - last);
      last = now;
      if (now - begun > duration) {
        resolve(gaps);
        return;
      }
      const isIn = Math.floor((now - begun) / 500) % 2 === 0;
      plot.dispatchEvent(
        new WheelEvent('wheel', {
          deltaY: isIn ? -20 : 20,
          ctrlKey: true,
          clientX: left + 0.4 * width,
          clientY: top + 0.5 * height,
          bubbles: true,
          cancelable: true,
        }),
      );
      requestAnimationFrame(frame);
    };
    requestAnimationFrame(frame);
  });
}
