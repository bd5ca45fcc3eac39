/** Where the water comes from: a flow that never changes, or a store that can be drawn down. */
import * as z from 'zod/mini';
import { choice, fields, quantity } from './fields.ts';
import { gaugingField } from './gauging-fields.ts';
import { byMonth } from './month-fields.ts';

export const STORES = ['bucket', 'tank', 'spring box', 'pool'] as const;
export const INTAKES = ['open end', 'sharp edge', 'bell mouth', 'strainer', 'foot valve'] as const;

const flow = quantity('sourceFlow', {
  called: 'the flow of the source',
  is: 'what the source yields, or the word plenty when it gives more than any ram could take',
});

/** `plenty` stands for a stream that no ram can empty. */
const flowOrPlenty = z.union([z.literal('plenty'), flow], {
  error: ({ input }) =>
    typeof input === 'number'
      ? undefined
      : 'The flow of the source cannot be read. Write it like 14 L/min or 3.7 gpm, or write plenty.',
});

const yieldByMonth = byMonth(
  (name) =>
    quantity('sourceFlow', {
      called: `the yield in ${name}`,
      is: 'what the source yields in this month, or what runs into the store',
    }),
  {
    called: 'the months of the source',
    is: 'its yield in each month that differs, such as { jul: 6 L/min, aug: 5 L/min }',
  },
);

export const sourceFields = fields(
  {
    flow: z.exactOptional(flowOrPlenty),
    gauging: z.exactOptional(gaugingField),
    drySeason: z.exactOptional(
      quantity('sourceFlow', {
        called: 'the dry-season flow',
        is: 'what the source yields in the driest time, which counts when it is less than the flow',
      }),
    ),
    share: z.exactOptional(
      quantity('share', {
        called: 'the share',
        is: 'how much of the flow may be taken, as the owner or the local authority allows',
      }),
    ),
    store: z.exactOptional(
      choice(STORES, {
        called: 'the store',
        is: 'what holds the water, when it can be drawn down',
      }),
    ),
    volume: z.exactOptional(
      quantity('volume', {
        called: 'the volume of the store',
        is: 'how much water lies above the intake when the store is full',
      }),
    ),
    area: z.exactOptional(
      quantity('surfaceArea', {
        called: 'the surface of the store',
        is: 'the area of its water surface',
      }),
    ),
    depth: z.exactOptional(
      quantity('depth', {
        called: 'the depth over the intake',
        is: 'how deep the intake lies when the store is full',
      }),
    ),
    inflow: z.exactOptional(
      quantity('sourceFlow', { called: 'the inflow', is: 'what runs into the store all the time' }),
    ),
    months: z.exactOptional(yieldByMonth),
    intake: z.exactOptional(
      choice(INTAKES, { called: 'the intake', is: 'how the drive line begins' }),
    ),
  },
  {
    called: 'the source',
    is: 'where the water comes from, such as { flow: 14 L/min } or { store: tank, volume: 1000 L, inflow: 3 L/min }',
  },
);

export type SourceForm = z.output<typeof sourceFields>;
