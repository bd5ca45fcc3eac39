/**
 * Two people's work on one record, brought together against what both began from.
 *
 * Two changes that are each right can make a record that is wrong, so the schema judges the result once more. Then the fewest
 * changes that are wrong together are held back and become conflicts too.
 */
import { testFromData } from '../bench/read-test.ts';
import type { Problem } from '../problem.ts';
import { rangeFromData } from '../range/read-range.ts';
import { placeFromData } from '../site/site-from-data.ts';
import {
  type MergePath,
  mergeTrees,
  type Side,
  type TreeChange,
  type TreeMerge,
} from './merge-trees.ts';
import { isPlainRecord, type Plain, type PlainRecord } from './plain.ts';

/** A record as it was written: its document, and text in boxes that cannot be read yet. */
export interface Draft {
  readonly document: PlainRecord;
  readonly unread?: Readonly<Record<string, string>>;
}

export interface AuthoredDraft extends Draft {
  /** Who wrote it last. */
  readonly by: string;
  /** When, as it should be shown; it decides nothing, because the clock of a device may be wrong. */
  readonly at?: string;
}

export interface ConflictSide {
  /** Absent where this side has nothing, or took it out. */
  readonly value?: Plain;
  readonly by: string;
  readonly at?: string;
}

export interface MergeConflict {
  /** Names it in `choices`. */
  readonly key: string;
  /** In the document, or in `unread`. Entries of a list by their number in the base, or by their own name. */
  readonly path: MergePath;
  readonly isUnread: boolean;
  /** Two values for one field, or changes that are right alone and wrong together. */
  readonly kind: 'bothChanged' | 'wrongTogether';
  /** What both began from; it stands in the merged record until a choice is made. */
  readonly base?: Plain;
  readonly mine: ConflictSide;
  readonly theirs: ConflictSide;
  /** What would be wrong, of changes that are wrong together. */
  readonly problems: readonly Problem[];
}

export interface MergedRecord extends Required<Draft> {
  /** Empty when everything came together; otherwise a person must choose. */
  readonly conflicts: readonly MergeConflict[];
}

export type Check = (document: PlainRecord) => readonly Problem[];

const IN_DOCUMENT = 'document';
const IN_UNREAD = 'unread';

/** Judgement: with more changes than this at once, looking for the fewest wrong ones takes longer than choosing among all. */
const MOST_TRIED = 100;

export function mergeRecords(
  {
    base,
    mine,
    theirs,
  }: {
    readonly base: Draft;
    readonly mine: AuthoredDraft;
    readonly theirs: AuthoredDraft;
  },
  {
    choices = new Map(),
    check = problemsOf,
  }: { readonly choices?: ReadonlyMap<string, Side>; readonly check?: Check } = {},
): MergedRecord {
  const three = { base: treeOf(base), mine: treeOf(mine), theirs: treeOf(theirs) };
  const merged = (held: ReadonlySet<string>): TreeMerge => mergeTrees(three, { choices, held });
  const known = new Set([base, mine, theirs].flatMap((one) => check(one.document).map(problemKey)));
  const newProblems = (merge: TreeMerge): readonly Problem[] =>
    check(documentOf(merge)).filter((problem) => !known.has(problemKey(problem)));

  const held = new Set<string>();
  const together = new Map<string, readonly Problem[]>();
  let merge = merged(held);
  let problems = newProblems(merge);
  while (problems.length > 0 && merge.taken.length > 0) {
    for (const change of fewestWrong(merge, held, (kept) => newProblems(merged(kept)).length > 0)) {
      held.add(change.key);
      together.set(change.key, problems);
    }
    merge = merged(held);
    problems = newProblems(merge);
  }

  const conflicts = merge.conflicts.map(
    (change): MergeConflict => ({
      key: change.key,
      path: change.path.slice(1),
      isUnread: change.path[0] === IN_UNREAD,
      kind: together.has(change.key) ? 'wrongTogether' : 'bothChanged',
      ...(change.base === undefined ? {} : { base: change.base }),
      mine: sideOf(change.mine, mine),
      theirs: sideOf(change.theirs, theirs),
      problems: together.get(change.key) ?? [],
    }),
  );
  return { document: documentOf(merge), unread: unreadOf(merge), conflicts };
}

/**
 * Among the changes that were taken, a set that is wrong together and of which none can be left out: each is held back
 * in turn and stays back when the rest is still wrong.
 */
function fewestWrong(
  merge: TreeMerge,
  held: ReadonlySet<string>,
  isWrongWithout: (kept: ReadonlySet<string>) => boolean,
): readonly TreeChange[] {
  if (merge.taken.length > MOST_TRIED) return merge.taken;
  const back = new Set(held);
  const wrong: TreeChange[] = [];
  for (const change of merge.taken) {
    back.add(change.key);
    if (isWrongWithout(back)) continue;
    back.delete(change.key);
    wrong.push(change);
  }
  // When even none of them is wrong, what is wrong comes of choices already made: those stay a person's.
  return wrong.length > 0 ? wrong : merge.taken;
}

/** Problems of a whole record of any kind that has a schema. A price list has none here: its rows are judged one by one. */
export function problemsOf(document: PlainRecord): readonly Problem[] {
  const [kind] = String(document.fallwright ?? '').split('@');
  const read =
    kind === 'site'
      ? placeFromData(document)
      : kind === 'range'
        ? rangeFromData(document)
        : kind === 'test'
          ? testFromData(document)
          : undefined;
  return read === undefined || read.ok ? [] : read.problems;
}

function problemKey({ kind, field }: Problem): string {
  return `${kind} ${field}`;
}

function treeOf({ document, unread = {} }: Draft): PlainRecord {
  return { [IN_DOCUMENT]: document, [IN_UNREAD]: unread };
}

function documentOf({ value }: TreeMerge): PlainRecord {
  const document = isPlainRecord(value) ? value[IN_DOCUMENT] : undefined;
  return isPlainRecord(document) ? document : {};
}

function unreadOf({ value }: TreeMerge): Readonly<Record<string, string>> {
  const unread = isPlainRecord(value) ? value[IN_UNREAD] : undefined;
  return Object.fromEntries(
    Object.entries(isPlainRecord(unread) ? unread : {}).map(([field, text]) => [
      field,
      String(text),
    ]),
  );
}

function sideOf(value: Plain | undefined, { by, at }: AuthoredDraft): ConflictSide {
  return {
    ...(value === undefined ? {} : { value }),
    by,
    ...(at === undefined ? {} : { at }),
  };
}
