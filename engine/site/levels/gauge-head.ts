import type { Reading } from '../../numerics/repeated.ts';
import type { KilogramPerCubicMetre, Metre, Pascal, Ratio } from '../../quantities.ts';
import { GRAVITY } from '../../quantities.ts';

/** Density behind the conventional metre of water; that of cold water is less by under one in a thousand. */
const CONVENTIONAL_DENSITY: KilogramPerCubicMetre = 1000;

export interface GaugeReading {
  /** Read with the pipe full and the water still. */
  readonly pressure: Reading;
  /** The gauge's own class: its largest error as a share of its full scale. */
  readonly accuracyClass: Ratio;
  readonly fullScale: Pascal;
  /** Height of the gauge's centre above the level that heights are counted from. */
  readonly gaugeHeight?: Reading;
  readonly density?: KilogramPerCubicMetre;
}

export interface GaugeHead {
  readonly height: Metre;
  /** Standard uncertainty. */
  readonly spread: Metre;
  /** Height of the water surface above the gauge itself. */
  readonly overGauge: Metre;
  /** The largest error that the class allows, as a head. */
  readonly classHead: Metre;
}

/**
 * Height of a still water surface from a gauge in the pipe below it.
 *
 *   H = p/(ρg) + z       u_class = c p_max/(ρg √3)
 *
 * A class is the largest error anywhere on the scale, so a gauge read near its bottom says little. Taken as equally likely
 * anywhere within the class.
 * Source: EN 837-1, class as per cent of span (memory); JCGM 100:2008, 4.3.7, for √3 (memory).
 * @throws RangeError when full scale or class is not above zero.
 */
export function gaugeHead({
  pressure,
  accuracyClass,
  fullScale,
  gaugeHeight = { value: 0 },
  density = CONVENTIONAL_DENSITY,
}: GaugeReading): GaugeHead {
  if (!(fullScale > 0)) throw new RangeError(`fullScale must be above zero, got ${fullScale} Pa`);
  if (!(accuracyClass > 0)) {
    throw new RangeError(`accuracyClass must be above zero, got ${accuracyClass}`);
  }
  const weight = density * GRAVITY;
  const overGauge = pressure.value / weight;
  const classHead = (accuracyClass * fullScale) / weight;
  return {
    height: overGauge + gaugeHeight.value,
    spread: Math.hypot(
      classHead / Math.sqrt(3),
      (pressure.spread ?? 0) / weight,
      gaugeHeight.spread ?? 0,
    ),
    overGauge,
    classHead,
  };
}
