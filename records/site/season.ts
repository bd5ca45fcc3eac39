/** Months as people write them: `may to sep`, `nov to feb`, `jul`, `apr, sep to oct`, `all year`. */
import { eachMonth, MONTHS, type Month, type Season } from '@fallwright/engine';

export const MONTH_NAMES: Readonly<Record<Month, string>> = {
  jan: 'January',
  feb: 'February',
  mar: 'March',
  apr: 'April',
  may: 'May',
  jun: 'June',
  jul: 'July',
  aug: 'August',
  sep: 'September',
  oct: 'October',
  nov: 'November',
  dec: 'December',
};

/** True in each month that is meant; undefined when the text names no months. A season may cross the new year. */
export function seasonOf(text: string): Season | undefined {
  const words = text.trim().toLowerCase();
  if (words === 'all year') return eachMonth(() => true);
  const parts = words.split(',').map((part) => monthsFrom(part.trim()));
  if (parts.some((part) => part === undefined)) return undefined;
  return eachMonth((month) => parts.some((part) => part?.includes(month)));
}

function monthsFrom(text: string): readonly number[] | undefined {
  const [, firstWord = '', lastWord = firstWord] =
    /^(\p{L}+)(?:\s*(?:-|–|\bto\b)\s*(\p{L}+))?$/u.exec(text) ?? [];
  const first = monthCalled(firstWord);
  const last = monthCalled(lastWord);
  if (first === undefined || last === undefined) return undefined;
  const count = ((last - first + MONTHS.length) % MONTHS.length) + 1;
  return Array.from({ length: count }, (_, step) => (first + step) % MONTHS.length);
}

/** By its first three letters or more: `sep`, `sept`, `september`. */
function monthCalled(word: string): number | undefined {
  if (word.length < 3) return undefined;
  const found = MONTHS.findIndex((month) => MONTH_NAMES[month].toLowerCase().startsWith(word));
  return found < 0 ? undefined : found;
}
