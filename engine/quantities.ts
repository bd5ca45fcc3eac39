/**
 * Names for SI quantities, and the physical constants the engine uses.
 *
 * The names are plain aliases of `number`: they tell the reader the unit and cost nothing at run time. Everything
 * in the engine is SI. Pressures in a ram are written as heads, in metres of water above the waste valve's outlet.
 */

export type Metre = number;
export type SquareMetre = number;
export type CubicMetre = number;
export type Second = number;
export type MetrePerSecond = number;
export type MetrePerSecondSquared = number;
export type CubicMetrePerSecond = number;
export type Kilogram = number;
export type KilogramPerCubicMetre = number;
export type Newton = number;
export type NewtonPerMetre = number;
export type Pascal = number;
export type PascalSecond = number;
export type SquareMetrePerSecond = number;
/** Temperature in degrees Celsius: water near a ram is never far from it, and every source table uses it. */
export type Celsius = number;
/** A dimensionless number. */
export type Ratio = number;
/** Cycles per second. */
export type Hertz = number;
/** Volume taken up per metre of head: the elasticity of a body or of a trapped bubble. */
export type CubicMetrePerMetre = number;

/**
 * Standard acceleration of free fall.
 * Source: CGPM 1901, resolution 2 (third conference), g = 9.80665 m/s².
 */
export const GRAVITY: MetrePerSecondSquared = 9.80665;

/**
 * Standard atmosphere, the pressure at sea level.
 * Source: CGPM 1954, resolution 4 (tenth conference), 101325 Pa.
 */
export const STANDARD_ATMOSPHERE: Pascal = 101_325;
