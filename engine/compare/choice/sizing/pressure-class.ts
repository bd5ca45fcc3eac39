import { deratedRating } from '../../../pipes/derated-rating.ts';
import type { Celsius, Pascal, Ratio } from '../../../quantities.ts';
import type { PipeOffer } from '../offers.ts';

/** What a pipe may carry at a temperature, against what it must. */
export interface PressureClassRow {
  readonly offer: PipeOffer;
  /** Rating of the pipe derated for temperature; absent when none is stated. */
  readonly rating?: Pascal;
  /** rating/pressure − 1; absent with the rating. */
  readonly margin?: Ratio;
}

/**
 * The pipes that carry a pressure at a temperature, the one with least to spare first.
 *
 * Pipes without a rating come last: nobody has said what they carry. Threads and clamps may carry less than the pipe.
 * Source: ratings and derating stand with the pipes and materials.
 */
export function pressureClasses(
  offers: readonly PipeOffer[],
  { pressure, temperature }: { readonly pressure: Pascal; readonly temperature: Celsius },
): PressureClassRow[] {
  return offers
    .map((offer): PressureClassRow => {
      const rating = deratedRating(offer.pipe, temperature);
      return rating === undefined ? { offer } : { offer, rating, margin: rating / pressure - 1 };
    })
    .filter(({ margin }) => margin === undefined || margin >= 0)
    .sort((a, b) => (a.margin ?? Infinity) - (b.margin ?? Infinity));
}
