/** How far a combination is from each limit, and how sure its water is. */
import type { Contender, Margins, Wish } from '@fallwright/engine';
import { plainFigures } from '@fallwright/units';
import { perCent } from '../answered.ts';
import { type Reader, shown } from './reader.ts';

type LimitName = Exclude<keyof Margins, 'least'>;

const LIMITS = {
  closingFlow: 'flow that shuts the waste valve',
  recoil: 'head that the recoil needs',
  hammer: 'hammer that lifts',
  source: 'water from the source',
  beat: 'time for the whole line to move',
  pressure: 'ratings of the parts',
  pulse: 'pulse in the air vessel',
} as const satisfies Record<LimitName, string>;

/** Judgement: within 15 % of a limit is close, as falls and flows are seldom known better. */
const TIGHT: number = 0.15;

export interface MarginRow {
  readonly what: string;
  /** `35 % to spare`, `4.2 times what it takes`, `3 % short`. */
  readonly margin: string;
  readonly isTight: boolean;
}

/** The tightest first. */
export function marginRows(margins: Margins): readonly MarginRow[] {
  return (Object.keys(LIMITS) as LimitName[])
    .flatMap((name) => {
      const margin = margins[name];
      return margin === undefined ? [] : [{ name, margin }];
    })
    .sort((a, b) => a.margin - b.margin)
    .map(({ name, margin }) => ({
      what: LIMITS[name],
      margin: spareInWords(margin),
      isTight: margin < TIGHT,
    }));
}

function spareInWords(margin: number): string {
  if (margin < 0) return `${perCent(-margin)} short`;
  if (margin >= 1) return `${plainFigures(1 + margin, 2)} times what it takes`;
  return `${perCent(margin)} to spare`;
}

/** The least of the margins in a sentence. */
export function leastMarginInWords(margins: Margins): string {
  const [row] = marginRows(margins);
  if (!row) return 'No limit is near.';
  return row.isTight
    ? `It is close: ${row.margin} by the ${row.what}. Measure again before buying.`
    : `Nearest to its limit: ${row.what}, ${row.margin}.`;
}

/** The chance and the band, where a judge has spoken. */
export function chanceInWords(
  { judgement, candidate }: Contender,
  wish: Wish,
  reader: Reader,
): string | undefined {
  if (!judgement) return undefined;
  const { count } = candidate.parts;
  const low = shown(count * judgement.low, 'daily', reader, 2);
  const high = shown(count * judgement.high, 'daily', reader, 2);
  const what =
    wish.need === undefined
      ? 'that it runs'
      : `that it gives the ${shown(wish.need, 'daily', reader)} that are needed`;
  return `The chance ${what} is ${perCent(judgement.chance)}. In eight cases of ten it gives between ${low} and ${high}.`;
}
