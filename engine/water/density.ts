import type { Celsius, KilogramPerCubicMetre } from '../quantities.ts';
import { specificVolume } from './specific-volume.ts';

/**
 * Density of air-free fresh water at one atmosphere.
 *
 *   ρ = 1 / v(T)
 *
 * Holds for 0–40 °C. At 100 m of head the true value is 0.05 % higher; dissolved salts of a hard spring add as much.
 *
 * Source: IAPWS SR6-08 (2011), specific volume at 0.1 MPa.
 * @throws RangeError when `temperature` is outside 0–40 °C.
 */
export function waterDensity(temperature: Celsius): KilogramPerCubicMetre {
  return 1 / specificVolume(temperature).volume;
}
