/**
 * What to buy of a pipe that is sold in bars or coils, and which cut comes from which: the cheapest way there is.
 *
 * Draw lines and pieces as dots and each cut as a string between its line and its piece. Where strings hold lines and pieces
 * together they make a group. A group of k lines and p pieces has at least k + p − 1 cuts, and that is enough: pieces are
 * laid end to end and parted where a line ends. So a group of joined lines costs the cheapest pieces that cover its length, and
 * p − 1 sockets. What is left is to part the lines into groups, and every way of that is tried. Lines that must be of one
 * piece make groups of one piece each.
 */
import type { Metre } from '../../../quantities.ts';
import type { Money, PipeOffer } from '../offers.ts';

export type LineName = 'drive' | 'feeder' | 'delivery';

/** Lines alike that want a pipe. */
export interface WantedLines {
  readonly line: LineName;
  readonly length: Metre;
  readonly count: number;
}

export interface Cut {
  readonly line: LineName;
  /** Which of the lines alike, from 1. */
  readonly number: number;
  readonly length: Metre;
}

/** A bar or coil to buy, and what it is cut into. */
export interface BoughtPiece {
  readonly length: Metre;
  readonly cost?: Money;
  readonly cuts: readonly Cut[];
  readonly offCut: Metre;
}

export interface CutPlan {
  /** One for each line where the pipe is cut to any length in the shop. */
  readonly pieces: readonly BoughtPiece[];
  /** Places at which two cuts of a line are joined. */
  readonly joints: number;
  /** Of the pieces, without sockets; absent when a price is missing. */
  readonly cost?: Money;
}

/** A hair's breadth over a whole number of bars is rounding and no bar. */
const HAIR: Metre = 1e-6;

interface Stock {
  readonly length: Metre;
  readonly cost?: Money;
  /** What counts when buying: money, or length where a price is missing. */
  readonly weight: number;
}

/** Money, then joints, then pieces, then length bought: the less the better. */
type Score = readonly [weight: number, joints: number, pieces: number, bought: Metre];

interface Grouped {
  readonly score: Score;
  readonly stock: readonly Stock[];
}

/**
 * The cheapest plan, sockets included; of those alike the one with the fewest joints.
 *
 * Nothing when a line must be of one piece and none is long enough.
 * @throws RangeError when a length or count is not above zero.
 */
export function cutPlan(
  offer: PipeOffer,
  wanted: readonly WantedLines[],
  socketCost: Money,
): CutPlan | undefined {
  for (const { length, count } of wanted) {
    if (!(length > 0)) throw new RangeError(`length must be above zero, got ${length} m`);
    if (!(count > 0)) throw new RangeError(`count must be above zero, got ${count}`);
  }
  const sold = offer.soldLengths ?? [];
  for (const { length } of sold) {
    if (!(length > 0)) throw new RangeError(`a sold length must be above zero, got ${length} m`);
  }
  return sold.length === 0 ? cutToLength(offer, wanted) : wholePieces(offer, wanted, socketCost);
}

function cutToLength({ costPerMetre }: PipeOffer, wanted: readonly WantedLines[]): CutPlan {
  const pieces = wanted.flatMap(({ line, length, count }) =>
    Array.from({ length: count }, (_, index): BoughtPiece => {
      const cost = costPerMetre === undefined ? {} : { cost: Math.round(costPerMetre * length) };
      return { length, ...cost, cuts: [{ line, number: index + 1, length }], offCut: 0 };
    }),
  );
  return { pieces, joints: 0, ...sumOf(pieces) };
}

function sumOf(pieces: readonly { readonly cost?: Money }[]): { readonly cost?: Money } {
  let cost = 0;
  for (const piece of pieces) {
    if (piece.cost === undefined) return {};
    cost += piece.cost;
  }
  return { cost };
}

function stockOf({ soldLengths = [], costPerMetre }: PipeOffer): Stock[] {
  const priced = soldLengths.map(({ length, cost }) => ({
    length,
    cost: cost ?? (costPerMetre === undefined ? undefined : Math.round(costPerMetre * length)),
  }));
  // Of one coil with a price and one without nobody can tell which is cheaper: the one with a price is bought.
  const known = priced.flatMap(({ length, cost }) =>
    cost === undefined ? [] : [{ length, cost, weight: cost }],
  );
  const stock = known.length > 0 ? known : priced.map(({ length }) => ({ length, weight: length }));
  return stock.sort((a, b) => a.weight / a.length - b.weight / b.length || b.length - a.length);
}

