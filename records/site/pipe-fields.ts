/** One length of pipe in a line: which pipe, how long, how it is laid and held, what air and which fittings are in it. */
import { findPipe } from '@fallwright/engine';
import { quoted, readQuantity } from '@fallwright/units';
import * as z from 'zod/mini';
import type { Given } from '../given.ts';
import { addProblem, choice, fields, oneOrMore, orList, quantity, words } from './fields.ts';
import { fittingLoss } from './fitting-words.ts';
import { MATERIAL_WORDS, materialCalled } from './materials.ts';

const PIPE_IS =
  'a name from the tables, such as PE100 SDR11 25 (list them with: fallwright pipes), or material, bore and wall';

/** Judgement: twice the longest name in the tables. */
const LONGEST_NAME = 80;

/** The name of a table pipe, as the person wrote it. */
const pipeName = z.pipe(
  words({ called: 'the pipe', is: PIPE_IS }),
  z.transform((name, payload): string => {
    const found = findPipe(name.slice(0, LONGEST_NAME));
    if (found.ok && name.length <= LONGEST_NAME) return name;
    const nearest = found.ok ? [] : found.suggestions.slice(0, 3);
    const advice =
      nearest.length > 0
        ? `Did you mean ${orList(nearest)}? Or spell it out`
        : 'Spell it out instead';
    addProblem(
      payload,
      'unknownWord',
      `No pipe in the tables is called ${quoted(name)}. ${advice}: { material: PVC hose, bore: 12.7 mm, wall: 3 mm, length: 30 m }.`,
      name,
    );
    return z.NEVER;
  }),
);

const materialName = z.pipe(
  words({ called: 'the material', is: `what the pipe is made of: ${orList(MATERIAL_WORDS)}` }),
  z.transform((written, payload): string => {
    if (materialCalled(written)) return written;
    addProblem(
      payload,
      'unknownWord',
      `${quoted(written)} is no material we know. Write ${orList(MATERIAL_WORDS)}.`,
      written,
    );
    return z.NEVER;
  }),
);

const fittingEntry = z.pipe(
  words({
    called: 'the fitting',
    is: 'a fitting, such as elbow, 2 x bend 45, ball valve, or its loss coefficient: K 1.5',
  }),
  z.transform((written, payload): string => {
    const read = fittingLoss(written.slice(0, LONGEST_NAME));
    if (read.ok && written.length <= LONGEST_NAME) return written;
    const nearest = read.ok ? '' : orList(read.suggestions.slice(0, 3));
    addProblem(
      payload,
      'unknownWord',
      `No fitting is called ${quoted(written)}. ${nearest ? `Did you mean ${nearest}? Or write` : 'Write'} its loss coefficient: K 1.5.`,
      written,
    );
    return z.NEVER;
  }),
);

/** Air caught in one place. */
export interface CaughtAir {
  readonly volume: Given;
  /** Along this pipe from its upper end; its middle when absent. */
  readonly at?: Given;
}

const airText = z.pipe(
  words({ called: 'the air', is: 'air caught in the pipe and where, such as 10 mL at 6 m' }),
  z.transform((written, payload): CaughtAir => {
    const [volumeText = '', atText] = written.split(/\s+at\s+/i);
    const volume = readQuantity(volumeText, 'smallVolume', 'the caught air');
    const at =
      atText === undefined
        ? undefined
        : readQuantity(atText, 'pipeLength', 'the place of the caught air');
    for (const read of [volume, at]) {
      if (read && !read.ok) {
        addProblem(
          payload,
          'wrongForm',
          `${read.problems[0]?.message} Air is written like 10 mL at 6 m.`,
          written,
        );
      }
    }
    if (!volume.ok || (at && !at.ok)) return z.NEVER;
    return {
      volume: { ...volume.value, origin: 'stated' },
      ...(at && { at: { ...at.value, origin: 'stated' as const } }),
    };
  }),
);

