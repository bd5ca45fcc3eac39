/** Reading names as people write them: what counts is the words, not their case, commas or hyphens. */

/** The words of a name in lower case, with everything that is not a letter, digit, fraction or decimal point left out. */
export function nameWords(name: string): readonly string[] {
  return name.toLowerCase().match(/[a-z]+|\d+(?:[./]\d+)?/g) ?? [];
}

/**
 * Up to `count` of the known names, those with the most words in common with the name written first.
 *
 * Names of few words win over long ones that share as many; a number close to one written counts a little.
 */
export function closestNames(
  name: string,
  known: readonly string[],
  {
    count = 5,
    wordsOf = nameWords,
  }: {
    readonly count?: number;
    readonly wordsOf?: (name: string) => readonly string[];
  } = {},
): readonly string[] {
  const wanted = wordsOf(name);
  return known
    .map((candidate) => ({ candidate, score: likeness(wanted, wordsOf(candidate)) }))
    .filter(({ score }) => score > 0)
    .sort((a, b) => b.score - a.score)
    .slice(0, count)
    .map(({ candidate }) => candidate);
}

/** Share of words that two names have in common (Dice), a near number or a shared beginning counting in part. */
function likeness(wanted: readonly string[], known: readonly string[]): number {
  let shared = 0;
  for (const word of wanted) {
    shared += Math.max(0, ...known.map((other) => wordLikeness(word, other)));
  }
  return (2 * shared) / (wanted.length + known.length);
}

function wordLikeness(a: string, b: string): number {
  if (a === b) return 1;
  const [x, y] = [Number.parseFloat(a), Number.parseFloat(b)];
  if (x > 0 && y > 0) return 0.5 * Math.exp(-4 * Math.abs(Math.log(x / y)));
  let common = 0;
  while (common < Math.min(a.length, b.length) && a[common] === b[common]) common += 1;
  return common >= 2 ? (0.8 * common) / Math.max(a.length, b.length) : 0;
}
