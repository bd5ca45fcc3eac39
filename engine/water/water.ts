import {
  type Celsius,
  GRAVITY,
  type KilogramPerCubicMetre,
  type Metre,
  type Pascal,
  type PascalSecond,
  type SquareMetrePerSecond,
} from '../quantities.ts';
import { atmosphericPressure } from './atmosphere.ts';
import { isentropicBulkModulus } from './bulk-modulus.ts';
import { waterDensity } from './density.ts';
import { vapourPressure } from './vapour-pressure.ts';
import { waterViscosity } from './viscosity.ts';

/** What the engine needs to know of the water and of the air above it, all at one temperature and altitude. */
export interface Water {
  readonly temperature: Celsius;
  readonly density: KilogramPerCubicMetre;
  readonly dynamicViscosity: PascalSecond;
  readonly kinematicViscosity: SquareMetrePerSecond;
  /** Isentropic bulk modulus: the one that a pressure wave feels. */
  readonly bulkModulus: Pascal;
  readonly vapourPressure: Pascal;
  readonly atmosphericPressure: Pascal;
  /** Atmospheric pressure as a column of this water: a gauge head of minus this is a perfect vacuum. */
  readonly atmosphericHead: Metre;
  /** Gauge head at which this water boils, measured at the pipe itself: below it a cavity opens. Always negative. */
  readonly vapourHead: Metre;
}

/**
 * Fresh water at a temperature, under the standard atmosphere of an altitude.
 *
 * Holds for 0–40 °C and −2000…11 000 m. Water is taken as pure and its properties as those at one atmosphere.
 *
 * @throws RangeError when `temperature` or `altitude` is out of range.
 */
export function waterAt({
  temperature,
  altitude,
}: {
  readonly temperature: Celsius;
  readonly altitude: Metre;
}): Water {
  const density = waterDensity(temperature);
  const dynamicViscosity = waterViscosity(temperature);
  const boiling = vapourPressure(temperature);
  const air = atmosphericPressure(altitude);
  return {
    temperature,
    density,
    dynamicViscosity,
    kinematicViscosity: dynamicViscosity / density,
    bulkModulus: isentropicBulkModulus(temperature),
    vapourPressure: boiling,
    atmosphericPressure: air,
    atmosphericHead: air / (density * GRAVITY),
    vapourHead: (boiling - air) / (density * GRAVITY),
  };
}
