import type { Celsius } from '../quantities.ts';

/** Coldest and warmest water that the engine takes. */
export const COLDEST_WATER: Celsius = 0;
/** Judgement: springs, streams and sunlit pipes stay below it, and the rating tables of plastic pipe end here. */
export const WARMEST_WATER: Celsius = 40;

/**
 * The same temperature in kelvin, when water at it is liquid and within the range of the engine.
 *
 * Source: the Celsius scale is defined as T − 273.15 K.
 * @throws RangeError when `temperature` is below 0 °C or above 40 °C.
 */
export function kelvinOfLiquidWater(temperature: Celsius): number {
  if (!(temperature >= COLDEST_WATER && temperature <= WARMEST_WATER)) {
    throw new RangeError(
      `temperature must lie between ${COLDEST_WATER} and ${WARMEST_WATER} °C, got ${temperature} °C`,
    );
  }
  return temperature + 273.15;
}
