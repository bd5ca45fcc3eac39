/** The ram: a typical one by its nominal size, a typical one with parts of its own, or all of its parts. */
import { TYPICAL_SIZES, type TypicalSize } from '@fallwright/engine';
import { quoted } from '@fallwright/units';
import * as z from 'zod/mini';
import { addProblem, choice, coefficient, fields, orList, quantity, words } from './fields.ts';

/** Nominal sizes in inches. Source: ISO 6708 and ASME B36.10M pair them so (memory). */
export const BY_INCHES: Readonly<Record<string, TypicalSize>> = {
  '1/2': 'DN15',
  '3/4': 'DN20',
  '1': 'DN25',
  '1 1/4': 'DN32',
  '1 1/2': 'DN40',
  '2': 'DN50',
  '2 1/2': 'DN65',
  '3': 'DN80',
  '4': 'DN100',
};

/** `DN20`, `dn 20`, `3/4 in`, `1½"`, `typical DN20`. */
export function typicalSizeCalled(text: string): TypicalSize | undefined {
  const written = text
    .toLowerCase()
    .replace(/^typical\s+/, '')
    .replace(/½/g, ' 1/2')
    .replace(/¼/g, ' 1/4')
    .replace(/¾/g, ' 3/4')
    .replace(/(\d)-(\d)/g, '$1 $2')
    .replace(/\s+/g, ' ')
    .trim();
  const [, number] = /^dn\s*(\d+)$/.exec(written) ?? [];
  if (number !== undefined) {
    const size = `DN${number}`;
    return size in TYPICAL_SIZES ? (size as TypicalSize) : undefined;
  }
  const [, inches] = /^([\d ]*\d(?:\/\d)?)\s*(?:in|inch|inches|")$/.exec(written) ?? [];
  return inches === undefined ? undefined : BY_INCHES[inches];
}

const SIZE_IS = `the nominal size of a typical ram: ${orList(Object.keys(TYPICAL_SIZES))}`;

const typicalSize = z.pipe(
  words({ called: 'the size of the ram', is: SIZE_IS }),
  z.transform((written, payload): string => {
    if (typicalSizeCalled(written)) return written;
    addProblem(
      payload,
      'unknownWord',
      `${quoted(written)} is no size of a typical ram. Write ${orList(Object.keys(TYPICAL_SIZES))}, or its parts.`,
      written,
    );
    return z.NEVER;
  }),
);

export const stroke = quantity('stroke', {
  called: 'the stroke',
  is: 'how far the waste valve travels between shut and open',
});
export const weight = quantity('weight', {
  called: 'the weight',
  is: 'what the moving parts of the waste valve weigh in air, added weights included',
});

export const weightInWater = quantity('weight', {
  called: 'the weight in water',
  is: 'what holds the valve open: the weight of the moving parts under water',
});
export const mass = quantity('mass', {
  called: 'the moving mass',
  is: 'the mass that moves with the disc, when it differs from the weight',
});
export const forceOpen = quantity('force', {
  called: 'the force when open',
  is: 'the force that holds a sprung or swing valve open at its open stop',
});
export const forceShut = quantity('force', {
  called: 'the force when shut',
  is: 'the force towards open when a sprung or swing valve is shut',
});

const wasteValve = fields(
  {
    kind: z.exactOptional(
      choice(['weighted', 'sprung', 'swing'], {
        called: 'the kind of waste valve',
        is: 'what holds the waste valve open: a weight, a spring, or a hinged flap',
      }),
    ),
    seat: z.exactOptional(
      quantity('bore', {
        called: 'the seat',
        is: 'the width of the circle on which the disc seats',
      }),
    ),
    stroke: z.exactOptional(stroke),
    weight: z.exactOptional(weight),
    weightInWater: z.exactOptional(weightInWater),
    mass: z.exactOptional(mass),
    forceOpen: z.exactOptional(forceOpen),
    forceShut: z.exactOptional(forceShut),
    port: z.exactOptional(
      quantity('smallArea', {
        called: 'the port',
        is: 'the free area that the water passes besides the ring between disc and seat',
      }),
    ),
    gap: z.exactOptional(
      quantity('smallArea', {
        called: 'the gap',
        is: 'the free area between the rim of the disc and the chamber round it',
      }),
    ),
    drag: z.exactOptional(
      coefficient({
        called: 'the drag coefficient',
        is: 'the drag of the disc on the velocity in the gap, about 1',
      }),
    ),
    curtainCoefficient: z.exactOptional(
      coefficient(
        {
          called: 'the curtain coefficient',
          is: 'the discharge coefficient of the ring between disc and seat, about 0.7',
        },
        { least: 0.05 },
      ),
    ),
    portCoefficient: z.exactOptional(
      coefficient(
        { called: 'the port coefficient', is: 'the discharge coefficient of the port, about 0.7' },
        { least: 0.05 },
      ),
    ),
  },
  {
    called: 'the waste valve',
    is: 'seat, stroke and weight of the valve that beats, such as { seat: 21 mm, stroke: 2.4 mm, weight: 44 g }',
  },
);

const deliveryValve = fields(
  {
    bore: z.exactOptional(
      quantity('bore', {
        called: 'the bore of the delivery valve',
        is: 'the width of its free opening',
      }),
    ),
    area: z.exactOptional(
      quantity('smallArea', {
        called: 'the area of the delivery valve',
        is: 'its free area, when it is not one round hole',
      }),
    ),
    loss: z.exactOptional(
      coefficient({
        called: 'the loss of the delivery valve',
        is: 'its loss coefficient, about 4',
      }),
    ),
    cracking: z.exactOptional(
      quantity('height', {
        called: 'the cracking head',
        is: 'the head it takes to open the delivery valve',
      }),
    ),
    passage: z.exactOptional(
      quantity('bore', {
        called: 'the passage',
        is: 'the length of the water column between body and vessel',
      }),
    ),
    backFlow: z.exactOptional(
      quantity('smallVolume', {
        called: 'the back-flow',
        is: 'the water that runs back at each beat before the valve has shut',
      }),
    ),
  },
  {
    called: 'the delivery valve',
    is: 'the check between body and air vessel, such as { bore: 12 mm, loss: 4 }',
  },
);

const airVessel = fields(
  {
    volume: z.exactOptional(
      quantity('volume', {
        called: 'the volume of the air vessel',
        is: 'how much the vessel holds',
      }),
    ),
    air: z.exactOptional(
      quantity('share', {
        called: 'the air in the vessel',
        is: 'the share that is air when it stands open: 100 % freshly drained, 0 % drowned',
      }),
    ),
    index: z.exactOptional(
      coefficient(
        {
          called: 'the polytropic index',
          is: 'between 1 for slow and 1.4 for fast changes of the air',
        },
        { least: 1 },
      ),
    ),
  },
  { called: 'the air vessel', is: 'the vessel of air, such as { volume: 1.5 L }' },
);

const spreadOf = (called: string, is: string) => z.exactOptional(quantity('share', { called, is }));

/** What stands as a plain number has no place for its ±. */
const spreads = fields(
  {
    drag: spreadOf('the spread of the drag', 'what the drag coefficient is good to'),
    wasteValve: spreadOf(
      'the spread of the waste valve',
      'what the discharge coefficients of the waste valve are good to',
    ),
    deliveryValve: spreadOf(
      'the spread of the delivery valve',
      'what the loss of the delivery valve is good to',
    ),
  },
  {
    called: 'the list of spreads',
    is: 'what fitted coefficients are good to, one standard uncertainty each, such as { drag: 12 %, deliveryValve: 9 % }',
  },
);

/** What a ram is made of. */
const ramParts = {
  typical: z.exactOptional(typicalSize),
  bore: z.exactOptional(
    quantity('bore', { called: 'the bore of the ram', is: 'the width of its drive connection' }),
  ),
  stroke: z.exactOptional(stroke),
  weight: z.exactOptional(weight),
  wasteValve: z.exactOptional(wasteValve),
  deliveryValve: z.exactOptional(deliveryValve),
  airVessel: z.exactOptional(airVessel),
  snifter: z.exactOptional(
    z.union([
      z.literal('none'),
      quantity('stroke', {
        called: 'the snifter',
        is: 'the width of the air hole under the delivery valve, or none',
      }),
    ]),
  ),
  give: z.exactOptional(
    quantity('smallVolume', {
      called: 'the give of the body',
      is: 'the water that the body and the air caught in it take up for each metre of head',
    }),
  ),
  spreads: z.exactOptional(spreads),
  rating: z.exactOptional(
    quantity('pressure', {
      called: 'the rating of the ram',
      is: 'the pressure its body may carry',
    }),
  ),
};

const RAM_IS = `${SIZE_IS}; or parts, such as { typical: DN20, stroke: 3 mm, weight: 60 g }`;

/** `swallow-25@3`: an id of a range and a revision. */
export const RANGE_REFERENCE = /^([a-z0-9]+(?:-[a-z0-9]+)*)@([1-9]\d*)$/;

const rangeReference = z.pipe(
  words({
    called: 'the ram of a range',
    is: 'which ram of a maker’s range it is, and in which revision, such as swallow-25@3',
  }),
  z.transform((written, payload): string => {
    if (RANGE_REFERENCE.test(written)) return written;
    addProblem(
      payload,
      'wrongForm',
      `${quoted(written)} names no revision of a ram. Write its id and its revision, like range: swallow-25@3.`,
      written,
    );
    return z.NEVER;
  }),
);

const ramMap = fields(
  {
    range: z.exactOptional(rangeReference),
    tuning: z.exactOptional(
      words({ called: 'the tuning', is: 'which of the tunings in its range it is set up to' }),
    ),
    name: z.exactOptional(words({ called: 'the name of the ram', is: 'how people call it' })),
    ...ramParts,
  },
  { called: 'the ram', is: RAM_IS },
);

/** A ram without its name and its place in a range, which stand beside it. */
const plainRamMap = fields(ramParts, { called: 'what the ram is made of', is: RAM_IS });

const ramError = ({ input }: { readonly input?: unknown }): string =>
  input === undefined
    ? `What the ram is made of is missing. Write ram: ${RAM_IS}.`
    : typeof input === 'number'
      ? `${input} what? Write the nominal size of the ram as DN${input} or in inches as 3/4 in, or its parts.`
      : `The ram cannot be read. Write ${SIZE_IS}; or parts, such as { typical: DN20, stroke: 3 mm }.`;

export const ramField = z
  .union([typicalSize, ramMap], { error: ramError })
  .register(z.globalRegistry, {
    description: 'A typical ram by its nominal size, or the parts of a ram.',
  });

/** The ram of a range, by its nominal size or by its parts. */
export const plainRamField = z
  .union([typicalSize, plainRamMap], { error: ramError })
  .register(z.globalRegistry, {
    description: 'What the ram is made of: a typical ram by its nominal size, or its parts.',
  });

export type PlainRamForm = z.output<typeof plainRamMap>;
export type RamForm = z.output<typeof ramMap>;
export type RamField = z.output<typeof ramField>;
