import { MONTHS } from '@fallwright/engine';
import { MONTH_NAMES } from '@fallwright/records';

export function monthName(month: number): string {
  const word = MONTHS[month];
  if (!word) throw new RangeError(`month must be from 0 to 11, got ${month}`);
  return MONTH_NAMES[word];
}

/** Some months of the year: `from April to September`, `in January`, `from October to March and in June`. */
export function monthsInWords(isMeant: readonly boolean[]): string {
  const runs = runsOf(isMeant).map(({ first, last }) =>
    first === last ? `in ${monthName(first)}` : `from ${monthName(first)} to ${monthName(last)}`,
  );
  return runs.length < 2 ? (runs[0] ?? '') : `${runs.slice(0, -1).join(', ')} and ${runs.at(-1)}`;
}

/** Runs of months that follow one another; one that crosses the new year is a single run. */
function runsOf(isMeant: readonly boolean[]): readonly { first: number; last: number }[] {
  const runs: { first: number; last: number }[] = [];
  for (const [month, meant] of isMeant.entries()) {
    if (!meant) continue;
    const run = runs.at(-1);
    if (run?.last === month - 1) run.last = month;
    else runs.push({ first: month, last: month });
  }
  const [first, last] = [runs[0], runs.at(-1)];
  const crosses = first?.first === 0 && last?.last === isMeant.length - 1;
  if (!first || !last || first === last || !crosses) return runs;
  return [...runs.slice(1, -1), { first: last.first, last: first.last }];
}
