/** How the flow of a source was measured: each measurement with its own readings, as they stand in the notebook. */
import * as z from 'zod/mini';
import { choice, coefficient, fields, oneOrMore, quantity, words } from './fields.ts';

export const GAUGING_METHODS = ['bucket', 'v-notch', 'rectangular weir', 'float', 'drop'] as const;

const time = quantity('time', {
  called: 'the time',
  is: 'how long it took: a filling, a float’s way, a drop of the surface',
});

export const gaugingFields = fields(
  {
    method: choice(GAUGING_METHODS, {
      called: 'the method',
      is: 'how the flow was measured, which decides the other fields',
    }),
    volume: z.exactOptional(
      quantity('volume', { called: 'the volume', is: 'what the container holds up to its mark' }),
    ),
    times: z.exactOptional(
      oneOrMore(time, {
        called: 'the times',
        is: 'each time that was taken, such as [42 s, 44.5 s, 43 s]',
      }),
    ),
    time: z.exactOptional(time),
    angle: z.exactOptional(
      quantity('angle', {
        called: 'the angle',
        is: 'the angle between the two edges of the notch',
      }),
    ),
    head: z.exactOptional(
      oneOrMore(
        quantity('waterDepth', {
          called: 'the head',
          is: 'the height of the still surface above the crest, or above the point of the notch',
        }),
        { called: 'the head', is: 'each head that was read, such as [62 mm, 61 mm]' },
      ),
    ),
    crestHeight: z.exactOptional(
      quantity('depth', {
        called: 'the height of the crest',
        is: 'the height of the crest, or of the point of the notch, above the bed before it',
      }),
    ),
    channelWidth: z.exactOptional(
      quantity('depth', {
        called: 'the width of the channel',
        is: 'how wide the channel or pool before the weir is',
      }),
    ),
    freeDrop: z.exactOptional(
      quantity('depth', {
        called: 'the free drop',
        is: 'how far the water below the weir stands under its crest',
      }),
    ),
    width: z.exactOptional(
      quantity('depth', {
        called: 'the width',
        is: 'how wide the crest of the weir is, or the stream where floats pass',
      }),
    ),
    length: z.exactOptional(
      quantity('pipeLength', { called: 'the length', is: 'the measured way of the floats' }),
    ),
    depths: z.exactOptional(
      oneOrMore(
        quantity('depth', { called: 'the depth', is: 'the depth in the middle of a strip' }),
        {
          called: 'the depths',
          is: 'the depths in the middle of equal strips across the stream, such as [0.1 m, 0.15 m]',
        },
      ),
    ),
    coefficient: z.exactOptional(
      coefficient({
        called: 'the coefficient',
        is: 'mean speed of the water over that of the floats, such as 0.85',
      }),
    ),
    area: z.exactOptional(
      quantity('surfaceArea', {
        called: 'the area',
        is: 'the surface of the store that drops, or the section of the stream where floats pass',
      }),
    ),
    drop: z.exactOptional(
      quantity('waterDepth', { called: 'the drop', is: 'how far the surface of the store moved' }),
    ),
    date: z.exactOptional(words({ called: 'the date', is: 'when it was measured' })),
    by: z.exactOptional(words({ called: 'by', is: 'who measured it' })),
    note: z.exactOptional(words({ called: 'the note', is: 'anything worth keeping' })),
  },
  {
    called: 'the gauging',
    is: 'one measurement of the flow, such as { method: bucket, volume: 10 L, times: [42 s, 44.5 s, 43 s] }',
  },
);

export type GaugingForm = z.output<typeof gaugingFields>;
export type GaugingMethod = GaugingForm['method'];

export const gaugingField = oneOrMore(gaugingFields, {
  called: 'the gauging',
  is: 'the measurements of the flow, such as [ { method: bucket, volume: 10 L, times: [42 s, 44.5 s, 43 s] } ]',
});
