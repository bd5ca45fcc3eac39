/** Efficiencies of a bench reading, by both definitions, with what they are good to. */
import { daubuissonEfficiency, rankineEfficiency } from '../cycle/efficiencies.ts';
import type { Ratio } from '../quantities.ts';
import type { BenchReading, Measured } from './bench-reading.ts';
import { flowsOf } from './bench-reading.ts';

export interface SureRatio {
  readonly value: Ratio;
  readonly spread: Ratio;
}

export interface ReadingEfficiencies {
  readonly rankine: SureRatio;
  readonly daubuisson: SureRatio;
}

/**
 * Both efficiencies, to the lift, with the spread that heads and flows give them.
 *
 *   u² = Σ (∂η/∂xᵢ · uᵢ)²
 *
 * over the quantities that were read; slopes by central differences of one spread each way, so that a wide one is felt whole.
 * Nothing when fewer than two flows were read.
 *
 * Source: JCGM 100:2008, 5.1.2 (memory).
 */
export function efficienciesOf(reading: BenchReading): ReadingEfficiencies | undefined {
  if (!flowsOf(reading)) return undefined;
  return {
    rankine: sure(reading, rankineEfficiency),
    daubuisson: sure(reading, daubuissonEfficiency),
  };
}

type Efficiency = typeof rankineEfficiency;
const INPUTS = ['fall', 'lift', 'deliveryFlow', 'wasteFlow', 'supplyFlow'] as const;

function sure(reading: BenchReading, efficiency: Efficiency): SureRatio {
  const shares = INPUTS.flatMap((input) => {
    const read = reading[input];
    if (!read) return [];
    const at = (sign: number): number => ratioOf(moved(reading, input, read, sign), efficiency);
    return [(at(1) - at(-1)) / 2];
  });
  return { value: ratioOf(reading, efficiency), spread: Math.hypot(...shares) };
}

function moved(
  reading: BenchReading,
  input: (typeof INPUTS)[number],
  read: Measured,
  sign: number,
): BenchReading {
  return { ...reading, [input]: { ...read, value: read.value + sign * read.spread } };
}

function ratioOf(reading: BenchReading, efficiency: Efficiency): Ratio {
  const flows = flowsOf(reading);
  if (!flows) return Number.NaN;
  return efficiency(
    { fall: reading.fall.value, lift: reading.lift.value },
    // Where all three were read, what was caught counts, and the supply is held against it elsewhere.
    { wasteFlow: flows.waste.value, deliveryFlow: flows.delivery.value },
  );
}
