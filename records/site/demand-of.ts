/** The needs of a site as the engine takes them, with the published figure wherever no local one was given. */
import {
  ANIMAL_FIGURES,
  type ByMonth,
  eachMonth,
  GARDEN_FIGURE,
  MONTHS,
  type Needs,
  PEOPLE_FIGURES,
  PLANT_FACTORS,
  type Season,
  type SourcedValue,
  type Takers,
  USUAL_SERVICE,
  WATERING_EFFICIENCIES,
  wateringNeed,
} from '@fallwright/engine';
import { isGiven } from '../given.ts';
import type { Assumptions } from './assumption.ts';
import type { DemandForm, GardenForm, NeedsForm } from './demand-fields.ts';
import { supplyOf } from './gauging-of.ts';
import { seasonOf } from './season.ts';
import type { SourceForm } from './source-fields.ts';

/** A demand that is one amount is `other`: nobody said what it is for. */
export function needsOf(demand: DemandForm, assumptions: Assumptions): Needs {
  if (isGiven(demand)) return { other: demand.value };
  const { losses, growth, years, months } = demand;
  const people = peopleOf(demand, assumptions);
  return {
    ...(people && { people }),
    ...(demand.animals && { animals: animalsOf(demand.animals, assumptions) }),
    ...(demand.garden && {
      garden: {
        flow: gardenFlow(demand.garden, assumptions),
        season: seasonFrom(demand.garden.season),
      },
    }),
    ...(demand.drip && {
      drip: {
        count: demand.drip.plants,
        each: demand.drip.perPlant.value,
        season: seasonFrom(demand.drip.season),
      },
    }),
    ...(demand.other && { other: demand.other.value }),
    ...(losses && { losses: losses.value }),
    ...(growth && { growth: growth.value }),
    ...(years !== undefined && { years }),
    ...(months && { monthFactors: MONTHS.map((month) => months[month] ?? 1) }),
  };
}

function peopleOf(
  { people, perPerson, service }: NeedsForm,
  assumptions: Assumptions,
): Takers | undefined {
  if (people === undefined) return undefined;
  if (perPerson) return { count: people, each: perPerson.value };
  const named = service ?? USUAL_SERVICE;
  const figure = PEOPLE_FIGURES[named];
  const what = `need of a person (${named})`;
  return { count: people, each: published('demand.perPerson', what, figure, assumptions) };
}

function animalsOf(
  animals: NonNullable<NeedsForm['animals']>,
  assumptions: Assumptions,
): readonly Takers[] {
  const names = Object.keys(ANIMAL_FIGURES) as (keyof typeof ANIMAL_FIGURES)[];
  return names.flatMap((name) => {
    const given = animals[name];
    if (given === undefined) return [];
    if (typeof given === 'object') return { count: given.count, each: given.each.value };
    const field = `demand.animals.${name}`;
    const figure = ANIMAL_FIGURES[name];
    return { count: given, each: published(field, `need of a ${name}`, figure, assumptions) };
  });
}

function gardenFlow(garden: GardenForm, assumptions: Assumptions): number {
  const efficiency = garden.by ? WATERING_EFFICIENCIES[garden.by].value : 1;
  const depth =
    garden.perArea?.value ??
    garden.evapotranspiration?.value ??
    assumptions.quantity(
      'demand.garden.perArea',
      'need of a garden',
      GARDEN_FIGURE.value,
      'watering',
      { why: whyOf(GARDEN_FIGURE), basis: 'table' },
    );
  return wateringNeed({
    evapotranspiration: depth,
    plantFactor: garden.plants ? PLANT_FACTORS[garden.plants].value : 1,
    area: garden.area.value,
    efficiency,
  });
}

function published(
  field: string,
  what: string,
  figure: SourcedValue,
  assumptions: Assumptions,
): number {
  return assumptions.quantity(field, what, figure.value, 'daily', {
    why: whyOf(figure),
    basis: 'table',
  });
}

function whyOf({ source, knownBy }: SourcedValue): string {
  return `${source}${knownBy === 'memory' ? ' (from memory)' : ''}; a local figure is better`;
}

function seasonFrom(text: string | undefined): Season {
  return seasonOf(text ?? 'all year') ?? eachMonth(() => true);
}

/**
 * What the ram may be fed with in each month: what feeds it all year, and another flow where a month has its own. The share
 * that may be taken holds for both.
 */
export function yieldsOf(source: SourceForm): ByMonth<number | 'plenty'> {
  const { flow, share } = supplyOf(source);
  // A store without an inflow runs dry, whatever it holds.
  const always = flow ?? (source.store === undefined ? 'plenty' : 0);
  return MONTHS.map((month) => {
    const own = source.months?.[month];
    return own === undefined ? always : own.value * share;
  });
}
