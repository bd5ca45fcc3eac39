/** A site as a place to choose for, and what is wished there: all SI, with everything that was not given assumed and said. */
import type {
  ByMonth,
  MonthlyDemand,
  PlaceToFit,
  Restraint,
  Route,
  Wish,
} from '@fallwright/engine';
import { dailyDemand, largestMonth } from '@fallwright/engine';
import { type Assumption, Assumptions } from '../site/assumption.ts';
import { needsOf, yieldsOf } from '../site/demand-of.ts';
import { waterOf } from '../site/installation-of.ts';
import { lossOf, profileOf, RESTRAINTS } from '../site/line-of.ts';
import type { PipeLength } from '../site/pipe-fields.ts';
import type { Site } from '../site/site-schema.ts';
import { entranceLossOf, sourceOf } from '../site/source-of.ts';

export interface AssembledPlace {
  readonly place: PlaceToFit;
  /** What the site itself wishes for: its need, and a tank for it. */
  readonly wish: Wish;
  readonly monthlyDemand?: MonthlyDemand;
  readonly yields: ByMonth<number | 'plenty'>;
  readonly assumptions: readonly Assumption[];
}

const DAY = 86_400;
/** Judgement: a tank that carries over one day without the ram, where nobody says for how many. */
const USUAL_DAYS = 1;

/** @throws RangeError when the site did not come from `readPlace` or one of its kind. */
export function placeToFit(site: Site): AssembledPlace {
  const assumptions = new Assumptions();
  const source = sourceOf(site.source, assumptions);
  const entranceLoss = entranceLossOf(site.source, assumptions);
  const yields = yieldsOf(site.source);
  const dryFlow = dryFlowOf(yields);
  const fittingsLoss = site.drive.reduce(
    (sum, length, index) => sum + lossOf(length, `drive[${index}]`, 'drive', assumptions),
    0,
  );
  const place: PlaceToFit = {
    water: waterOf(site, assumptions),
    source,
    ...(dryFlow !== undefined && { dryFlow }),
    fall: site.fall.value,
    lift: site.lift.value,
    driveRoute: routeOf(site.drive, { upper: site.fall.value, lower: 0 }),
    deliveryRoute: deliveryRouteOf(site, assumptions),
    driveLaying: {
      entranceLoss,
      fittingsLoss,
      restraint: restraintOf(site.drive, assumptions),
      freeAirFraction: Math.max(0, ...site.drive.map(({ freeAir }) => freeAir?.value ?? 0)),
    },
  };
  assumptions.words('drive[0].air', 'air in the drive line', 'none', {
    why: 'laid with vents at its crests and bled before starting',
    basis: 'commonPractice',
  });
  const monthlyDemand = site.demand && dailyDemand(needsOf(site.demand, assumptions));
  const need = monthlyDemand?.total[largestMonth(monthlyDemand)];
  const tankVolume = tankVolumeOf(site, need, assumptions);
  return {
    place,
    wish: {
      ...(need !== undefined && need > 0 && { need }),
      ...(tankVolume !== undefined && { tankVolume }),
    },
    ...(monthlyDemand && { monthlyDemand }),
    yields,
    assumptions: assumptions.list,
  };
}

/** What the driest month brings, where months are told; nothing when they are all alike or all plenty. */
function dryFlowOf(yields: ByMonth<number | 'plenty'>): number | undefined {
  const flows = yields.filter((flow) => flow !== 'plenty');
  const least = Math.min(...flows);
  return flows.length > 0 && (flows.length < yields.length || Math.max(...flows) > least)
    ? least
    : undefined;
}

function routeOf(
  lengths: readonly PipeLength[],
  ends: { readonly upper: number; readonly lower: number },
): Route {
  const profile = profileOf(lengths, ends);
  return {
    length: lengths.reduce((sum, { length }) => sum + length.value, 0),
    ...(profile && { profile }),
  };
}

function deliveryRouteOf(site: Site, assumptions: Assumptions): Route {
  const lift = site.lift.value;
  if (site.delivery) return routeOf(site.delivery, { upper: 0, lower: lift });
  assumptions.quantity('delivery', 'length of the delivery line', lift, 'pipeLength', {
    why: 'none was given; friction and cost of a longer one count against all',
    basis: 'judgement',
  });
  return { length: lift };
}

/** How the last pipe is held that says so: it is the one at the ram. */
function restraintOf(lengths: readonly PipeLength[], assumptions: Assumptions): Restraint {
  const held = lengths.findLast((length) => length.held !== undefined)?.held;
  if (held !== undefined) return RESTRAINTS[held];
  assumptions.words('drive[0].held', 'how the drive pipe is held', 'clamped', {
    why: 'a pipe of a ram is anchored or buried',
    basis: 'commonPractice',
  });
  return RESTRAINTS.clamped;
}

/** Nothing where a tank stands there already, or nobody says what is needed. */
function tankVolumeOf(
  { tank }: Site,
  need: number | undefined,
  assumptions: Assumptions,
): number | undefined {
  if (tank?.volume || need === undefined) return undefined;
  if (tank?.days !== undefined) return tank.days * DAY * need;
  return assumptions.quantity(
    'tank.days',
    'water that the tank must hold',
    USUAL_DAYS * DAY * need,
    'volume',
    { why: 'one day without the ram', basis: 'judgement' },
  );
}
