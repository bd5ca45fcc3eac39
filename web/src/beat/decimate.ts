/**
 * Fewer points with the same look: in each column of pixels only the lowest and the highest value are kept, in the order
 * in which they came. A spike one sample wide stays.
 */

export interface Samples {
  /** Rising. */
  readonly time: Float64Array;
  readonly values: Float64Array;
}

export interface Decimated {
  readonly times: readonly number[];
  readonly values: readonly number[];
}

/** The samples between two moments, with one beyond each end so that a line leaves the page. */
export function decimate(
  { time, values }: Samples,
  { from, to, columns }: { readonly from: number; readonly to: number; readonly columns: number },
): Decimated {
  const first = Math.max(0, firstAtOrAfter(time, from) - 1);
  const end = Math.min(time.length, firstAtOrAfter(time, to) + 2);
  if (end - first <= 2 * columns) {
    return { times: [...time.subarray(first, end)], values: [...values.subarray(first, end)] };
  }
  const keptTimes: number[] = [];
  const keptValues: number[] = [];
  const keep = (index: number): void => {
    keptTimes.push(time[index] as number);
    keptValues.push(values[index] as number);
  };
  const perColumn = columns / (to - from);
  let column = Number.NEGATIVE_INFINITY;
  let lowest = first;
  let highest = first;
  const close = (): void => {
    keep(Math.min(lowest, highest));
    if (lowest !== highest) keep(Math.max(lowest, highest));
  };
  for (let i = first; i < end; i++) {
    const mine = Math.floor(((time[i] as number) - from) * perColumn);
    if (mine === column) {
      if ((values[i] as number) < (values[lowest] as number)) lowest = i;
      else if ((values[i] as number) > (values[highest] as number)) highest = i;
      continue;
    }
    if (i > first) close();
    column = mine;
    lowest = i;
    highest = i;
  }
  close();
  return { times: keptTimes, values: keptValues };
}

/** Index of the first moment at or after `moment`; the length when there is none. */
export function firstAtOrAfter(time: Float64Array, moment: number): number {
  let low = 0;
  let high = time.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if ((time[middle] as number) < moment) low = middle + 1;
    else high = middle;
  }
  return low;
}
