/** The rows of a price list by what they are, with the cells that each kind asks for. */
import type { PriceColumn } from '@fallwright/records';
import { KIND_WORDS } from '@fallwright/records';
import { textOf } from '../state/entry.ts';
import type { RowDocument } from './price-document.ts';

export interface GroupColumn {
  readonly column: PriceColumn;
  readonly label: string;
  readonly placeholder?: string;
  /** What may stand there, where it is one of a few words. */
  readonly options?: readonly { readonly value: string; readonly label: string }[];
  readonly isNumber?: boolean;
}

export interface PriceGroup {
  readonly id: string;
  readonly title: string;
  /** Words of the kinds that belong here, the usual one first. */
  readonly kinds: readonly string[];
  readonly one: string;
  readonly columns: readonly GroupColumn[];
  /** Cells that most rows leave empty: folded away. */
  readonly more: readonly GroupColumn[];
}

const PRICE: GroupColumn = {
  column: 'price',
  label: 'Price',
  placeholder: 'not known',
  isNumber: true,
};
const NAME: GroupColumn = { column: 'name', label: 'Name' };
const CODE: GroupColumn = { column: 'code', label: 'Code' };
const NOTE: GroupColumn = { column: 'note', label: 'Note' };

const USES = ['drive delivery', 'drive', 'delivery', 'feeder', 'drive feeder'];

const WORK = [KIND_WORDS.trench, KIND_WORDS.laying, KIND_WORDS.labour, KIND_WORDS.carriage];
const CONTAINERS = [KIND_WORDS.vessel, KIND_WORDS.tank];
const PARTS = Object.values(KIND_WORDS).filter(
  (kind) => kind !== KIND_WORDS.pipe && !WORK.includes(kind) && !CONTAINERS.includes(kind),
);

function kindColumn(kinds: readonly string[]): GroupColumn {
  return {
    column: 'kind',
    label: 'What',
    options: kinds.map((kind) => ({ value: kind, label: kind })),
  };
}

export const PRICE_GROUPS: readonly PriceGroup[] = [
  {
    id: 'pipes',
    title: 'Pipes',
    kinds: [KIND_WORDS.pipe],
    one: 'pipe',
    columns: [
      NAME,
      { column: 'size', label: 'Pipe', placeholder: 'like PE100 SDR11 25' },
      {
        column: 'unit',
        label: 'Priced by',
        options: [
          { value: 'm', label: 'metre' },
          { value: 'ft', label: 'foot' },
          { value: 'length', label: 'bar or coil' },
        ],
      },
      { column: 'sold length', label: 'Sold in', placeholder: 'any length' },
      {
        column: 'use',
        label: 'For',
        options: [
          { value: '', label: 'drive and delivery' },
          ...USES.map((use) => ({ value: use, label: use.replace(' ', ' and ') })),
        ],
      },
      PRICE,
    ],
    more: [
      CODE,
      { column: 'rating', label: 'Rating', placeholder: 'that of the tables' },
      {
        column: 'one piece',
        label: 'Each line of one piece',
        options: [
          { value: '', label: 'no' },
          { value: 'yes', label: 'yes, as a hose' },
        ],
      },
      NOTE,
    ],
  },
  {
    id: 'containers',
    title: 'Air vessels and tanks',
    kinds: CONTAINERS,
    one: 'vessel or tank',
    columns: [
      kindColumn(CONTAINERS),
      NAME,
      { column: 'volume', label: 'Holds', placeholder: 'like 3 L' },
      { column: 'rating', label: 'Rating', placeholder: 'not stated' },
      PRICE,
    ],
    more: [CODE, NOTE],
  },
  {
    id: 'parts',
    title: 'Fittings, valves and spares',
    kinds: PARTS,
    one: 'part',
    columns: [
      kindColumn(PARTS),
      NAME,
      { column: 'size', label: 'Fits', placeholder: 'every size' },
      PRICE,
    ],
    more: [
      CODE,
      { column: 'made of', label: 'Fits pipe of', placeholder: 'anything' },
      { column: 'fits', label: 'Fits rams', placeholder: 'all' },
      { column: 'open area', label: 'Open area', placeholder: 'not stated' },
      { column: 'holds', label: 'Holds a push of', placeholder: 'not stated' },
      { column: 'sold length', label: 'Sold in', placeholder: 'any length' },
      NOTE,
    ],
  },
  {
    id: 'work',
    title: 'Trench, laying, labour, carriage',
    kinds: WORK,
    one: 'kind of work',
    columns: [kindColumn(WORK), NAME, PRICE],
    more: [CODE, NOTE],
  },
];

/** For how much a price counts: as written, or as the kind decides it. */
export function unitOf(row: RowDocument): string {
  const written = textOf(row.unit);
  if (written !== '') return UNIT_NAMES[written] ?? written;
  const kind = textOf(row.kind);
  if (BY_METRE.includes(kind)) return 'a metre';
  return kind === KIND_WORDS.labour ? 'an hour' : 'each';
}

const BY_METRE: readonly string[] = [KIND_WORDS.trench, KIND_WORDS.laying, KIND_WORDS.standpipe];

const UNIT_NAMES: Readonly<Record<string, string>> = {
  m: 'a metre',
  ft: 'a foot',
  h: 'an hour',
  length: 'a length',
};

/** A kind that is not known stands with the parts, where it can be put right. */
export function groupOf(row: RowDocument): PriceGroup {
  const kind = textOf(row.kind);
  const parts = PRICE_GROUPS.find(({ id }) => id === 'parts') as PriceGroup;
  return PRICE_GROUPS.find(({ kinds }) => kinds.includes(kind)) ?? parts;
}
