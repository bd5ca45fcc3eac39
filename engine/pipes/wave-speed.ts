/**
 * How fast a pressure wave runs along a pipe.
 *
 * Three things give way to a wave: the water, the wall, and any free air in the water. Their compliances add. In a hose
 * the wall rules, in steel the water, and a few bubbles rule anywhere.
 */
import {
  GRAVITY,
  type KilogramPerCubicMetre,
  type Metre,
  type MetrePerSecond,
  type Pascal,
  type Ratio,
  STANDARD_ATMOSPHERE,
} from '../quantities.ts';
import type { Water } from '../water/water.ts';
import { MATERIALS } from './materials.ts';
import type { PipeSegment } from './pipe.ts';
import { thickWallFactor, wallCompliance } from './wall-stretch.ts';

/** Density of air at one atmosphere and 20 °C. It hardly weighs on the result. Source: gas law (memory). */
const AIR_DENSITY: KilogramPerCubicMetre = 1.2;

/**
 * Speed of a pressure wave in a pipe filled with water that carries free air.
 *
 *   1/a² = ρₘ [ (1 − x)/K + x/(n p) + c₁D/(E e) ],   ρₘ = (1 − x) ρ + x ρ_air
 *
 * `x` is the share of air by volume at the absolute pressure `p`; with none the formula is that of the textbook for
 * pure water. Bubbles must be small and evenly spread. `n` is 1 for bubbles that keep the water's temperature.
 *
 * Source: Wylie, Streeter and Suo (1993), Fluid Transients in Systems, chapter 1 (memory). Pearsall (1965) saw one part
 * of air in 10⁴ halve the speed; the formula gives 0.56 of it.
 * @throws RangeError when a modulus, density, pressure or index is not above zero, the wall's compliance is below zero,
 *   or `airFraction` is outside 0–1.
 */
export function mixtureWaveSpeed({
  bulkModulus,
  density,
  wallCompliance,
  airFraction,
  absolutePressure,
  polytropicIndex,
}: {
  readonly bulkModulus: Pascal;
  readonly density: KilogramPerCubicMetre;
  /** As `wallCompliance` gives it, in 1/Pa. */
  readonly wallCompliance: number;
  readonly airFraction: Ratio;
  readonly absolutePressure: Pascal;
  readonly polytropicIndex: Ratio;
}): MetrePerSecond {
  const positive = { bulkModulus, density, absolutePressure, polytropicIndex };
  for (const [name, value] of Object.entries(positive)) {
    if (!(value > 0)) throw new RangeError(`${name} must be above zero, got ${value}`);
  }
  if (!(wallCompliance >= 0)) {
    throw new RangeError(`wallCompliance must not be below zero, got ${wallCompliance} 1/Pa`);
  }
  if (!(airFraction >= 0 && airFraction < 1)) {
    throw new RangeError(`airFraction must be at least 0 and below 1, got ${airFraction}`);
  }
  const airDensity = AIR_DENSITY * (absolutePressure / STANDARD_ATMOSPHERE);
  const mixtureDensity = (1 - airFraction) * density + airFraction * airDensity;
  const compliance =
    (1 - airFraction) / bulkModulus +
    airFraction / (polytropicIndex * absolutePressure) +
    wallCompliance;
  return 1 / Math.sqrt(mixtureDensity * compliance);
}

/**
 * Speed of a pressure wave in a pipe filled with water free of air.
 *
 *   a² = (K/ρ) / (1 + (K/E)(D/e) c₁)
 *
 * Source: Wylie, Streeter and Suo (1993), Fluid Transients in Systems, chapter 1 (formula seen in reprints).
 * @throws RangeError when a modulus or density is not above zero, or the wall's compliance is below zero.
 */
export function airFreeWaveSpeed({
  bulkModulus,
  density,
  wallCompliance,
}: {
  readonly bulkModulus: Pascal;
  readonly density: KilogramPerCubicMetre;
  readonly wallCompliance: number;
}): MetrePerSecond {
  return mixtureWaveSpeed({
    bulkModulus,
    density,
    wallCompliance,
    airFraction: 0,
    absolutePressure: STANDARD_ATMOSPHERE,
    polytropicIndex: 1,
  });
}

/**
 * Speed of a pressure wave in a segment of a line, from its water, its wall and its free air.
 *
 * The wall is taken as thick, with the short-term modulus of its material. The stated free air is squeezed to the
 * pressure in the pipe by Boyle's law (Judgement: small bubbles keep the water's temperature, so n = 1, which errs slow).
 *
 * `gaugeHead` is the mean head of water in the pipe itself, nought when the air is at the pressure of the open.
 *
 * Source: Wylie, Streeter and Suo (1993), as for the parts; moduli stand in `MATERIALS`.
 * @throws RangeError when the segment's dimensions make no wall, its free air is below zero, or `gaugeHead` is at or
 *   below a vacuum.
 */
export function waveSpeed(
  segment: PipeSegment,
  water: Water,
  gaugeHead: Metre = 0,
): MetrePerSecond {
  const { pipe, restraint, freeAirFraction } = segment;
  const { youngsModulus, poissonRatio } = MATERIALS[pipe.material];
  if (!(freeAirFraction >= 0)) {
    throw new RangeError(`freeAirFraction must not be below zero, got ${freeAirFraction}`);
  }
  const absolutePressure = water.atmosphericPressure + water.density * GRAVITY * gaugeHead;
  if (!(absolutePressure > 0)) {
    throw new RangeError(`gaugeHead must lie above a vacuum, got ${gaugeHead} m`);
  }
  const factor = thickWallFactor({
    restraint,
    poissonRatio: poissonRatio.value,
    innerDiameter: pipe.innerDiameter,
    wallThickness: pipe.wallThickness,
  });
  // Stated over the volume of water, at the pressure of the open; the formula wants it over the whole, squeezed.
  const airOverWater = (freeAirFraction * water.atmosphericPressure) / absolutePressure;
  return mixtureWaveSpeed({
    bulkModulus: water.bulkModulus,
    density: water.density,
    wallCompliance: wallCompliance({
      factor,
      innerDiameter: pipe.innerDiameter,
      wallThickness: pipe.wallThickness,
      youngsModulus: pipe.youngsModulus ?? youngsModulus.value,
    }),
    airFraction: airOverWater / (1 + airOverWater),
    absolutePressure,
    polytropicIndex: 1,
  });
}
