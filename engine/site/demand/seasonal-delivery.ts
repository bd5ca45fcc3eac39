import type { CubicMetrePerSecond } from '../../quantities.ts';
import { type ByMonth, eachMonth, inMonth } from './months.ts';

/**
 * What a ram delivers in each month, when its source yields less in some.
 *
 *   q = q₀ · min(1, yield/supply)
 *
 * `supply` is all that the ram takes from the source, waste and delivery. Where the source yields less, the ram runs for that
 * part of the time, or its stroke is shortened until it takes no more. Judgement: its efficiency then stays as it is, and
 * somebody tends it, so this is the most that can be had. In months without a yield the source gives all that the ram takes.
 */
export function seasonalDelivery({
  delivered,
  supply,
  yields,
}: {
  readonly delivered: CubicMetrePerSecond;
  readonly supply: CubicMetrePerSecond;
  readonly yields: ByMonth<CubicMetrePerSecond | 'plenty'>;
}): ByMonth<CubicMetrePerSecond> {
  return eachMonth((month) => {
    const given = inMonth(yields, month);
    if (given === 'plenty' || !(supply > given)) return delivered;
    return (delivered * given) / supply;
  });
}
