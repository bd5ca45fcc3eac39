import type { Celsius, Pascal } from '../quantities.ts';
import { waterDensity } from './density.ts';
import { waterSoundSpeed } from './sound-speed.ts';
import { specificVolume } from './specific-volume.ts';

/**
 * Stiffness of water against a quick squeeze, with no time for heat to pass: what a pressure wave feels.
 *
 *   K_s = ρ c²
 *
 * Source: definition; density and speed of sound by IAPWS SR6-08 (2011).
 * @throws RangeError when `temperature` is outside 0–40 °C.
 */
export function isentropicBulkModulus(temperature: Celsius): Pascal {
  return waterDensity(temperature) * waterSoundSpeed(temperature) ** 2;
}

/**
 * Stiffness of water against a slow squeeze at one temperature: what a pressure test with a hand pump feels.
 *
 *   K_T = −v / (∂v/∂p)
 *
 * Up to 3 % softer than the quick one at 40 °C, the same at 4 °C.
 *
 * Source: definition; specific volume by IAPWS SR6-08 (2011).
 * @throws RangeError when `temperature` is outside 0–40 °C.
 */
export function isothermalBulkModulus(temperature: Celsius): Pascal {
  const { volume, byPressure } = specificVolume(temperature);
  return -volume / byPressure;
}
