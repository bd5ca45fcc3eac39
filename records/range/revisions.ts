/**
 * The revisions of a ram. A ram that has been answered with is never changed: what bears on an answer makes a new revision, and
 * the one before stays under its number.
 */
import { isSameData } from '../same-data.ts';
import { RANGE_REFERENCE } from '../site/ram-fields.ts';
import type { RamRevision, Range, RangeRam } from './range-schema.ts';

export function revisionNumber({ revision }: RamRevision): number {
  return revision ?? 1;
}

/** `swallow-25@3`. */
export function referenceTo(ram: RangeRam, revision: RamRevision = ram): string {
  return `${ram.id}@${revisionNumber(revision)}`;
}

export interface FoundRam {
  readonly ram: RangeRam;
  readonly revision: RamRevision;
  readonly isNewest: boolean;
}

/** The ram and the revision that a reference names; undefined when the range has no such. */
export function ramAt(range: Range, reference: string): FoundRam | undefined {
  const [, id, number] = RANGE_REFERENCE.exec(reference) ?? [];
  const ram = range.rams.find((one) => one.id === id);
  const revision = ram && revisionsOf(ram).find((one) => revisionNumber(one) === Number(number));
  if (!ram || !revision) return undefined;
  return { ram, revision, isNewest: revisionNumber(revision) === revisionNumber(ram) };
}

/** The newest revision and all earlier ones. */
export function revisionsOf(ram: RangeRam): readonly RamRevision[] {
  return [snapshotOf(ram), ...(ram.earlier ?? [])];
}

/** The newest revision as it will stand among the earlier ones. */
function snapshotOf(ram: RangeRam): RamRevision {
  const { revision, date, change, name, ram: parts, tunings, settings, serials } = ram;
  return {
    revision: revision ?? 1,
    ...(date !== undefined && { date }),
    ...(change !== undefined && { change }),
    name,
    ram: parts,
    ...(tunings && { tunings }),
    ...(settings && { settings }),
    ...(serials && { serials }),
  };
}

/** What a new revision changes; what it leaves out stays as it is. */
export type Revised = Pick<Partial<RamRevision>, 'name' | 'ram' | 'tunings' | 'settings'> & {
  readonly id: string;
  readonly date?: string;
  readonly change?: string;
};

/**
 * The range with a new revision of one ram; the same range when nothing in it differs. Serial numbers stay with the revision
 * they were built in.
 *
 * @throws RangeError when the range has no such ram.
 */
export function revised(range: Range, { id, date, change, ...parts }: Revised): Range {
  const ram = required(range, id);
  const { date: _, change: __, serials: ___, earlier, ...kept } = ram;
  const next = { ...kept, ...parts };
  if (isSameData(next, kept)) return range;
  return replaced(range, {
    ...next,
    revision: revisionNumber(ram) + 1,
    ...(date !== undefined && { date }),
    ...(change !== undefined && { change }),
    earlier: [snapshotOf(ram), ...(earlier ?? [])],
  });
}

/** What may change without a new revision, since no answer rests on it. */
export type Details = Pick<
  Partial<RangeRam>,
  'mass' | 'price' | 'leadTime' | 'setUp' | 'remarks' | 'serials'
>;

/** The range with other details of one ram. @throws RangeError when the range has no such ram. */
export function withDetails(range: Range, id: string, details: Details): Range {
  return replaced(range, { ...required(range, id), ...details });
}

/**
 * The range with a copy of one ram's newest revision as a ram of its own: revision 1, nothing built yet.
 *
 * @throws RangeError when the range has no such ram, or has one under the new id.
 */
export function copied(
  range: Range,
  id: string,
  as: { readonly id: string; readonly name: string },
): Range {
  if (range.rams.some((one) => one.id === as.id)) {
    throw new RangeError(`id must be new in the range, got ${as.id}`);
  }
  const original = required(range, id);
  const {
    revision: _,
    date: __,
    change: ___,
    serials: ____,
    earlier: _____,
    retired: ______,
    ...kept
  } = original;
  const copy: RangeRam = {
    ...kept,
    ...as,
    revision: 1,
    change: `copied from ${referenceTo(original)}`,
  };
  const at = range.rams.indexOf(original) + 1;
  return { ...range, rams: [...range.rams.slice(0, at), copy, ...range.rams.slice(at)] };
}

/** The range with one ram no longer proposed, or proposed again. @throws RangeError when the range has no such ram. */
export function retired(range: Range, id: string, isRetired = true): Range {
  const { retired: _, ...ram } = required(range, id);
  return replaced(range, isRetired ? { ...ram, retired: true } : ram);
}

/** The rams that are made. */
export function ramsMade(range: Range): readonly RangeRam[] {
  return range.rams.filter((ram) => ram.retired !== true);
}

function required(range: Range, id: string): RangeRam {
  const ram = range.rams.find((one) => one.id === id);
  if (!ram) throw new RangeError(`id must be that of a ram in the range, got ${id}`);
  return ram;
}

function replaced(range: Range, ram: RangeRam): Range {
  return { ...range, rams: range.rams.map((one) => (one.id === ram.id ? ram : one)) };
}
