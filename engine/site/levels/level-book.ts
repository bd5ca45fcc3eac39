/**
 * A level book: what was read on a staff through a level, station by station, and the heights that follow.
 *
 * The two ways of working it out are both here. Rise and fall takes the difference of each reading from the one before; height
 * of instrument adds the back sight to the level of the point and takes every other reading off it. They must agree, and tests
 * hold that they do.
 */
import type { Metre, Ratio } from '../../quantities.ts';

/** One point on which the staff stood, in the order of the work. */
export interface LevelStation {
  /** What the point is called. A book that comes back to a point gives the same name again. */
  readonly at?: string | undefined;
  /** The first reading from a new place of the instrument. */
  readonly back?: Metre | undefined;
  /** A reading between back and fore sight, on a point from which nothing goes on. */
  readonly inter?: Metre | undefined;
  /** The last reading before the instrument is moved. */
  readonly fore?: Metre | undefined;
  /** Length of the way from the turning point before, on a fore sight. */
  readonly distance?: Metre | undefined;
}

/** What a station turns into. Levels are counted from the first point. */
export interface ReducedStation {
  readonly at?: string | undefined;
  /** Set-ups of the instrument that lie before it. */
  readonly setUps: number;
  /** Length of the way before it, when every fore sight has its distance. */
  readonly distance?: Metre;
  /** Against the point before it; rise above nought. Absent for the first. */
  readonly rise?: Metre;
  /** Height of the line of sight from which it was read on. Absent where no set-up begins. */
  readonly instrument?: Metre;
  /** As read. */
  readonly level: Metre;
  /** With the closing error taken out. */
  readonly adjusted: Metre;
}

export interface LevelBook {
  readonly stations: readonly ReducedStation[];
  readonly setUps: number;
  /** Level of the last point less that of the first, which are one point; absent for a book that does not come back. */
  readonly closingError?: Metre;
  /** The most that closing error should be. */
  readonly allowedError?: Metre;
  /** How the closing error was shared out. */
  readonly sharedBy?: 'setUps' | 'distance';
  /** Standard uncertainty of one reading: as stated, or more when the book closes worse than that explains. */
  readonly readingSpread: Metre;
}

export type LevelBookFault =
  | { readonly kind: 'tooShort' }
  /** The first station needs a back sight, and every later one is a fore or an intermediate sight. */
  | { readonly kind: 'noBack' | 'noReading' | 'twoReadings'; readonly station: number }
  /** The last station of a book is a fore or intermediate sight: from a back sight there nothing follows. */
  | { readonly kind: 'openEnd'; readonly station: number };

/** Judgement: a builder's level, staff read to the millimetre at up to 40 m. */
export const STAFF_SPREAD: Metre = 2e-3;
/** Closing error allowed for each root of a set-up: 5 mm √n. Common practice, no source. */
const ALLOWED_PER_SET_UP: Metre = 5e-3;

/** What keeps a book from being worked out; empty when nothing does. */
export function levelBookFaults(stations: readonly LevelStation[]): readonly LevelBookFault[] {
  if (stations.length < 2) return [{ kind: 'tooShort' }];
  return stations.flatMap((station, index): LevelBookFault[] => {
    const { back, inter, fore } = station;
    if (index === 0) return back === undefined ? [{ kind: 'noBack', station: 0 }] : [];
    if (inter !== undefined && (fore !== undefined || back !== undefined)) {
      return [{ kind: 'twoReadings', station: index }];
    }
    if (inter === undefined && fore === undefined) return [{ kind: 'noReading', station: index }];
    if (index === stations.length - 1) {
      return back === undefined ? [] : [{ kind: 'openEnd', station: index }];
    }
    // After a fore sight the instrument is moved, so that a back sight on the same point must follow.
    return fore !== undefined && back === undefined ? [{ kind: 'noBack', station: index }] : [];
  });
}

/**
 * Levels by rise and fall, with the closing error shared out.
 *
 *   rise = reading before − reading here       ΣBS − ΣFS = last level − first level
 *   adjusted = level − e k/n                   e: closing error, k of n set-ups before the point
 *
 * With a distance at each fore sight the error is shared by distance in place of set-ups. A book closes when its last point
 * has the name of its first; only then is there an error to share.
 *
 * Source: common practice of levelling, no source; both ways of reduction are in every book of surveying.
 * @throws RangeError when `levelBookFaults` finds something.
 */
