/**
 * The range file, `fallwright: range@1`: the rams that one maker builds, each with how it can be set up and every earlier revision.
 *
 * A ram is never silently changed. What a site was answered with stays in this file under its revision, written out whole: were
 * it told as a difference, changing the newest would change the others.
 */

import { quoted } from '@fallwright/units';
import * as z from 'zod/mini';
import { formatField } from '../format-field.ts';
import { priceField } from '../prices/money.ts';
import { addProblem, coefficient, fields, oneOrMore, quantity, words } from '../site/fields.ts';
import {
  forceOpen,
  forceShut,
  mass,
  plainRamField,
  stroke,
  weight,
  weightInWater,
} from '../site/ram-fields.ts';

export const RANGE_FORMAT = 'range@1';

/** Judgement: an id stands in file names and beside every answer. */
const LONGEST_ID = 40;
const ID = /^[a-z0-9]+(-[a-z0-9]+)*$/;

const id = z.pipe(
  words({
    called: 'the id',
    is: 'how files name this ram for ever: small letters, figures and -, such as swallow-25',
  }),
  z.transform((written, payload): string => {
    if (ID.test(written) && written.length <= LONGEST_ID) return written;
    addProblem(
      payload,
      'wrongForm',
      `${quoted(written)} cannot be an id. Use small letters, figures and -, at most ${LONGEST_ID} of them, such as swallow-25.`,
      written,
    );
    return z.NEVER;
  }),
);

/** What a tuning changes on the waste valve. */
const changes = {
  stroke: z.exactOptional(stroke),
  weight: z.exactOptional(weight),
  weightInWater: z.exactOptional(weightInWater),
  mass: z.exactOptional(mass),
  forceOpen: z.exactOptional(forceOpen),
  forceShut: z.exactOptional(forceShut),
};

const tuning = fields(
  {
    name: words({
      called: 'the name of the tuning',
      is: 'how people call this way of setting it up',
    }),
    ...changes,
  },
  {
    called: 'the tuning',
    is: 'one way of setting the ram up, such as { name: long stroke, stroke: 4 mm, weight: 120 g }',
  },
);

const spring = fields(
  {
    name: words({ called: 'the name of the spring', is: 'how people call this spring' }),
    forceOpen,
    forceShut: z.exactOptional(forceShut),
    mass: z.exactOptional(mass),
  },
  {
    called: 'the spring',
    is: 'a spring that can be fitted, such as { name: soft, forceOpen: 1.2 N }',
  },
);

const strokes = fields(
  {
    least: quantity('stroke', { called: 'the least stroke', is: 'the shortest it can be set to' }),
    most: quantity('stroke', { called: 'the most stroke', is: 'the longest it can be set to' }),
    steps: coefficient({
      called: 'the number of steps',
      is: 'how many strokes to try from least to most, both of them included',
    }),
  },
  { called: 'the range of strokes', is: 'such as { least: 2.4 mm, most: 4 mm, steps: 3 }' },
);

const settings = fields(
  {
    stroke: z.exactOptional(strokes),
    weights: z.exactOptional(
      oneOrMore(weight, {
        called: 'the list of weights',
        is: 'what the moving parts weigh in air with each weight that can be fitted, such as [95 g, 120 g]',
      }),
    ),
    springs: z.exactOptional(
      oneOrMore(spring, {
        called: 'the list of springs',
        is: 'the springs that can be fitted, such as [ { name: soft, forceOpen: 1.2 N } ]',
      }),
    ),
  },
  {
    called: 'the settings',
    is: 'strokes, and weights or springs, of which every pair is a tuning',
  },
);

/** A ram as it is, or was, at one revision. */
const revisionShape = {
  revision: z.exactOptional(
    coefficient({
      called: 'the revision',
      is: 'which revision this is, counted from 1; 1 when left out',
    }),
  ),
  date: z.exactOptional(words({ called: 'the date', is: 'since when it is made so' })),
  change: z.exactOptional(
    words({ called: 'the change', is: 'what differs from the revision before' }),
  ),
  name: words({ called: 'the name of the ram', is: 'how people call it' }),
  ram: plainRamField,
  tunings: z.exactOptional(
    oneOrMore(tuning, {
      called: 'the list of tunings',
      is: 'the ways of setting it up, each with a name',
    }),
  ),
  settings: z.exactOptional(settings),
  serials: z.exactOptional(
    oneOrMore(
      words({
        called: 'the serial number',
        is: 'a serial number, or from one to another: S25-031 to S25-040',
      }),
      { called: 'the list of serial numbers', is: 'those built so, such as [S25-031 to S25-040]' },
    ),
  ),
};

const detailShape = {
  mass: z.exactOptional(quantity('mass', { called: 'the mass', is: 'what the whole ram weighs' })),
  price: z.exactOptional(
    priceField({ called: 'the price', is: 'what one ram costs, ready to bolt down' }),
  ),
  leadTime: z.exactOptional(
    words({ called: 'the lead time', is: 'how long after the order it is ready, such as 3 weeks' }),
  ),
  setUp: z.exactOptional(
    quantity('time', {
      called: 'the time to set it up',
      is: 'the work to set one down, join it up and start it',
    }),
  ),
  remarks: z.exactOptional(words({ called: 'the remarks', is: 'anything worth keeping' })),
};

const earlierRevision = fields(revisionShape, {
  called: 'the earlier revision',
  is: 'the ram as it was, written out whole: revision, name, ram and tunings',
});

const rangeRam = fields(
  {
    id,
    ...revisionShape,
    ...detailShape,
    retired: z.exactOptional(
      z
        .boolean({ error: () => 'Whether it is retired is told by true or false: retired: true.' })
        .register(z.globalRegistry, {
          description:
            'True for a ram that is no longer made: it stays in the file and is not proposed.',
        }),
    ),
    earlier: z.exactOptional(
      oneOrMore(earlierRevision, {
        called: 'the list of earlier revisions',
        is: 'the ram as it was, the latest first',
      }),
    ),
  },
  {
    called: 'the ram',
    is: 'a ram with its id and its name, such as { id: swallow-25, name: Swallow 25, ram: DN25 }',
  },
);

export const rangeSchema = fields(
  {
    fallwright: formatField(RANGE_FORMAT),
    name: z.exactOptional(words({ called: 'the name', is: 'how people call this range' })),
    maker: z.exactOptional(words({ called: 'the maker', is: 'who builds these rams' })),
    notes: z.exactOptional(words({ called: 'the notes', is: 'anything worth keeping' })),
    rams: oneOrMore(rangeRam, {
      called: 'the list of rams',
      is: 'the rams that are made, such as [ { id: swallow-25, name: Swallow 25, ram: DN25 } ]',
    }),
  },
  { called: 'the range', is: 'fields such as maker and rams' },
);

export type Range = z.output<typeof rangeSchema>;
/** One ram of a range: its newest revision, with the earlier ones. */
export type RangeRam = Range['rams'][number];
/** A ram at one revision. */
export type RamRevision = z.output<typeof earlierRevision>;
export type TuningForm = z.output<typeof tuning>;
export type SettingsForm = z.output<typeof settings>;
