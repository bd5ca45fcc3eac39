/** A walk put into the place as the profile of one of its lines: one step, which undo takes back whole. */
import type { System } from '@fallwright/units';
import { readMetres } from '../profile/line-points.ts';
import { LINE_CALLED } from '../profile/profile-steps.ts';
import { unreadWithoutPipe } from '../profile/unread-rows.ts';
import { finestStep, writtenMetres } from '../profile/written-metres.ts';
import { entryOf } from '../state/entry.ts';
import type { LineName } from '../state/lines.ts';
import { pipesOf } from '../state/lines.ts';
import type { Place } from '../state/place.ts';
import { putWhole } from '../state/place.ts';
import type { Plain, PlainRecord, SiteDocument } from '../state/site-document.ts';
import { pathText, withValue } from '../state/site-document.ts';
import type { WalkedLine, WalkPoint } from './walk.ts';

/** What the lengths of a line's pipes leave open. */
export type Lengths =
  /** All are written. */
  | { readonly kind: 'written'; readonly total: number; readonly pipes: number }
  /** One pipe takes what the others leave of the walk. */
  | { readonly kind: 'oneOpen'; readonly pipe: number; readonly others: number }
  /** Nobody can say where one pipe ends and the next begins. */
  | { readonly kind: 'open'; readonly pipes: readonly number[] };

export function lengthsOf(document: SiteDocument, line: LineName): Lengths {
  const lengths = pipesOf(document, line).map(
    ({ length }) => readMetres(length, 'pipeLength') ?? 0,
  );
  const open = lengths.flatMap((length, pipe) => (length > 0 ? [] : [pipe]));
  const others = lengths.reduce((sum, length) => sum + length, 0);
  const [pipe] = open;
  if (pipe === undefined) return { kind: 'written', total: others, pipes: lengths.length };
  return open.length === 1 ? { kind: 'oneOpen', pipe, others } : { kind: 'open', pipes: open };
}

export interface PutIn {
  readonly line: LineName;
  readonly system: System;
  /** The one pipe, or the open one, becomes as long as the walk leaves for it. */
  readonly takesLength: boolean;
  /** The fall or the lift is written from the walk. */
  readonly takesRise: boolean;
}

/** Undefined where the walk is too short for the pipes. */
export function walkPutIn(
  place: Place,
  walk: WalkedLine,
  { line, system, takesLength, takesRise }: PutIn,
): Place | undefined {
  const sized = takesLength
    ? withLength(place.document, line, walk.kept.at(-1)?.distance ?? 0, system)
    : place.document;
  if (sized === undefined) return undefined;
  let document = sized;
  let { unread } = place;
  let start = 0;
  for (const [pipe, { length }] of pipesOf(sized, line).entries()) {
    const end = start + (readMetres(length, 'pipeLength') ?? 0);
    const profile = profileBetween(walk, start, end, system);
    document = withValue(document, [line, pipe, 'profile'], profile);
    unread = unreadWithoutPipe(unread, { line, pipe });
    if (takesLength) unread = without(unread, pathText([line, pipe, 'length']));
    start = end;
  }
  if (takesRise) {
    const far = line === 'drive' ? 'fall' : 'lift';
    const height = `${writtenMetres(walk.rise, system)}${spreadWritten(walk.riseSpread, system)}`;
    document = withValue(document, [far], entryOf(height, 'measured'));
    unread = without(unread, far);
  }
  return putWhole(place, { document, unread }, `the profile of ${LINE_CALLED[line]}`);
}

/** Only the length of the walk, where its heights are missing or too coarse. */
export function lengthPutIn(
  place: Place,
  length: number,
  { line, system }: Pick<PutIn, 'line' | 'system'>,
): Place | undefined {
  const document = withLength(place.document, line, length, system);
  if (document === undefined) return undefined;
  const pipe = pipeThatTakes(place.document, line);
  const unread = without(place.unread, pathText([line, pipe ?? 0, 'length']));
  return putWhole(place, { document, unread }, `the length of ${LINE_CALLED[line]}`);
}

function pipeThatTakes(document: SiteDocument, line: LineName): number | undefined {
  const lengths = lengthsOf(document, line);
  if (lengths.kind === 'oneOpen') return lengths.pipe;
  return lengths.kind === 'written' && lengths.pipes === 1 ? 0 : undefined;
}

/** Judgement: a walk gives the length of a line to a decimetre at best. Rounded up, so that no point lies past the end. */
const LENGTH_STEP = 0.1;

function withLength(
  document: SiteDocument,
  line: LineName,
  walked: number,
  system: System,
): SiteDocument | undefined {
  const lengths = lengthsOf(document, line);
  const pipe = pipeThatTakes(document, line);
  if (pipe === undefined) return undefined;
  const left = walked - (lengths.kind === 'oneOpen' ? lengths.others : 0);
  if (!(left > LENGTH_STEP)) return undefined;
  const rounded = Math.ceil(left / LENGTH_STEP) * LENGTH_STEP;
  const length = entryOf(writtenMetres(rounded, system), 'measured');
  return withValue(document, [line, pipe, 'length'], length);
}

/**
 * The points of a walk that lie on one pipe, as the file writes them. The ends of the line are left out: they follow the
 * fall and the lift. So is what lies on a joint, nearer than can be written.
 */
function profileBetween(
  { kept, heightSpread }: WalkedLine,
  start: number,
  end: number,
  system: System,
): readonly Plain[] | undefined {
  const total = kept.at(-1)?.distance ?? 0;
  const step = finestStep(system);
  let last = 0;
  const points = kept.flatMap((point: WalkPoint): PlainRecord[] => {
    const along = point.distance - start;
    const isEnd = point.distance < step || point.distance > total - step;
    if (isEnd || along < last + step || point.distance > end - step) return [];
    last = along;
    const height = `${writtenMetres(point.elevation, system)}${spreadWritten(heightSpread, system)}`;
    return [{ at: writtenMetres(along, system), height: entryOf(height, 'measured') }];
  });
  return points.length === 0 ? undefined : points;
}

const spreadWritten = (spread: number | undefined, system: System): string =>
  spread === undefined || spread === 0 ? '' : ` ± ${writtenMetres(spread, system)}`;

function without(unread: Place['unread'], key: string): Place['unread'] {
  const { [key]: _gone, ...others } = unread;
  return others;
}
