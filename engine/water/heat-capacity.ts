import type { Celsius } from '../quantities.ts';
import { kelvinOfLiquidWater } from './liquid-range.ts';
import {
  GAS_CONSTANT,
  REFERENCE_TEMPERATURE,
  shiftedTemperatures,
  type Term,
} from './specific-volume.ts';

const CONSTANT = -8.983025854;
const HOT: readonly Term[] = [
  [4, -1.661470539e5],
  [5, 2.70878164e6],
  [7, -1.557191544e8],
];
const COLD: readonly Term[] = [
  [2, -8.237426256e-1],
  [3, 1.908956353],
  [4, -2.017597384],
  [5, 8.546361348e-1],
];

/** Sum of the second derivatives of terms in α or β. */
const curvature = (terms: readonly Term[], x: number): number =>
  terms.reduce(
    (total, [exponent, coefficient]) =>
      total + exponent * (exponent + 1) * coefficient * x ** (exponent + 2),
    0,
  );

/**
 * Heat to warm a kilogram of water by one kelvin at 0.1 MPa, in J/(kg K). Only the speed of sound needs it.
 *
 *   c_p = −R [ c₃ + (T/T_R) ( Σ nᵢ(nᵢ+1) aᵢ αⁿⁱ⁺² + Σ mᵢ(mᵢ+1) bᵢ βᵐⁱ⁺² ) ]
 *
 * Source: IAPWS SR6-08 (2011), isobaric heat capacity; coefficients from memory, see `specific-volume.ts`.
 * @throws RangeError when `temperature` is outside 0–40 °C.
 */
export function waterHeatCapacity(temperature: Celsius): number {
  const kelvin = kelvinOfLiquidWater(temperature);
  const { hot, cold } = shiftedTemperatures(kelvin);
  const bracket = curvature(HOT, hot) + curvature(COLD, cold);
  return -GAS_CONSTANT * (CONSTANT + (kelvin / REFERENCE_TEMPERATURE) * bracket);
}
