/**
 * Volume of a kilogram of water at 0.1 MPa, and how it answers to warmth and pressure.
 *
 * The short correlations of the water-properties association, not its full formulation: they give the same numbers to
 * better than one part in a million at one atmosphere and fit on a page. A ram's pressures change the density by less
 * than one part in a thousand, so no second pressure is carried.
 */
import type { Celsius } from '../quantities.ts';
import { kelvinOfLiquidWater } from './liquid-range.ts';

/** Specific gas constant of water in J/(kg K), reference temperature in K and reference pressure in Pa. */
export const GAS_CONSTANT = 461.51805;
export const REFERENCE_TEMPERATURE = 10;
const REFERENCE_PRESSURE = 1e5;

/** A term `coefficient · xᵉˣᵖᵒⁿᵉⁿᵗ` of a correlation. */
export type Term = readonly [exponent: number, coefficient: number];

const VOLUME_CONSTANT = 1.93763157e-2;
const VOLUME_HOT: readonly Term[] = [
  [4, 6.74458446e3],
  [5, -2.22521604e5],
  [7, 1.00231247e8],
  [8, -1.63552118e9],
  [9, 8.32299658e9],
];
const VOLUME_COLD: readonly Term[] = [
  [1, 5.78545292e-3],
  [2, -1.53195665e-2],
  [3, 3.11337859e-2],
  [4, -4.23546241e-2],
  [5, 3.38713507e-2],
  [6, -1.19946761e-2],
];
const SQUEEZE_HOT: readonly Term[] = [
  [1, -7.5245878e-6],
  [3, -1.3767418e-2],
  [5, 1.0627293e1],
  [6, -2.0457795e2],
  [7, 1.2037414e3],
];
const SQUEEZE_COLD: readonly Term[] = [
  [1, -3.109147e-6],
  [3, 2.8964919e-5],
  [4, -1.3112763e-4],
  [5, 3.0410453e-4],
  [6, -3.9034594e-4],
  [7, 2.3403117e-4],
  [9, -4.8510101e-5],
];

/** The two shifted temperatures of the correlations: α = 10/(593 − T) and β = 10/(T − 232), T in kelvin. */
export function shiftedTemperatures(kelvin: number): {
  readonly hot: number;
  readonly cold: number;
} {
  return {
    hot: REFERENCE_TEMPERATURE / (593 - kelvin),
    cold: REFERENCE_TEMPERATURE / (kelvin - 232),
  };
}

const sum = (terms: readonly Term[], x: number): number =>
  terms.reduce((total, [exponent, coefficient]) => total + coefficient * x ** exponent, 0);

/** Sum of the first derivatives of terms in α or β, up to the sign that β carries. */
const slope = (terms: readonly Term[], x: number): number =>
  terms.reduce(
    (total, [exponent, coefficient]) => total + exponent * coefficient * x ** (exponent + 1),
    0,
  );

/** Specific volume in m³/kg with its derivatives by temperature and by pressure. */
export interface SpecificVolume {
  readonly volume: number;
  readonly byTemperature: number;
  readonly byPressure: number;
}

/**
 * Specific volume of liquid water at 0.1 MPa, and its derivatives by temperature and pressure.
 *
 *   v      = (R T_R / p₀)  [ a₅ + Σ aᵢ αⁿⁱ + Σ bᵢ βᵐⁱ ]
 *   ∂v/∂T  = (R / p₀)      [ Σ nᵢ aᵢ αⁿⁱ⁺¹ − Σ mᵢ bᵢ βᵐⁱ⁺¹ ]
 *   ∂v/∂p  = (R T_R / p₀²) [ Σ aⱼ αⁿʲ + Σ bⱼ βᵐʲ ]
 *
 * Source: IAPWS SR6-08 (2011), Properties of liquid water at 0.1 MPa. Coefficients from memory; with them density,
 * sound speed and both bulk moduli return the release's check values to the last printed digit (see `checks`).
 * @throws RangeError when `temperature` is outside 0–40 °C.
 */
export function specificVolume(temperature: Celsius): SpecificVolume {
  const { hot, cold } = shiftedTemperatures(kelvinOfLiquidWater(temperature));
  const scale = (GAS_CONSTANT * REFERENCE_TEMPERATURE) / REFERENCE_PRESSURE;
  return {
    volume: scale * (VOLUME_CONSTANT + sum(VOLUME_HOT, hot) + sum(VOLUME_COLD, cold)),
    byTemperature:
      (GAS_CONSTANT / REFERENCE_PRESSURE) * (slope(VOLUME_HOT, hot) - slope(VOLUME_COLD, cold)),
    byPressure: (scale / REFERENCE_PRESSURE) * (sum(SQUEEZE_HOT, hot) + sum(SQUEEZE_COLD, cold)),
  };
}
