import { seededStream } from './seeded-stream.ts';

/**
 * One column of a Latin hypercube: `samples` numbers between 0 and 1, one in each of as many equal parts, in random order.
 *
 * A column follows from seed, name and number of samples alone, so columns of different names are independent and may be
 * made in any order or place. A mean over such samples scatters less than over plain ones for all that is additive.
 *
 * Source: McKay, Beckman and Conover (1979), Technometrics 21, 239–245 (memory); order by Fisher and Yates.
 * @throws RangeError when `samples` is no whole number above zero.
 */
export function latinColumn(
  name: string,
  { samples, seed }: { readonly samples: number; readonly seed: number },
): readonly number[] {
  if (!(Number.isInteger(samples) && samples > 0)) {
    throw new RangeError(`samples must be a whole number above zero, got ${samples}`);
  }
  const next = seededStream(seed, name);
  const order = Array.from({ length: samples }, (_, i) => i);
  for (let i = samples - 1; i > 0; i--) {
    const j = Math.floor(next() * (i + 1));
    [order[i], order[j]] = [order[j] as number, order[i] as number];
  }
  // Half a step of the generator off the edges: never 0 nor 1, whose normal deviates are infinite.
  return order.map((part) => (part + next() + 2 ** -33) / samples);
}
