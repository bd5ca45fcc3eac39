/** A site put together for the engine: all SI, with everything that was not given assumed and said. */

import {
  type ByMonth,
  type DeliveryLine,
  dailyDemand,
  findPipe,
  type Installation,
  largestMonth,
  type MonthlyDemand,
  PIPES,
  readLine,
  waterAt,
} from '@fallwright/engine';
import { type Assumption, Assumptions } from './assumption.ts';
import { needsOf, yieldsOf } from './demand-of.ts';
import { pocketsOf, profileOf, segmentsOf, surveyedLineOf } from './line-of.ts';
import { ramOf } from './ram-of.ts';
import type { Site } from './site-schema.ts';
import { entranceLossOf, sourceOf } from './source-of.ts';

export interface AssembledSite {
  readonly installation: Installation;
  /** Flow needed in the month that needs most, in m³/s. */
  readonly demand?: number;
  /** The same month by month and by use. */
  readonly monthlyDemand?: MonthlyDemand;
  /** What the source yields in each month, in m³/s. */
  readonly yields: ByMonth<number | 'plenty'>;
  readonly assumptions: readonly Assumption[];
}

/** Judgement: the yearly mean of springs and shaded streams in temperate hills; colder water rates pipes no higher. */
const USUAL_TEMPERATURE = 10;

/**
 * @throws RangeError when the site did not come from `readSite` or `siteFromData`, which refuse what cannot be put
 * together.
 */
export function installationOf(site: Site): AssembledSite {
  const assumptions = new Assumptions();
  const fall = site.fall.value;
  const lift = site.lift.value;
  const source = sourceOf(site.source, assumptions);
  const entranceLoss = entranceLossOf(site.source, assumptions);
  const segments = segmentsOf('drive', site.drive, assumptions);
  const driveProfile = profileOf(site.drive, { upper: fall, lower: 0 });
  const crests = driveProfile
    ? readLine(surveyedLineOf(site.drive, segments, { profile: driveProfile, surface: fall }))
        .crests
    : [];
  const pockets = pocketsOf(site.drive, segments, crests, assumptions);
  const driveBore = segments.at(-1)?.pipe.innerDiameter ?? 0;
  const ram = ramOf(site.ram, driveBore, assumptions);
  const deliveryLine = deliveryLineOf(site, { lift, driveBore }, assumptions);
  const water = waterOf(site, assumptions);
  const monthlyDemand = site.demand && dailyDemand(needsOf(site.demand, assumptions));
  return {
    installation: {
      water,
      source,
      fall,
      driveLine: {
        segments,
        entranceLoss,
        pockets,
        ...(driveProfile && { profile: driveProfile }),
      },
      ram,
      lift,
      deliveryLine,
    },
    ...(monthlyDemand && {
      demand: monthlyDemand.total[largestMonth(monthlyDemand)] ?? 0,
      monthlyDemand,
    }),
    yields: yieldsOf(site.source),
    assumptions: assumptions.list,
  };
}

/** Water of the place. */
export function waterOf(site: Site, assumptions: Assumptions) {
  const temperature =
    site.temperature?.value ??
    assumptions.quantity(
      'temperature',
      'temperature of the water',
      USUAL_TEMPERATURE,
      'temperature',
      {
        why: 'usual for springs and shaded streams',
        basis: 'commonPractice',
      },
    );
  const altitude =
    site.altitude?.value ??
    assumptions.quantity('altitude', 'height above the sea', 0, 'altitude', {
      why: 'matters little except in high mountains',
      basis: 'judgement',
    });
  return waterAt({ temperature, altitude });
}

function deliveryLineOf(
  site: Site,
  { lift, driveBore }: { readonly lift: number; readonly driveBore: number },
  assumptions: Assumptions,
): DeliveryLine {
  if (site.delivery) {
    const profile = profileOf(site.delivery, { upper: 0, lower: lift });
    return {
      segments: segmentsOf('delivery', site.delivery, assumptions),
      ...(profile && { profile }),
    };
  }
  const name = deliveryPipeFor(driveBore);
  const why = 'no delivery line was given; friction in a longer one lowers the answer';
  assumptions.words('delivery', 'delivery pipe', name, {
    why: 'half as wide as the drive pipe',
    basis: 'commonPractice',
  });
  assumptions.quantity('delivery', 'length of the delivery line', lift, 'pipeLength', {
    why,
    basis: 'judgement',
  });
  const found = findPipe(name);
  if (!found.ok) throw new RangeError(`the pipe tables have lost ${name}`);
  const { material, innerDiameter, wallThickness, roughness, rating } = found.pipe;
  const pipe = {
    name,
    material,
    innerDiameter,
    wallThickness,
    roughness,
    ...(rating !== undefined && { rating }),
  };
  return {
    segments: [
      { pipe, length: lift, fittingsLoss: 0, restraint: 'anchoredThroughout', freeAirFraction: 0 },
    ],
  };
}

/** The narrowest metric PE pipe that is at least half as wide as the drive pipe. Common practice, no source. */
function deliveryPipeFor(driveBore: number): string {
  const candidates = PIPES.filter(({ name }) => name.startsWith('PE100 SDR11 ')).sort(
    (a, b) => a.innerDiameter - b.innerDiameter,
  );
  const wide = candidates.find(({ innerDiameter }) => innerDiameter >= driveBore / 2);
  const chosen = wide ?? candidates.at(-1);
  if (!chosen) throw new RangeError('the pipe tables hold no PE100 SDR11');
  return chosen.name;
}
