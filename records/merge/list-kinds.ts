/**
 * What the entries of a list are to one another, by the name of the field that holds it: this decides how two changed
 * copies of the list come together.
 */
export type ListKind =
  /** Entries have a name of their own in the field `by`; their order says nothing. */
  | { readonly kind: 'keyed'; readonly by: string }
  /** Repeats of one measurement, or things that pile up: whatever two people add, both stay. */
  | { readonly kind: 'growing' }
  /** The order is part of the meaning, as in the pipes of a line or the points of a level book. */
  | { readonly kind: 'ordered' };

const KEYS: Readonly<Record<string, string>> = {
  rams: 'id',
  earlier: 'revision',
  tunings: 'name',
  springs: 'name',
  rows: 'code',
};

/** Hops and level books are not among them: each entry adds to a sum, so two that were added may be one place twice. */
const GROWING: ReadonlySet<string> = new Set([
  'gauging',
  'times',
  'head',
  'readings',
  'beats',
  'delivered',
  'wasted',
  'supply',
  'vesselPressure',
  'peakPressure',
  'photos',
  'recordings',
  'logs',
  'serials',
  'weights',
]);

const ORDERED: ListKind = { kind: 'ordered' };

/** Of any list that is not named here the order is taken to matter: then two people's entries are asked about, not mixed. */
export function listKindOf(field: string | undefined): ListKind {
  if (field === undefined) return ORDERED;
  const by = Object.hasOwn(KEYS, field) ? KEYS[field] : undefined;
  if (by !== undefined) return { kind: 'keyed', by };
  return GROWING.has(field) ? { kind: 'growing' } : ORDERED;
}
