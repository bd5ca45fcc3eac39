/** A height above the waste valve's outlet: a quantity, or the readings by which it was measured. */
import { formatQuantity, readQuantity, unitSystemOf } from '@fallwright/units';
import * as z from 'zod/mini';
import type { Given } from '../given.ts';
import {
  type About,
  addProblem,
  fields,
  oneOrMore,
  quantity,
  startOfSentence,
  words,
} from './fields.ts';
import { givensOf } from './givens.ts';
import { HEIGHT_WAYS, heightOf } from './height-of.ts';
import type { HeightReadings } from './height-readings.ts';

const sight = (called: string, is: string) => z.exactOptional(quantity('staff', { called, is }));

const levelRow = fields(
  {
    at: z.exactOptional(words({ called: 'the point', is: 'what the point is called' })),
    back: sight('the back sight', 'the first reading from a new place of the instrument'),
    inter: sight('the intermediate sight', 'a reading on a point beside the way'),
    fore: sight('the fore sight', 'the last reading before the instrument is moved'),
    distance: z.exactOptional(
      quantity('pipeLength', {
        called: 'the distance',
        is: 'the way from the turning point before, beside a fore sight',
      }),
    ),
    note: z.exactOptional(words({ called: 'the note', is: 'anything worth keeping' })),
  },
  {
    called: 'a point of the level book',
    is: 'readings such as { at: peg, fore: 1.633 m, back: 0.655 m }',
  },
);

const BEGINS_WITH_PLUS_MINUS = /^\s*(?:±|\+\s*\/?\s*[-−])\s*/;

/** The ± of one reading, with or without its sign. */
const each = z
  .pipe(
    z.string({ error: () => 'each is the ± of one reading. Write it like ± 2 mm.' }),
    z.transform((written, payload): Given => {
      const read = readQuantity(written.replace(BEGINS_WITH_PLUS_MINUS, ''), 'depth', 'each');
      if (read.ok) return { ...read.value, text: written.trim(), origin: 'stated' };
      for (const { kind, message } of read.problems) {
        addProblem(payload, kind === 'noUnit' ? 'noUnit' : 'badSpread', message, written);
      }
      return z.NEVER;
    }),
  )
  .register(z.globalRegistry, { description: 'The ± of one reading. Write it like ± 2 mm.' });

const altitudes = (way: string) =>
  z.exactOptional(
    oneOrMore(quantity('altitude', { called: 'the height', is: 'a height above the sea' }), {
      called: `the heights by ${way}`,
      is: 'the height of the upper place, then that of the lower, such as [312 m, 288 m]',
    }),
  );

const readings = fields(
  {
    value: z.exactOptional(
      quantity('height', {
        called: 'the height',
        is: 'a height that is used in place of the one that the readings give',
      }),
    ),
    levels: z.exactOptional(
      oneOrMore(levelRow, {
        called: 'the level book',
        is: 'the points on which the staff stood, such as [ { at: water, back: 0.412 m }, { at: ram, fore: 2.3 m } ]',
      }),
    ),
    between: z.exactOptional(
      z
        .array(words({ called: 'the point', is: 'a point of the level book' }), {
          error: () => 'between is a list of two points, the upper one first: [water, ram].',
        })
        .register(z.globalRegistry, {
          description:
            'The two points of the level book between which the height lies, the upper one first.',
        }),
    ),
    hops: z.exactOptional(
      oneOrMore(quantity('staff', { called: 'the hop', is: 'how far one hop rises' }), {
        called: 'the hops',
        is: 'the rises one after the other, such as [1.62 m, 1.58 m, 0.44 m]',
      }),
    ),
    gauge: z.exactOptional(
      quantity('pressure', {
        called: 'the gauge reading',
        is: 'what a gauge at the ram reads with the pipe full and the water still',
      }),
    ),
    class: z.exactOptional(
      quantity('gaugeClass', {
        called: 'the class',
        is: 'the accuracy class on the dial of the gauge, in per cent of its range',
      }),
    ),
    range: z.exactOptional(
      quantity('pressure', { called: 'the range', is: 'the largest pressure on the dial' }),
    ),
    gaugeHeight: z.exactOptional(
      quantity('elevation', {
        called: 'the height of the gauge',
        is: 'the height of the middle of its dial above the waste valve’s outlet',
      }),
    ),
    barometric: altitudes('barometer'),
    satellite: altitudes('satellite'),
    each: z.exactOptional(each),
    date: z.exactOptional(words({ called: 'the date', is: 'when it was measured' })),
    by: z.exactOptional(words({ called: 'by', is: 'who measured it' })),
    note: z.exactOptional(words({ called: 'the note', is: 'anything worth keeping' })),
  },
  { called: 'the readings', is: 'levels, hops, gauge, barometric or satellite' },
);

/** A height as text, as `{ value, origin }`, or as readings. Always a quantity once it is read; readings stay with it. */
export function heightField(about: About) {
  const written = quantity('height', about);
  const measured = z.pipe(
    readings,
    z.transform((read, payload): Given => {
      // A misspelt field is told already, and what it leaves missing is an echo of it.
      if (payload.issues.length > 0) {
        (payload as { aborted?: boolean }).aborted = true;
        return z.NEVER;
      }
      const found = heightOf(read);
      if (found.ok) return givenBy(read, found.value);
      // A height that was written, with a note to it.
      if (read.value && HEIGHT_WAYS.every((way) => read[way] === undefined)) {
        return { ...read.value, readings: read };
      }
      for (const { kind, path, message } of found.faults) {
        addProblem(payload, kind, message, read, path);
      }
      return z.NEVER;
    }),
  );
  return z
    .union([written, measured])
    .register(z.globalRegistry, { description: `${startOfSentence(about.is)}.` });
}

function givenBy(
  read: HeightReadings,
  { height, spread }: { readonly height: number; readonly spread: number },
): Given {
  if (read.value) return { ...read.value, readings: read };
  const system = unitSystemOf(givensOf(read).map(({ given }) => given.text));
  const text = formatQuantity(height, 'height', system, { figures: 4, spread });
  return { value: height, spread, origin: 'measured', text, readings: read };
}
