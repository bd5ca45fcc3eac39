/**
 * A number without its unit is never guessed at. In a table of months the unit stands in the month before: on leaving the box
 * it is written out behind the bare number, where the person sees it and can change it.
 */
import type { Purpose } from '@fallwright/units';
import { readNumber, readQuantity } from '@fallwright/units';

/** The text with the unit of the nearest that has one; undefined when it is no bare number, or none has a unit that fits. */
export function withUnitOfOthers(
  text: string,
  others: readonly string[],
  purpose: Purpose,
): string | undefined {
  const bare = text.trim();
  if (readNumber(bare)?.rest !== '' || readQuantity(bare, purpose).ok) return undefined;
  return [...others]
    .reverse()
    .map((other) => `${bare} ${unitOf(other)}`)
    .find((whole) => readQuantity(whole, purpose).ok);
}

/** `L/min` of `14 L/min ± 0.5 L/min`. */
function unitOf(text: string): string {
  return (readNumber(text)?.rest ?? '').replace(/\s*(±|\+\s*\/?\s*-).*$/, '');
}
