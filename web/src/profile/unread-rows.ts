/** Text in a table's boxes that cannot be read yet waits under its path; when rows come and go the paths behind them move. */
import type { Unread } from '../state/place.ts';
import type { PointPlace } from './line-points.ts';

type Waiting = Readonly<Record<string, Unread>>;

/** A row was put in at `place`: text of the rows from there on moves one down. */
export function unreadAfterAdding(unread: Waiting, place: PointPlace): Waiting {
  return moved(unread, place, (index) => (index >= place.index ? index + 1 : index));
}

/** The row at `place` was taken out: its text goes, and text of the rows behind it moves one up. */
export function unreadAfterRemoving(unread: Waiting, place: PointPlace): Waiting {
  return moved(unread, place, (index) =>
    index === place.index ? undefined : index > place.index ? index - 1 : index,
  );
}

/** The rows of a pipe changed places, or its point was moved in the drawing: what waited in its boxes is dropped. */
export function unreadWithoutRow(unread: Waiting, place: PointPlace): Waiting {
  return moved(unread, place, (index) => (index === place.index ? undefined : index));
}

export function unreadWithoutPipe(unread: Waiting, place: Omit<PointPlace, 'index'>): Waiting {
  return moved(unread, place, () => undefined);
}

function moved(
  unread: Waiting,
  { line, pipe }: Omit<PointPlace, 'index'>,
  newIndex: (index: number) => number | undefined,
): Waiting {
  return movedUnder(unread, `${line}[${pipe}].profile`, newIndex);
}

/** Waiting text of the entries of any list moves with them; `undefined` drops an entry's text. */
export function movedUnder(
  unread: Waiting,
  list: string,
  newIndex: (index: number) => number | undefined,
): Waiting {
  const prefix = `${list}[`;
  let isChanged = false;
  const entries = Object.entries(unread).flatMap(([key, waiting]): [string, Unread][] => {
    if (!key.startsWith(prefix)) return [[key, waiting]];
    const end = key.indexOf(']', prefix.length);
    const index = Number(key.slice(prefix.length, end));
    const to = newIndex(index);
    isChanged ||= to !== index;
    return to === undefined ? [] : [[`${prefix}${to}${key.slice(end)}`, waiting]];
  });
  return isChanged ? Object.fromEntries(entries) : unread;
}
