/**
 * The test record, `fallwright: test@1`: one ram on one rig, and what was read at each setting.
 *
 * Pipes, ram and source are those of the site file, so that a rig is written as a place is.
 */
import * as z from 'zod/mini';
import { formatField } from '../format-field.ts';
import { addProblem, choice, fields, oneOrMore, quantity, words } from '../site/fields.ts';
import { heightField } from '../site/height-fields.ts';
import { pipeLengthFields } from '../site/pipe-fields.ts';
import { ramField } from '../site/ram-fields.ts';
import { sourceFields } from '../site/source-fields.ts';

export const TEST_FORMAT = 'test@1';

/** Most of anything that a person counts at a bench. */
const MOST_COUNTED = 100_000;

function count(called: string, is: string) {
  const words = `${called.charAt(0).toUpperCase()}${called.slice(1)} must be a whole number from 0 to ${MOST_COUNTED}: ${is}.`;
  return z
    .int({ error: () => words })
    .check(z.gte(0, { error: () => words }), z.lte(MOST_COUNTED, { error: () => words }))
    .register(z.globalRegistry, { description: `${is.charAt(0).toUpperCase()}${is.slice(1)}.` });
}

const rig = fields(
  {
    fall: heightField({
      called: 'the fall',
      is: 'the height of the supply’s surface above the waste valve’s outlet',
    }),
    source: z.exactOptional(sourceFields),
    drive: oneOrMore(pipeLengthFields, {
      called: 'the drive line',
      is: 'the pipes from the supply to the ram, such as [ { pipe: PE100 SDR11 25, length: 6 m } ]',
    }),
    delivery: z.exactOptional(
      oneOrMore(pipeLengthFields, {
        called: 'the delivery line',
        is: 'the pipes from the ram to the outlet; left out where the delivery is throttled at the ram',
      }),
    ),
    temperature: z.exactOptional(
      quantity('temperature', { called: 'the temperature', is: 'the temperature of the water' }),
    ),
    altitude: z.exactOptional(
      quantity('altitude', { called: 'the altitude', is: 'the height of the bench above the sea' }),
    ),
  },
  {
    called: 'the rig',
    is: 'what the ram was tested on, such as { fall: 2 m, drive: { pipe: PE100 SDR11 25, length: 6 m } }',
  },
);

const instrument = (called: string) =>
  z.exactOptional(
    z.union(
      [
        words({ called, is: 'what it was read with' }),
        fields(
          {
            name: z.exactOptional(words({ called, is: 'what it was read with' })),
            goodTo: quantity('share', {
              called: 'what the instrument is good to',
              is: 'the standard uncertainty of one reading, as a share of it',
            }),
          },
          { called, is: 'an instrument, such as { name: 10 L bucket, goodTo: 1 % }' },
        ),
      ],
      { error: () => `Write ${called} as words, or as { name: 10 L bucket, goodTo: 1 % }.` },
    ),
  );

const instruments = fields(
  {
    beats: instrument('the instrument for the beats'),
    delivered: instrument('the instrument for the delivered flow'),
    wasted: instrument('the instrument for the wasted flow'),
    supply: instrument('the instrument for the supply flow'),
    vesselPressure: instrument('the gauge on the vessel'),
    peakPressure: instrument('the instrument for the peak pressure'),
    fall: instrument('the instrument for the fall'),
    lift: instrument('the instrument for the lift'),
  },
  {
    called: 'the list of instruments',
    is: 'what each quantity was read with, such as { delivered: { name: 1 L jug, goodTo: 1 % } }',
  },
);

const flow = (called: string, is: string) =>
  z.exactOptional(
    oneOrMore(
      z.union(
        [
          quantity('sourceFlow', { called, is }),
          fields(
            {
              volume: quantity('volume', {
                called: 'the volume',
                is: 'what was caught each time',
              }),
              times: oneOrMore(
                quantity('time', { called: 'the time', is: 'how long it took to catch it' }),
                { called: 'the times', is: 'each time that was taken, such as [41 s, 42 s]' },
              ),
            },
            { called, is: 'a flow, such as 1.5 L/min, or { volume: 1 L, times: [41 s, 42 s] }' },
          ),
        ],
        {
          error: ({ input }) =>
            typeof input === 'number'
              ? undefined
              : `Write ${called} like 1.5 L/min, or as caught: { volume: 1 L, times: [41 s, 42 s] }.`,
        },
      ),
      { called, is: `${is}: one reading or several, such as [1.5 L/min, 1.52 L/min]` },
      'sourceFlow',
    ),
  );

const pressure = (called: string, is: string) =>
  z.exactOptional(oneOrMore(quantity('height', { called, is }), { called, is }, 'height'));

const files = (called: string, is: string) =>
  z.exactOptional(oneOrMore(words({ called, is }), { called, is }));

