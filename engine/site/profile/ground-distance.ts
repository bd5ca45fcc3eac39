import type { Metre } from '../../quantities.ts';

/** Source: WGS 84, NGA STND.0036 (memory): the ellipsoid that GPX 1.1 names for its latitudes and longitudes. */
const EQUATOR_RADIUS: Metre = 6_378_137;
const FLATTENING = 1 / 298.257_223_563;
const ECCENTRICITY_SQUARED = FLATTENING * (2 - FLATTENING);
const RADIANS = Math.PI / 180;

export interface GroundPlace {
  /** Degrees north. */
  readonly latitude: number;
  /** Degrees east. */
  readonly longitude: number;
}

/**
 * Level distance between two places that are near one another.
 *
 *   d = √[ (M Δφ)² + (N cos φ Δλ)² ],   M = a(1 − e²)/(1 − e² sin²φ)^{3/2},   N = a/√(1 − e² sin²φ),   φ half-way
 *
 * Better than 0.01 % for legs up to 10 km away from the poles, where a sphere of mean radius is up to 0.56 % out. On legs
 * of hundreds of kilometres, which no line of a ram has, it runs a few per cent long.
 *
 * Source: Snyder (1987), USGS Professional Paper 1395, eqs. 4-18 to 4-21 for M and N (memory).
 */
export function groundDistance(from: GroundPlace, to: GroundPlace): Metre {
  const middle = ((from.latitude + to.latitude) / 2) * RADIANS;
  const w = 1 - ECCENTRICITY_SQUARED * Math.sin(middle) ** 2;
  const meridianRadius = (EQUATOR_RADIUS * (1 - ECCENTRICITY_SQUARED)) / w ** 1.5;
  const normalRadius = EQUATOR_RADIUS / Math.sqrt(w);
  // Across the 180th meridian the short way is the way.
  const turn = ((((to.longitude - from.longitude + 180) % 360) + 360) % 360) - 180;
  const north = meridianRadius * (to.latitude - from.latitude) * RADIANS;
  const east = normalRadius * Math.cos(middle) * turn * RADIANS;
  return Math.hypot(north, east);
}
