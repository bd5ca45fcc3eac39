/** The only place that knows litres, bar, feet or gallons. */
export {
  fromLitresPerDay,
  fromLitresPerMinute,
  toBar,
  toBeatsPerMinute,
  toLitres,
  toLitresPerDay,
  toLitresPerMinute,
  toMetresOfWater,
} from './conversions.ts';
export { plainFigures } from './figures.ts';
export { type FormatOptions, formatNumber, formatQuantity, unitShown } from './format-quantity.ts';
export type { Kind } from './kinds.ts';
export { PURPOSES, type Purpose, type PurposeRow, purposeRow } from './purposes.ts';
export { readNumber } from './read-number.ts';
export {
  bareNumberMessage,
  type Quantity,
  type QuantityFault,
  type QuantityProblem,
  type QuantityRead,
  quoted,
  readQuantity,
} from './read-quantity.ts';
export { unitSystemOf } from './unit-system.ts';
export type { System } from './unit-words.ts';
