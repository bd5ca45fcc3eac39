/** What is needed at the tank, told apart by who and what needs it; and the tank. */
import {
  ANIMAL_FIGURES,
  type AnimalName,
  DRAW_PATTERNS,
  type DrawName,
  PEOPLE_FIGURES,
  PLANT_FACTORS,
  type Planting,
  type Service,
  WATERING_EFFICIENCIES,
  type WateringMethod,
} from '@fallwright/engine';
import * as z from 'zod/mini';
import { choice, coefficient, fields, orList, quantity } from './fields.ts';
import { byMonth, each } from './month-fields.ts';
import { seasonOf } from './season.ts';

/** The names of a table, as the list of words that a choice needs. */
function namesOf<Name extends string>(table: Readonly<Record<Name, unknown>>): readonly Name[] {
  // The tables are written out whole, so their keys are their names.
  return Object.keys(table) as Name[];
}

const season = z
  .string({ error: () => SEASON_MESSAGE })
  .check(z.refine((text) => seasonOf(text) !== undefined, { error: () => SEASON_MESSAGE }))
  .register(z.globalRegistry, {
    description: 'The months of the year in which it is watered, such as may to sep.',
  });

const SEASON_MESSAGE = 'The season cannot be read. Write it like: season: may to sep, or all year.';

const plain = (called: string, is: string) => coefficient({ called, is });

const animal = z.union(
  [
    plain('the number of animals', 'how many there are'),
    fields(
      {
        count: plain('the number of animals', 'how many there are'),
        each: quantity('daily', {
          called: 'the need of each animal',
          is: 'what one takes in a day, in place of the published figure',
        }),
      },
      { called: 'the animals', is: 'how many, such as 4, or { count: 4, each: 60 L/day }' },
    ),
  ],
  {
    error: () => 'The animals cannot be read. Write how many: 4, or { count: 4, each: 60 L/day }.',
  },
);

const animals = fields(
  each(namesOf<AnimalName>(ANIMAL_FIGURES), () => z.exactOptional(animal)),
  { called: 'the animals', is: 'how many of each there are, such as { cow: 4, sheep: 30 }' },
);

const garden = fields(
  {
    area: quantity('surfaceArea', { called: 'the area of the garden', is: 'how much is watered' }),
    perArea: z.exactOptional(
      quantity('watering', {
        called: 'the garden’s need',
        is: 'what the ground is given in a day, in place of the published figure',
      }),
    ),
    evapotranspiration: z.exactOptional(
      quantity('watering', {
        called: 'the evapotranspiration',
        is: 'what a reference meadow gives off in a day, as a weather station tells it',
      }),
    ),
    plants: z.exactOptional(
      choice(namesOf<Planting>(PLANT_FACTORS), {
        called: 'the plants',
        is: 'what grows there, which decides how much of the evapotranspiration it needs',
      }),
    ),
    by: z.exactOptional(
      choice(namesOf<WateringMethod>(WATERING_EFFICIENCIES), {
        called: 'the way of watering',
        is: 'how it is watered, which decides what share reaches the roots; nothing is lost when left out',
      }),
    ),
    season: z.exactOptional(season),
  },
  { called: 'the garden', is: 'its area and season, such as { area: 200 m2, season: may to sep }' },
);

const drip = fields(
  {
    plants: plain('the number of plants', 'how many plants are watered'),
    perPlant: quantity('daily', { called: 'the need of a plant', is: 'what one takes in a day' }),
    season: z.exactOptional(season),
  },
  {
    called: 'the drip line',
    is: 'its plants and what each takes, such as { plants: 120, perPlant: 2 L/day }',
  },
);

const monthFactors = byMonth(
  (name) => plain(`the share of ${name}`, 'what this month asks, as a share of the usual'),
  { called: 'the months', is: 'what a month asks, as a share of the usual, such as { jul: 1.3 }' },
);

/** A map with a value is one amount in its longer form, whatever else is wrong with it. */
const ofOneAmount = z.never({
  error: () =>
    'This belongs to a demand that is one amount. Take it out, or what stands beside it.',
});

const needs = fields(
  {
    value: z.exactOptional(ofOneAmount),
    origin: z.exactOptional(ofOneAmount),
    people: z.exactOptional(plain('the number of people', 'how many live there')),
    perPerson: z.exactOptional(
      quantity('daily', {
        called: 'the need of a person',
        is: 'what one person takes in a day, in place of the published figure',
      }),
    ),
    service: z.exactOptional(
      choice(namesOf<Service>(PEOPLE_FIGURES), {
        called: 'the service',
        is: 'how the water comes to the people, which decides the published figure',
      }),
    ),
    animals: z.exactOptional(animals),
    garden: z.exactOptional(garden),
    drip: z.exactOptional(drip),
    other: z.exactOptional(
      quantity('daily', { called: 'the other need', is: 'anything else that is needed each day' }),
    ),
    losses: z.exactOptional(
      quantity('share', {
        called: 'the share that is lost',
        is: 'the share of what leaves the tank that leaks or is spilled',
      }),
    ),
    growth: z.exactOptional(
      quantity('share', { called: 'the growth', is: 'the growth of people and animals in a year' }),
    ),
    years: z.exactOptional(
      plain('the number of years', 'for how many years from now the need is told'),
    ),
    months: z.exactOptional(monthFactors),
  },
  {
    called: 'the demand',
    is: 'who and what needs water, such as { people: 6, animals: { cow: 4 } }',
  },
);

const amount = quantity('daily', { called: 'the demand', is: 'the water needed each day' });

/** One amount for each day, or what makes it up. */
export const demandField = z.union([amount, needs], {
  error: ({ input }) =>
    typeof input === 'object' && !Array.isArray(input)
      ? undefined
      : (amountMessage(input) ?? 'Write the demand like 900 L/day, or as { people: 6 }.'),
});
z.globalRegistry.add(demandField, {
  description: 'The water needed each day: one amount, or who and what needs it.',
});

/** The words that a plain amount has for what it cannot read. */
function amountMessage(input: unknown): string | undefined {
  return amount.safeParse(input).error?.issues[0]?.message;
}

export type NeedsForm = z.output<typeof needs>;
export type GardenForm = z.output<typeof garden>;
export type DemandForm = z.output<typeof demandField>;

export const tankField = fields(
  {
    volume: z.exactOptional(
      quantity('volume', { called: 'the volume of the tank', is: 'how much the tank holds' }),
    ),
    days: z.exactOptional(
      plain('the number of days', 'how many days the tank should last with the ram stopped'),
    ),
    draw: z.exactOptional(
      choice(namesOf<DrawName>(DRAW_PATTERNS), {
        called: 'the draw',
        is: 'how what is drawn falls on the hours of a day; each use by its own when left out',
      }),
    ),
  },
  {
    called: 'the tank',
    is: `what stands at the top, such as { volume: 2000 L, days: 2, draw: ${orList(['house', 'stock'])} }; how high it stands is the lift`,
  },
);

export type TankForm = z.output<typeof tankField>;
