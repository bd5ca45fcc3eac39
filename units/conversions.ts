/** Named conversions for programs, whose field names carry the unit. People's words go through `readQuantity`. */
import { PASCALS_PER_METRE_OF_WATER } from './unit-words.ts';

const LITRES_PER_CUBIC_METRE = 1000;
const SECONDS_PER_MINUTE = 60;
const SECONDS_PER_DAY = 86_400;

export function toLitres(volume: number): number {
  return volume * LITRES_PER_CUBIC_METRE;
}

export function toLitresPerMinute(flow: number): number {
  return flow * LITRES_PER_CUBIC_METRE * SECONDS_PER_MINUTE;
}

export function fromLitresPerMinute(litresPerMinute: number): number {
  return litresPerMinute / (LITRES_PER_CUBIC_METRE * SECONDS_PER_MINUTE);
}

export function toLitresPerDay(flow: number): number {
  return flow * LITRES_PER_CUBIC_METRE * SECONDS_PER_DAY;
}

export function fromLitresPerDay(litresPerDay: number): number {
  return litresPerDay / (LITRES_PER_CUBIC_METRE * SECONDS_PER_DAY);
}

export function toBeatsPerMinute(frequency: number): number {
  return frequency * SECONDS_PER_MINUTE;
}

export function toBar(pressure: number): number {
  return pressure / 1e5;
}

/** Conventional metres of water. */
export function toMetresOfWater(pressure: number): number {
  return pressure / PASCALS_PER_METRE_OF_WATER;
}
