/**
 * Three-way merge of plain data by field: what one side alone changed is taken, what both changed otherwise is a conflict.
 *
 * Where there is a conflict the result holds what both began from, so nothing is decided in silence. A caller settles it by
 * merging again with a choice under the conflict's key; nothing is written into the result by path, so that entries of a
 * list which moved cannot be mistaken for one another. The same way `held` keeps a change of one side back, for the caller
 * who found that changes which are right alone are wrong together.
 */
import { alignLists } from './align-lists.ts';
import { listKindOf } from './list-kinds.ts';
import {
  fieldsIn,
  isPlainList,
  isPlainRecord,
  isSamePlain,
  type Plain,
  type PlainRecord,
} from './plain.ts';

export type Side = 'mine' | 'theirs';

/** Fields, and entries of lists: by their number in the base, by their own name, or `after 2` for what was put in there. */
export type MergePath = readonly (string | number)[];

/** One field that was changed, by one side or both. */
export interface TreeChange {
  readonly key: string;
  readonly path: MergePath;
  /** Undefined where there was, or is, nothing. */
  readonly base: Plain | undefined;
  readonly mine: Plain | undefined;
  readonly theirs: Plain | undefined;
}

export interface TreeMerge {
  readonly value: Plain | undefined;
  /** Changed by both sides, or held, and not chosen yet. */
  readonly conflicts: readonly TreeChange[];
  /** Changed by one side alone and taken. */
  readonly taken: readonly TreeChange[];
}

interface Three {
  readonly base: Plain | undefined;
  readonly mine: Plain | undefined;
  readonly theirs: Plain | undefined;
}

