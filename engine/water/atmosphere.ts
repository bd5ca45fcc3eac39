/** Pressure of the air at a place: with altitude there is less of it, and a suction breaks the column sooner. */
import { GRAVITY, type Metre, type Pascal, STANDARD_ATMOSPHERE } from '../quantities.ts';

const LOWEST_ALTITUDE: Metre = -2000;
/** Where the troposphere of the standard ends. */
const HIGHEST_ALTITUDE: Metre = 11_000;

/** Constants of the standard: K, K/m, kg/mol, J/(mol K) and m. */
const SEA_LEVEL_TEMPERATURE = 288.15;
const LAPSE_RATE = 0.0065;
const MOLAR_MASS_OF_AIR = 0.0289644;
const MOLAR_GAS_CONSTANT = 8.31432;
const EARTH_RADIUS: Metre = 6_356_766;

/**
 * Standard pressure of the air at a geopotential height, the height that barometers and weather maps use.
 *
 *   p = p₀ [ T₀ / (T₀ − L h) ]^(−g M / (R L))
 *
 * Holds from −2000 to 11 000 m. Weather moves the true value by about 3 % either way (Judgement: common practice).
 *
 * Source: U.S. Standard Atmosphere 1976, equation 33a; ISO 2533 (1975) shares the constants. From memory.
 * @throws RangeError when `height` is outside −2000…11 000 m.
 */
export function pressureAtGeopotentialHeight(height: Metre): Pascal {
  requireTroposphere(height);
  return tropospherePressure(height);
}

function tropospherePressure(height: Metre): Pascal {
  const exponent = (GRAVITY * MOLAR_MASS_OF_AIR) / (MOLAR_GAS_CONSTANT * LAPSE_RATE);
  return STANDARD_ATMOSPHERE * (1 - (LAPSE_RATE * height) / SEA_LEVEL_TEMPERATURE) ** exponent;
}

/**
 * Standard pressure of the air at an altitude above the sea, as a map or a level prints it.
 *
 *   h = r z / (r + z), then as for the geopotential height
 *
 * Holds from −2000 to 11 000 m.
 *
 * Source: U.S. Standard Atmosphere 1976, equations 18 and 33a. From memory.
 * @throws RangeError when `altitude` is outside −2000…11 000 m.
 */
export function atmosphericPressure(altitude: Metre): Pascal {
  requireTroposphere(altitude);
  return tropospherePressure((EARTH_RADIUS * altitude) / (EARTH_RADIUS + altitude));
}

function requireTroposphere(height: Metre): void {
  if (!(height >= LOWEST_ALTITUDE && height <= HIGHEST_ALTITUDE)) {
    throw new RangeError(
      `altitude must lie between ${LOWEST_ALTITUDE} and ${HIGHEST_ALTITUDE} m, got ${height} m`,
    );
  }
}
