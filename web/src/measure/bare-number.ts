/**
 * A number without its unit is never guessed at. In a list of readings the unit stands in the reading before: on leaving the
 * box it is written out behind the bare number, where the person sees it and can change it.
 */
import type { Purpose } from '@fallwright/units';
import { readNumber, readQuantity } from '@fallwright/units';

/** `1.5 L`, `0.62 L/min`, `62/min`, and each with its ±. */
const NUMBER_AND_UNIT = /^\s*[-−]?[\d.,]+\s*([A-Za-z°%µ]+(?:\/[A-Za-z]+)?|\/[A-Za-z]+)\s*(?:±.*)?$/;

/** The text with the unit of a reading beside it; undefined when it is no bare number, or no reading has a plain unit. */
export function withUnitOfOthers(
  text: string,
  others: readonly string[],
  purpose: Purpose,
): string | undefined {
  const bare = text.trim();
  if (bare === '' || readQuantity(bare, purpose).ok || !isNumber(bare)) return undefined;
  const unit = [...others]
    .reverse()
    .map((other) => NUMBER_AND_UNIT.exec(other)?.[1])
    .find((found) => found !== undefined);
  if (unit === undefined) return undefined;
  const whole = unit.startsWith('/') ? `${bare}${unit}` : `${bare} ${unit}`;
  return readQuantity(whole, purpose).ok ? whole : undefined;
}

const isNumber = (text: string): boolean =>
  /^[-−]?[\d.,]+$/.test(text) && readNumber(text) !== undefined;