export function mergeTrees(
  three: Three,
  {
    choices = new Map(),
    held = new Set(),
    root = [],
  }: {
    readonly choices?: ReadonlyMap<string, Side>;
    readonly held?: ReadonlySet<string>;
    readonly root?: MergePath;
  } = {},
): TreeMerge {
  const conflicts: TreeChange[] = [];
  const taken: TreeChange[] = [];

  const oneSided = (three: Three, path: MergePath, side: Side): Plain | undefined => {
    const key = keyOf(path);
    const choice = choices.get(key);
    if (choice !== undefined) return three[choice];
    if (held.has(key)) {
      conflicts.push({ key, path, ...three });
      return three.base;
    }
    taken.push({ key, path, ...three });
    return three[side];
  };

  const bothSided = (three: Three, path: MergePath): Plain | undefined => {
    const key = keyOf(path);
    const choice = choices.get(key);
    if (choice !== undefined) return three[choice];
    conflicts.push({ key, path, ...three });
    return three.base;
  };

  const merge = (three: Three, path: MergePath, field: string | undefined): Plain | undefined => {
    const { base, mine, theirs } = three;
    if (isSamePlain(mine, theirs)) return mine;
    const records = byField(base, mine, theirs);
    if (records !== undefined) return mergeFields(records, path);
    if (isSamePlain(base, mine)) return oneSided(three, path, 'theirs');
    if (isSamePlain(base, theirs)) return oneSided(three, path, 'mine');
    if ((base === undefined || isPlainList(base)) && isPlainList(mine) && isPlainList(theirs)) {
      return mergeLists({ base: base ?? [], mine, theirs }, path, field) ?? bothSided(three, path);
    }
    return bothSided(three, path);
  };

  const mergeFields = (
    { base, mine, theirs }: Readonly<Record<keyof Three, PlainRecord>>,
    path: MergePath,
  ): PlainRecord => {
    const fields = new Set([...fieldsIn(mine), ...fieldsIn(theirs), ...fieldsIn(base)]);
    const entries: [string, Plain][] = [];
    for (const field of fields) {
      const value = merge(
        { base: own(base, field), mine: own(mine, field), theirs: own(theirs, field) },
        [...path, field],
        field,
      );
      if (value === undefined) continue;
      // A map whose last fields were taken out by two hands goes as it does when one hand empties it.
      const isEmptied = isEmpty(value) && ![own(mine, field), own(theirs, field)].some(isEmpty);
      if (!isEmptied) entries.push([field, value]);
    }
    return Object.fromEntries(entries);
  };

  type Lists = Readonly<Record<keyof Three, readonly Plain[]>>;

  /** Undefined when the two lists cannot come together without a choice between them. */
  const mergeLists = (
    lists: Lists,
    path: MergePath,
    field: string | undefined,
  ): readonly Plain[] | undefined => {
    const kind = listKindOf(field);
    const by = kind.kind === 'keyed' ? kind.by : kind.kind === 'growing' ? 'id' : undefined;
    const keyed = by === undefined ? undefined : keyedLists(lists, by);
    return keyed === undefined
      ? mergeAligned(lists, path, kind.kind === 'growing')
      : mergeKeyed(keyed, path);
  };

  const mergeKeyed = (
    { base, mine, theirs }: Readonly<Record<keyof Three, ReadonlyMap<string, Plain>>>,
    path: MergePath,
  ): readonly Plain[] =>
    keysInOrder(base, mine, theirs).flatMap((key) => {
      const value = merge(
        { base: base.get(key), mine: mine.get(key), theirs: theirs.get(key) },
        [...path, key],
        undefined,
      );
      return value === undefined ? [] : [value];
    });

  const mergeAligned = (
    { base, mine, theirs }: Lists,
    path: MergePath,
    isGrowing: boolean,
  ): readonly Plain[] | undefined => {
    const left = alignLists(base, mine);
    const right = alignLists(base, theirs);
    const slots = Array.from({ length: base.length + 1 }, (_, slot) => ({
      mine: left.added[slot] ?? [],
      theirs: right.added[slot] ?? [],
    }));
    const isBothAt = (slot: (typeof slots)[number]): boolean =>
      slot.mine.length > 0 && slot.theirs.length > 0 && !isSamePlain(slot.mine, slot.theirs);
    if (!isGrowing && slots.some(isBothAt)) return undefined;
    // An entry that both moved would stand at both new places.
    const isMovedByBoth = base.some(
      (entry, index) =>
        left.matches[index] === undefined &&
        right.matches[index] === undefined &&
        [left, right].every(({ added }) => added.flat().some((put) => isSamePlain(put, entry))),
    );
    if (isMovedByBoth && !slots.every((slot) => isSamePlain(slot.mine, slot.theirs))) {
      return undefined;
    }

    const put = (slot: number): readonly Plain[] => {
      const { mine, theirs } = slots[slot] ?? { mine: [], theirs: [] };
      if (isSamePlain(mine, theirs)) return mine;
      const place = [...path, `after ${slot}`];
      if (mine.length > 0 && theirs.length > 0) {
        // Which stands first says nothing; that it does not depend on who merges does.
        return textOf(mine) < textOf(theirs) ? [...mine, ...theirs] : [...theirs, ...mine];
      }
      const side = mine.length > 0 ? 'mine' : 'theirs';
      const chosen = oneSided({ base: [], mine, theirs }, place, side);
      return isPlainList(chosen) ? chosen : [];
    };
    return [
      ...put(0),
      ...base.flatMap((entry, index) => {
        const at = { left: left.matches[index], right: right.matches[index] };
        const value = merge(
          {
            base: entry,
            mine: at.left === undefined ? undefined : mine[at.left],
            theirs: at.right === undefined ? undefined : theirs[at.right],
          },
          [...path, index],
          undefined,
        );
        return [...(value === undefined ? [] : [value]), ...put(index + 1)];
      }),
    ];
  };

  return { value: merge(three, root, undefined), conflicts, taken };
}

function keyOf(path: MergePath): string {
  return JSON.stringify(path);
}

function own(record: PlainRecord, field: string): Plain | undefined {
  return Object.hasOwn(record, field) ? record[field] : undefined;
}

function isEmpty(value: Plain | undefined): boolean {
  return isPlainRecord(value) && fieldsIn(value).length === 0;
}

/** What belongs to one given value: 1.9 m of one and ± 1 cm of another is a value that nobody gave. */
const OF_ONE_VALUE: ReadonlySet<string> = new Set(['value', 'spread', 'origin', 'text']);

/** A ram copied from a range belongs together with the revision that it names. */
const REFERENCE = 'range';

