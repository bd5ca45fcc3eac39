/** The known name that a misspelt one most likely means. */

/** Judgement: more than a third of the letters wrong is another word. */
const MOST_WRONG = 1 / 3;

export function didYouMean(written: string, known: readonly string[]): string | undefined {
  const wanted = bareLetters(written);
  let best: string | undefined;
  let fewest = Number.POSITIVE_INFINITY;
  for (const name of known) {
    const candidate = bareLetters(name);
    const wrong = editDistance(wanted, candidate);
    if (wrong < fewest && wrong <= Math.max(1, MOST_WRONG * candidate.length)) {
      best = name;
      fewest = wrong;
    }
  }
  return best;
}

/** `waste_valve`, `waste valve` and `wasteValve` are one name. */
function bareLetters(name: string): string {
  return name
    .slice(0, 40)
    .toLowerCase()
    .replace(/[^a-z0-9]/g, '');
}

/**
 * Fewest insertions, deletions, changes and swaps of neighbours that turn one word into the other.
 * Source: Damerau (1964), Commun. ACM 7(3), restricted form (memory).
 */
function editDistance(a: string, b: string): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, column) => column);
  for (let row = 1; row <= a.length; row += 1) {
    const current = [row];
    for (let column = 1; column <= b.length; column += 1) {
      const change = a[row - 1] === b[column - 1] ? 0 : 1;
      let least = Math.min(
        (last[column] ?? 0) + 1,
        (current[column - 1] ?? 0) + 1,
        (last[column - 1] ?? 0) + change,
      );
      if (row > 1 && column > 1 && a[row - 1] === b[column - 2] && a[row - 2] === b[column - 1]) {
        least = Math.min(least, (beforeLast[column - 2] ?? 0) + 1);
      }
      current[column] = least;
    }
    beforeLast = last;
    last = current;
  }
  return last[b.length] ?? 0;
}