function wholePieces(
  offer: PipeOffer,
  wanted: readonly WantedLines[],
  socketCost: Money,
): CutPlan | undefined {
  const stock = stockOf(offer);
  const isPriced = stock.every(({ cost }) => cost !== undefined);
  const joint = isPriced ? socketCost : 0;
  const buy = (length: Metre): Grouped | undefined =>
    offer.joinable === false ? cheapestPiece(stock, length) : cheapestCover(stock, length, joint);
  const groups = cheapestGroups(wanted, buy);
  if (!groups) return undefined;
  const made: { length: Metre; cost?: Money; cuts: Cut[]; offCut: Metre }[] = [];
  const next = wanted.map(() => 1);
  let lines = 0;
  for (const { members, bought } of groups) {
    // The longest first, so that what is left over is of the smallest.
    const pieces = [...bought.stock]
      .sort((a, b) => b.length - a.length)
      .map(({ length, cost }) => ({
        length,
        ...(cost === undefined ? {} : { cost }),
        cuts: [] as Cut[],
        offCut: length,
      }));
    let at = 0;
    members.forEach((count, kind) => {
      const { line, length } = wanted[kind] as WantedLines;
      for (let i = 0; i < count; i++) {
        lines++;
        const number = (next[kind] as number)++;
        let left = length;
        while (left > HAIR) {
          const piece = pieces[at];
          if (!piece) throw new Error('a group was bought too short');
          const cut = Math.min(left, piece.offCut);
          piece.cuts.push({ line, number, length: cut });
          piece.offCut = Math.max(0, piece.offCut - cut);
          left -= cut;
          // The last piece stretches by the hair that the cover let pass.
          if (piece.offCut <= HAIR && at < pieces.length - 1) at++;
          else if (piece.offCut <= HAIR) break;
        }
      }
    });
    made.push(...pieces);
  }
  const joints = made.reduce((sum, { cuts }) => sum + cuts.length, 0) - lines;
  return { pieces: made, joints, ...sumOf(made) };
}

/** One piece that is long enough. */
function cheapestPiece(stock: readonly Stock[], length: Metre): Grouped | undefined {
  let best: Grouped | undefined;
  for (const item of stock) {
    if (item.length < length - HAIR) continue;
    const score: Score = [item.weight, 0, 1, item.length];
    if (!best || isLess(score, best.score)) best = { score, stock: [item] };
  }
  return best;
}

/** The pieces that together are long enough. Every number of each is tried, as far as it can still be the best. */
function cheapestCover(stock: readonly Stock[], length: Metre, joint: Money): Grouped | undefined {
  let best: Grouped | undefined;
  const counts = stock.map(() => 0);
  const tryFrom = (kind: number, left: Metre, weight: number, pieces: number): void => {
    if (left <= HAIR * Math.max(1, pieces)) {
      const bought = stock.reduce((sum, s, i) => sum + s.length * (counts[i] as number), 0);
      const score: Score = [weight + joint * (pieces - 1), pieces - 1, pieces, bought];
      if (!best || isLess(score, best.score)) {
        best = {
          score,
          stock: stock.flatMap((s, i) => Array.from({ length: counts[i] as number }, () => s)),
        };
      }
      return;
    }
    const item = stock[kind];
    if (!item) return;
    // No later kind is cheaper by the metre.
    if (best && weight + (left * item.weight) / item.length > best.score[0] + 1e-6) return;
    const most = Math.ceil(left / item.length - HAIR / item.length);
    for (let count = most; count >= 0; count--) {
      counts[kind] = count;
      tryFrom(kind + 1, left - count * item.length, weight + count * item.weight, pieces + count);
    }
    counts[kind] = 0;
  };
  tryFrom(0, length, 0, 0);
  return best;
}

interface Group {
  /** How many lines of each kind. */
  readonly members: readonly number[];
  readonly bought: Grouped;
}

/** The best way to part lines into groups, each bought by itself: by how many of each kind are left. */
function cheapestGroups(
  wanted: readonly WantedLines[],
  buy: (length: Metre) => Grouped | undefined,
): Group[] | undefined {
  const bases = wanted.map((_, i) => wanted.slice(0, i).reduce((p, w) => p * (w.count + 1), 1));
  const states = wanted.reduce((product, { count }) => product * (count + 1), 1);
  const countsAt = (state: number): number[] =>
    wanted.map(({ count }, i) => Math.floor(state / (bases[i] as number)) % (count + 1));
  const groupOf = Array.from({ length: states }, (_, state) => {
    if (state === 0) return undefined;
    const members = countsAt(state);
    const bought = buy(members.reduce((s, n, i) => s + n * (wanted[i] as WantedLines).length, 0));
    return bought && { members, bought };
  });
  const best: ({ score: Score; last?: Group; from: number } | undefined)[] = [
    { score: [0, 0, 0, 0], from: 0 },
  ];
  for (let state = 1; state < states; state++) {
    const left = countsAt(state);
    const first = left.findIndex((n) => n > 0);
    for (let taken = 1; taken <= state; taken++) {
      const group = groupOf[taken];
      // A group holds a line of the first kind left, so that each parting is met once.
      if (!group || group.members[first] === 0) continue;
      if (group.members.some((n, i) => n > (left[i] as number))) continue;
      const rest = best[state - taken];
      if (!rest) continue;
      const score = rest.score.map((v, i) => v + (group.bought.score[i] as number));
      const own = best[state];
      if (!own || isLess(score as unknown as Score, own.score)) {
        best[state] = { score: score as unknown as Score, last: group, from: state - taken };
      }
    }
  }
  const groups: Group[] = [];
  let at = states - 1;
  while (at > 0) {
    const step = best[at];
    if (!step?.last) return undefined;
    groups.push(step.last);
    at = step.from;
  }
  return groups;
}

function isLess(a: Score, b: Score): boolean {
  for (let i = 0; i < a.length; i++) {
    const gap = (a[i] as number) - (b[i] as number);
    if (Math.abs(gap) > 1e-9) return gap < 0;
  }
  return false;
}