/** The three as maps that can be merged field by field; undefined when they must stay whole. */
function byField(
  base: Plain | undefined = {},
  mine: Plain | undefined,
  theirs: Plain | undefined,
): Readonly<Record<keyof Three, PlainRecord>> | undefined {
  if (!isPlainRecord(base) || !isPlainRecord(mine) || !isPlainRecord(theirs)) return undefined;
  if ([base, mine, theirs].some(isOneValue)) return undefined;
  const isOneReference =
    isSamePlain(base[REFERENCE], mine[REFERENCE]) &&
    isSamePlain(base[REFERENCE], theirs[REFERENCE]);
  // Two who both added a map began from none.
  const bothAdded = fieldsIn(base).length === 0 && isSamePlain(mine[REFERENCE], theirs[REFERENCE]);
  return isOneReference || bothAdded ? { base, mine, theirs } : undefined;
}

function isOneValue(record: PlainRecord): boolean {
  const fields = fieldsIn(record);
  return fields.includes('value') && fields.every((field) => OF_ONE_VALUE.has(field));
}

function textOf(value: Plain): string {
  return JSON.stringify(value, (_, part: unknown) =>
    isPlainRecord(part)
      ? Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)))
      : part,
  );
}

/** Undefined when an entry has no name yet, or shares it with another: then names do not tell entries apart. */
function keyedLists(
  lists: Readonly<Record<keyof Three, readonly Plain[]>>,
  by: string,
): Readonly<Record<keyof Three, ReadonlyMap<string, Plain>>> | undefined {
  const maps = { base: byKey(lists.base, by), mine: byKey(lists.mine, by) };
  const theirs = byKey(lists.theirs, by);
  return maps.base && maps.mine && theirs && { base: maps.base, mine: maps.mine, theirs };
}

function byKey(list: readonly Plain[], by: string): ReadonlyMap<string, Plain> | undefined {
  const map = new Map<string, Plain>();
  for (const entry of list) {
    const name = isPlainRecord(entry) ? own(entry, by) : undefined;
    if ((typeof name !== 'string' || name === '') && typeof name !== 'number') return undefined;
    map.set(String(name), entry);
  }
  return map.size === list.length ? map : undefined;
}

/** The order of the side that changed it; that of the base when both did. What is new stands behind what it stood behind. */
function keysInOrder(
  base: ReadonlyMap<string, Plain>,
  mine: ReadonlyMap<string, Plain>,
  theirs: ReadonlyMap<string, Plain>,
): readonly string[] {
  const began = [...base.keys()];
  const [left, right] = [mine, theirs].map((side) => {
    const order = [...side.keys()].filter((key) => base.has(key));
    const isMoved = !isSamePlain(
      order,
      began.filter((key) => side.has(key)),
    );
    // What this side took out may still be wanted by the other, or be a conflict.
    return { isMoved, order: [...order, ...began.filter((key) => !side.has(key))] };
  });
  const moved = [left, right].filter((side) => side?.isMoved === true);
  const isAgreed = moved.length === 1 || isSamePlain(left?.order, right?.order);
  const order = (isAgreed ? moved[0]?.order : undefined) ?? began;

  const [mineNew, theirsNew] = [newBehind(mine, base), newBehind(theirs, base)];
  const done = new Set<string>();
  return ['', ...order].flatMap((key) => {
    const blocks = [mineNew.get(key) ?? [], theirsNew.get(key) ?? []].sort((a, b) =>
      textOf(a) < textOf(b) ? -1 : 1,
    );
    const fresh = blocks.flat().filter((one) => !done.has(one) && done.add(one));
    return key === '' ? fresh : [key, ...fresh];
  });
}

/** The keys that the base does not have, by the last key before them that it has; '' where there is none. */
function newBehind(
  side: ReadonlyMap<string, Plain>,
  base: ReadonlyMap<string, Plain>,
): ReadonlyMap<string, readonly string[]> {
  const behind = new Map<string, string[]>();
  let before = '';
  for (const key of side.keys()) {
    if (base.has(key)) before = key;
    else behind.set(before, [...(behind.get(before) ?? []), key]);
  }
  return behind;
}