const reading = fields(
  {
    lift: z.exactOptional(
      quantity('height', {
        called: 'the lift',
        is: 'the height of the delivery’s outlet above the waste valve’s outlet',
      }),
    ),
    backPressure: z.exactOptional(
      quantity('height', {
        called: 'the back pressure',
        is: 'the pressure that a throttled delivery is held at, in place of a lift',
      }),
    ),
    tuning: z.exactOptional(
      fields(
        {
          stroke: z.exactOptional(
            quantity('stroke', { called: 'the stroke', is: 'the stroke of the waste valve' }),
          ),
          weight: z.exactOptional(
            quantity('weight', {
              called: 'the weight',
              is: 'what the moving parts of the waste valve weigh in air',
            }),
          ),
        },
        {
          called: 'the tuning',
          is: 'what is set otherwise than the ram says, such as { stroke: 3 mm }',
        },
      ),
    ),
    beats: z.exactOptional(
      oneOrMore(
        z.union(
          [
            quantity('beats', { called: 'the beats', is: 'how fast the ram beats' }),
            fields(
              {
                count: count('the count', 'how many beats were counted'),
                times: oneOrMore(
                  quantity('time', { called: 'the time', is: 'how long they took' }),
                  { called: 'the times', is: 'each time that was taken, such as [58 s, 59 s]' },
                ),
              },
              { called: 'the beats', is: 'beats, such as 62/min, or { count: 60, times: [58 s] }' },
            ),
          ],
          {
            error: ({ input }) =>
              typeof input === 'number'
                ? undefined
                : 'Write the beats like 62/min, or as counted: { count: 60, times: [58 s, 59 s] }.',
          },
        ),
        { called: 'the beats', is: 'how fast the ram beats: one reading or several' },
        'beats',
      ),
    ),
    delivered: flow('the delivered flow', 'what reaches the outlet'),
    wasted: flow('the wasted flow', 'what leaves the waste valve'),
    supply: flow('the supply flow', 'what the ram takes from its supply'),
    vesselPressure: pressure('the pressure in the vessel', 'the mean pressure in the air vessel'),
    peakPressure: pressure('the peak pressure', 'the highest pressure in the ram’s body'),
    handStrokes: z.exactOptional(
      count('the number of hand strokes', 'how often it was pushed until it went on alone'),
    ),
    temperature: z.exactOptional(
      quantity('temperature', { called: 'the temperature', is: 'the temperature of the water' }),
    ),
    remarks: z.exactOptional(words({ called: 'the remarks', is: 'anything seen or heard' })),
    photos: files('the photo', 'names of photos'),
    recordings: files('the recording', 'names of sound recordings'),
    logs: files('the log', 'names of pressure logs'),
  },
  {
    called: 'the reading',
    is: 'one setting and what was read at it, such as { lift: 6 m, beats: 62/min, delivered: 1.5 L/min }',
  },
);

/** A day as ISO 8601 writes it; a time may follow. */
const date = z.pipe(
  words({ called: 'the date', is: 'the day of the test, like 2026-08-19' }),
  z.transform((written, payload): string => {
    const [, day = ''] = /^(\d{4}-\d{2}-\d{2})(?:T[\d:.Z+-]+)?$/.exec(written.trim()) ?? [];
    const found = new Date(`${day}T00:00:00Z`);
    if (!Number.isNaN(found.getTime()) && found.toISOString().startsWith(day)) return written;
    addProblem(payload, 'wrongForm', 'Write the date as year, month and day: 2026-08-19.', written);
    return z.NEVER;
  }),
);

export const testSchema = fields(
  {
    fallwright: formatField(TEST_FORMAT),
    name: z.exactOptional(words({ called: 'the name', is: 'what this test is called' })),
    date: z.exactOptional(date),
    by: z.exactOptional(words({ called: 'by', is: 'who tested' })),
    place: z.exactOptional(words({ called: 'the place', is: 'where it was tested' })),
    notes: z.exactOptional(words({ called: 'the notes', is: 'anything worth keeping' })),
    units: z.exactOptional(
      choice(['metric', 'us'], {
        called: 'the units',
        is: 'the units of the answer; those the file is mostly written in when left out',
      }),
    ),
    rig,
    ram: ramField,
    serial: z.exactOptional(
      words({ called: 'the serial number', is: 'the number on the ram that was tested' }),
    ),
    instruments: z.exactOptional(instruments),
    readings: oneOrMore(reading, {
      called: 'the list of readings',
      is: 'settings and what was read at each, such as [ { lift: 6 m, beats: 62/min, delivered: 1.5 L/min } ]',
    }),
  },
  { called: 'the test', is: 'fields such as ram: DN20' },
);

export type BenchTest = z.output<typeof testSchema>;
export type ReadingForm = z.output<typeof reading>;
