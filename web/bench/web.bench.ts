/**
 * `npm run bench:web`: how fast the app is in a real browser, against its targets.
 *
 * Prints figures and ratios; asserts nothing, since a machine's speed is not the program's.
 */
import { availableParallelism, loadavg } from 'node:os';
import { buildWebIfStale } from '../../scripts/build-web.mjs';
import { openBrowser, serve, withDemo } from './browser.ts';
import { median, milliseconds, percentile, plainLine, targetLine } from './figures.ts';
import type { FirstAnswer } from './first-visit.ts';
import { firstAnswer, SLOWED, scriptBytes } from './first-visit.ts';
import type { Stroke } from './keystrokes.ts';
import { keystrokes } from './keystrokes.ts';
import type { TraceTimes } from './traces.ts';
import { POINTS, traceTimes } from './traces.ts';

const PLACE = 'Larkrise spring';
/** The place of the demo whose answer takes longest. */
const SLOWEST_PLACE = 'Tarn Hollow';
const VISITS = 5;

const TARGETS = {
  keyToAnswer: 100,
  traceDrawn: 50,
  framesPerSecond: 60,
  scriptKilobytes: 200,
  firstAnswer: 2000,
} as const;

if (!buildWebIfStale()) process.exit(1);
const server = await serve();
const browser = await openBrowser();
try {
  const workshop = await withDemo(browser, server);
  console.log(
    `\n${availableParallelism()} processors, load ${loadavg()[0]?.toFixed(1)} before it began; Chromium ${browser.version()}\n`,
  );
  console.log(
    `${''.padEnd(46)}${'measured'.padStart(10)}${'target'.padStart(12)}${'ratio'.padStart(8)}`,
  );
  tellKeys(PLACE, await keystrokes(workshop, PLACE));
  tellKeys(SLOWEST_PLACE, await keystrokes(workshop, SLOWEST_PLACE));
  tellTraces(await traceTimes(workshop, PLACE));
  const address = await workshop.addressOf(PLACE);
  tellBytes(
    'JavaScript of the list of places, gzipped',
    await scriptBytes(workshop, server.address),
  );
  tellBytes('JavaScript of a place with its answer', await scriptBytes(workshop, address));
  const visits: FirstAnswer[] = [];
  for (let i = 0; i < VISITS; i++) visits.push(await firstAnswer(workshop, address));
  tellFirstAnswer(visits);
  console.log(`\nLoad at the end ${loadavg()[0]?.toFixed(1)}. A ratio below 1 keeps the target.`);
} finally {
  await browser.close();
  server.stop();
}

function tellKeys(place: string, strokes: readonly Stroke[]): void {
  const of = (part: (stroke: Stroke) => number): number[] => strokes.map(part);
  const total = of(({ key, painted }) => painted - key);
  const p95 = percentile(total, 0.95);
  console.log(
    targetLine(
      `Key to new answer, ${place}, p95`,
      milliseconds(p95),
      milliseconds(TARGETS.keyToAnswer),
      p95 / TARGETS.keyToAnswer,
    ),
  );
  const parts: readonly [string, (stroke: Stroke) => number][] = [
    ['from the key to the box', ({ key, input }) => input - key],
    ['from the box to the question', ({ input, asked }) => asked.posted - input],
    ['the worker', ({ asked }) => asked.answered - asked.posted],
    ['from its answer to the page changed', ({ asked, changed }) => changed - asked.answered],
    ['from there to the frame painted', ({ changed, painted }) => painted - changed],
    ['key to all of the answer, pressures too', ({ key, whole }) => whole - key],
  ];
  console.log(plainLine(`median of ${strokes.length} keys`, milliseconds(median(total))));
  for (const [name, part] of parts) {
    console.log(
      `${plainLine(name, milliseconds(median(of(part))))}   p95 ${milliseconds(percentile(of(part), 0.95))}`,
    );
  }
}

function tellTraces({ points, leaf, drawn, frames }: TraceTimes): void {
  const time = median(drawn);
  const perSecond = (1000 * frames.length) / frames.reduce((sum, gap) => sum + gap, 0);
  console.log(
    targetLine(
      `Trace of ${points} points drawn, median`,
      milliseconds(time),
      milliseconds(TARGETS.traceDrawn),
      (time / TARGETS.traceDrawn) * (POINTS / points),
    ),
  );
  console.log(plainLine(`p95 of ${drawn.length} times`, milliseconds(percentile(drawn, 0.95))));
  console.log(plainLine('whole leaf, when the film comes', milliseconds(leaf)));
  console.log(
    targetLine(
      'Zooming it with the wheel, frames a second',
      perSecond.toFixed(1),
      String(TARGETS.framesPerSecond),
      TARGETS.framesPerSecond / perSecond,
    ),
  );
  console.log(
    plainLine(
      `p95 of ${frames.length} gaps between frames`,
      milliseconds(percentile(frames, 0.95)),
    ),
  );
}

function tellBytes(what: string, bytes: number): void {
  const kilobytes = bytes / 1000;
  const { scriptKilobytes } = TARGETS;
  console.log(
    targetLine(
      what,
      `${kilobytes.toFixed(0)} KB`,
      `${scriptKilobytes} KB`,
      kilobytes / scriptKilobytes,
    ),
  );
}

/** The browser slows the page's thread and not its workers, so that the worker's time is counted as often as it says. */
function tellFirstAnswer(visits: readonly FirstAnswer[]): void {
  const slowed = median(visits.map(({ painted, worker }) => painted + (SLOWED - 1) * worker));
  console.log(
    targetLine(
      `First answer, cold, processor slowed ${SLOWED} times`,
      milliseconds(slowed),
      milliseconds(TARGETS.firstAnswer),
      slowed / TARGETS.firstAnswer,
    ),
  );
  console.log(
    plainLine('with the page alone slowed', milliseconds(median(visits.map((v) => v.painted)))),
  );
  console.log(
    plainLine('of it, the worker at full speed', milliseconds(median(visits.map((v) => v.worker)))),
  );
}