const airMap = fields(
  {
    volume: quantity('smallVolume', {
      called: 'the volume of the air',
      is: 'how much air is caught',
    }),
    at: z.exactOptional(
      quantity('pipeLength', {
        called: 'the place of the air',
        is: 'how far along this pipe from its upper end',
      }),
    ),
  },
  { called: 'the air', is: 'air caught in the pipe and where, such as 10 mL at 6 m' },
);

const profilePoint = fields(
  {
    at: quantity('pipeLength', {
      called: 'the place of the point',
      is: 'how far along this pipe from its upper end',
    }),
    height: quantity('elevation', {
      called: 'the height of the point',
      is: 'how high it lies above the waste valve’s outlet',
    }),
  },
  {
    called: 'the point',
    is: 'a place on the pipe and its height, such as { at: 6 m, height: 1.2 m }',
  },
);

const pipeSpelledOut = {
  material: z.exactOptional(materialName),
  bore: z.exactOptional(
    quantity('bore', { called: 'the bore', is: 'the inside width of the pipe' }),
  ),
  wall: z.exactOptional(
    quantity('bore', { called: 'the wall', is: 'the thickness of the pipe’s wall' }),
  ),
  roughness: z.exactOptional(
    quantity('bore', { called: 'the roughness', is: 'the height of the wall’s roughness' }),
  ),
  rating: z.exactOptional(
    quantity('pressure', { called: 'the rating', is: 'the pressure the pipe may carry for years' }),
  ),
};

const pipeMap = fields(pipeSpelledOut, { called: 'the pipe', is: PIPE_IS });

/** A length of pipe, from its upper end to its lower one. */
export const pipeLengthFields = fields(
  {
    pipe: z.exactOptional(
      z.union([pipeName, pipeMap], { error: () => `The pipe cannot be read. Write ${PIPE_IS}.` }),
    ),
    ...pipeSpelledOut,
    length: quantity('pipeLength', {
      called: 'the length',
      is: 'how long this pipe is, measured along it',
    }),
    fittings: z.exactOptional(
      oneOrMore(fittingEntry, {
        called: 'the list of fittings',
        is: 'bends, valves and the like in this pipe, such as [elbow, ball valve]',
      }),
    ),
    held: z.exactOptional(
      choice(['buried', 'clamped', 'at the upper end', 'loose'], {
        called: 'how the pipe is held',
        is: 'how the pipe is held, which decides how far its wall gives',
      }),
    ),
    laid: z.exactOptional(
      choice(['straight', 'over a crest'], {
        called: 'how the pipe is laid',
        is: 'straight, or over a crest where air gathers',
      }),
    ),
    air: z.exactOptional(
      oneOrMore(
        z.union([airText, airMap], {
          error: () => 'The air cannot be read. Write it like 10 mL at 6 m.',
        }),
        { called: 'the air', is: 'air caught in the pipe and where, such as 10 mL at 6 m' },
      ),
    ),
    vents: z.exactOptional(
      oneOrMore(
        quantity('pipeLength', {
          called: 'the place of the vent',
          is: 'how far along this pipe from its upper end the vent stands',
        }),
        {
          called: 'the list of vents',
          is: 'cocks or air valves that let the air out of a crest, by their places, such as [6 m]',
        },
      ),
    ),
    freeAir: z.exactOptional(
      quantity('share', {
        called: 'the free air',
        is: 'small bubbles spread along the pipe, as a share of its volume at open-air pressure',
      }),
    ),
    profile: z.exactOptional(
      oneOrMore(profilePoint, {
        called: 'the profile',
        is: 'points along the pipe with their heights, such as [{ at: 6 m, height: 1.2 m }]',
      }),
    ),
  },
  {
    called: 'this length of pipe',
    is: 'a pipe and its length, such as { pipe: PE100 SDR11 25, length: 14 m }',
  },
);

export type PipeLength = z.output<typeof pipeLengthFields>;
