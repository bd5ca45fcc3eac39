/** A season as it is written and as it is read back. */
import { monthsInWords } from '@fallwright/papers';
import { seasonOf } from '@fallwright/records';

export const SEASON_FAULT = 'The season cannot be read. Write it like: may to sep, or all year.';

/** `from May to September`; undefined when the text names no months. */
export function seasonRead(text: string): string | undefined {
  const season = seasonOf(text);
  if (season === undefined) return undefined;
  return season.every((isMeant) => isMeant) ? 'all year' : monthsInWords(season);
}
