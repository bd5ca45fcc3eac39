import type { Celsius, PascalSecond } from '../quantities.ts';
import { kelvinOfLiquidWater } from './liquid-range.ts';

const TERMS = [
  [280.68, -1.9],
  [511.45, -7.7],
  [61.131, -19.6],
  [0.45903, -40],
] as const;

/**
 * Dynamic viscosity of water: cold water is nearly three times as thick as warm, and small hoses notice.
 *
 *   μ / 1 µPa s = Σ aᵢ (T / 300 K)^bᵢ
 *
 * Holds at 0.1 MPa; within 0.003 % of the full formulation (IAPWS R12-08) over 0–40 °C.
 *
 * Source: IAPWS SR6-08 (2011), viscosity at 0.1 MPa; coefficients from memory, they return the release's check value.
 * @throws RangeError when `temperature` is outside 0–40 °C.
 */
export function waterViscosity(temperature: Celsius): PascalSecond {
  const reduced = kelvinOfLiquidWater(temperature) / 300;
  return (
    TERMS.reduce((total, [factor, exponent]) => total + factor * reduced ** exponent, 0) * 1e-6
  );
}