export function levelBook(
  stations: readonly LevelStation[],
  readingSpread: Metre = STAFF_SPREAD,
): LevelBook {
  const fault = levelBookFaults(stations)[0];
  if (fault) throw new RangeError(`the level book cannot be worked out: ${fault.kind}`);
  const first = stations[0] as LevelStation;
  const last = stations.at(-1) as LevelStation;
  const hasDistances = stations.every((one) => one.fore === undefined || (one.distance ?? 0) > 0);
  const rows: Omit<ReducedStation, 'adjusted'>[] = [];
  let level = 0;
  let setUps = 0;
  let distance = 0;
  let before = 0;
  for (const [index, station] of stations.entries()) {
    const reading = station.fore ?? station.inter;
    const rise = index === 0 || reading === undefined ? undefined : before - reading;
    level += rise ?? 0;
    if (index > 0 && station.inter === undefined) {
      setUps += 1;
      distance += station.distance ?? 0;
    }
    rows.push({
      at: station.at,
      // An intermediate sight belongs to the set-up that is still open.
      setUps: setUps + (station.inter === undefined ? 0 : 1),
      ...(hasDistances && {
        distance: distance + (station.inter === undefined ? 0 : openLeg(stations, index)),
      }),
      ...(rise !== undefined && { rise }),
      ...(station.back !== undefined && { instrument: level + station.back }),
      level,
    });
    before = station.back ?? reading ?? before;
  }
  const isClosed = last.at !== undefined && last.at === first.at && last.fore !== undefined;
  const closingError = isClosed ? level : 0;
  const sharedBy = hasDistances ? 'distance' : 'setUps';
  const part = (row: Omit<ReducedStation, 'adjusted'>): Ratio =>
    isClosed ? (hasDistances ? (row.distance ?? 0) / distance : row.setUps / setUps) : 0;
  return {
    stations: rows.map((row) => ({ ...row, adjusted: row.level - closingError * part(row) })),
    setUps,
    ...(isClosed && {
      closingError,
      allowedError: ALLOWED_PER_SET_UP * Math.sqrt(setUps),
      sharedBy,
    }),
    // Each set-up has two readings, so that a loop of n should close to σ √(2n).
    readingSpread: Math.max(
      readingSpread,
      Math.abs(closingError) / Math.sqrt(2 * Math.max(1, setUps)),
    ),
  };
}

/** The leg that is still open at an intermediate sight: that of the fore sight that ends it, or none. */
function openLeg(stations: readonly LevelStation[], from: number): Metre {
  return stations.slice(from).find(({ fore }) => fore !== undefined)?.distance ?? 0;
}

/** Levels by height of instrument: the level of a point is the line of sight less its reading. Source: as `levelBook`. */
export function levelsByInstrument(stations: readonly LevelStation[]): readonly Metre[] {
  let instrument = 0;
  let isFirst = true;
  return stations.map(({ back, inter, fore }) => {
    const level = isFirst ? 0 : instrument - (fore ?? inter ?? 0);
    isFirst = false;
    if (back !== undefined) instrument = level + back;
    return level;
  });
}

/** Height of one point of a book above another, and how well it is known. */
export interface HeightBetween {
  readonly height: Metre;
  /** Standard uncertainty. */
  readonly spread: Metre;
}

/**
 * Height between two points of a book.
 *
 *   open:    u = σ √(2m)                       m set-ups between the two, two readings each
 *   closed:  u = σ √(2 m (n − m)/n)            the way round the other side helps
 *
 * Source: propagation of independent errors; the closed form is that of least squares on one loop of n equal set-ups.
 * @throws RangeError when a place is not in the book.
 */
export function heightBetween(
  book: LevelBook,
  { upper, lower }: { readonly upper: number; readonly lower: number },
): HeightBetween {
  const high = book.stations[upper];
  const low = book.stations[lower];
  if (!high || !low) throw new RangeError(`the book has no station ${high ? lower : upper}`);
  const [early, late] = upper < lower ? [high, low] : [low, high];
  const between = Math.max(1, late.setUps - early.setUps);
  const other = book.setUps - between;
  const independent = book.closingError === undefined ? between : (between * other) / book.setUps;
  // One point against itself, right round the loop: nothing lies between them.
  const spread = book.readingSpread * Math.sqrt(2 * Math.max(0, independent));
  return { height: high.adjusted - low.adjusted, spread };
}
