/**
 * A stream of even numbers between 0 and 1 that follows from a seed and a name alone.
 *
 * Every name has a stream of its own, so that what is drawn for one thing does not depend on what else is drawn, nor in
 * which order. Whole numbers of 32 bits only: the same on every machine.
 */

/** 2³² over the golden ratio, made odd: steps that visit every 32-bit number. Source: Steele, Lea and Flood (2014), SplitMix (memory). */
const STEP = 0x9e3779b9;

/**
 * Mixes the bits of a number so that each bit of it moves half of those that come out.
 *
 * Source: finalizer of MurmurHash3 (Appleby 2011, public domain; constants from memory). A test looks at what it does.
 */
export function mixedBits(number: number): number {
  let bits = number | 0;
  bits = Math.imul(bits ^ (bits >>> 16), 0x85ebca6b);
  bits = Math.imul(bits ^ (bits >>> 13), 0xc2b2ae35);
  return (bits ^ (bits >>> 16)) >>> 0;
}

/**
 * The next number of the stream at each call, from 0 to just below 1.
 * @throws RangeError when the seed is not a whole number that is kept exactly.
 */
export function seededStream(seed: number, name: string): () => number {
  if (!Number.isSafeInteger(seed)) throw new RangeError(`seed must be a whole number, got ${seed}`);
  let state = mixedBits(mixedBits(seed) ^ mixedBits(Math.floor(seed / 2 ** 32) + STEP));
  for (const letter of name) state = mixedBits(state ^ (letter.codePointAt(0) ?? 0)) + STEP;
  return () => {
    state = (state + STEP) | 0;
    return mixedBits(state) / 2 ** 32;
  };
}
