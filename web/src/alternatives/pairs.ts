/** A drive line with a ram: what is simulated, what comes of it, and where in the table it stands. */
import type { Alternative } from '@fallwright/engine';
import type { Plain, SiteDocument } from '../state/site-document.ts';
import { withValue } from '../state/site-document.ts';
import type { DriveRow } from './drive-rows.ts';
import type { OpenedAlternative } from './opened.ts';
import type { RamColumn } from './ram-columns.ts';

export interface Pair {
  readonly key: string;
  readonly row: DriveRow;
  readonly column: RamColumn;
}

export type PairResult =
  | { readonly kind: 'answered'; readonly alternative: Alternative }
  /** The place cannot be put together with this pair: why, and what to do. */
  | { readonly kind: 'refused'; readonly message: string };

export type PairResults = ReadonlyMap<string, PairResult>;

/** One row's work: the place with its line, and the rams to run on it. */
export interface Job {
  readonly driveName: string;
  readonly site: SiteDocument;
  readonly rams: readonly { readonly key: string; readonly entry: Plain }[];
}

export function pairOf(row: DriveRow, column: RamColumn): Pair {
  return { key: `${row.key} ${column.key}`, row, column };
}

export function pairsOf(rows: readonly DriveRow[], columns: readonly RamColumn[]): Pair[] {
  return rows.flatMap((row) => columns.map((column) => pairOf(row, column)));
}

export const isOnTheSheet = ({ row, column }: Pair): boolean => row.isOnSheet && column.isOnSheet;

/** Where an alternative from another leaf stands: one thing changed, everything else as on the sheet. */
export function pairAskedFor(pairs: readonly Pair[], asked: OpenedAlternative): Pair | undefined {
  const isAsked = (opened: OpenedAlternative | undefined): boolean =>
    opened !== undefined && JSON.stringify(opened) === JSON.stringify(asked);
  return pairs.find(({ row, column }) =>
    asked.kind === 'stroke' || asked.kind === 'weight'
      ? isAsked(column.opened) && row.isOnSheet
      : column.isOnSheet &&
        (asked.kind === 'pipe' ? row.name === asked.name && !row.isOnSheet : isAsked(row.opened)),
  );
}

export function pairName({ row, column }: Pair): string {
  const line = [row.name, ...row.details].join(', ');
  const ram = column.detail === '' ? column.name : `${column.name} (${column.detail})`;
  return `${line} with ${ram}`;
}

/** The place with a pair in it: what the details are asked of, and what adopting makes of the sheet. */
export function siteWith({ row, column }: Pair): SiteDocument {
  return withValue(row.site, ['ram'], column.entry);
}

/** The work that is left, row by row. */
export function jobsFor(pairs: readonly Pair[], results: PairResults): Job[] {
  const jobs = new Map<string, Job & { rams: { key: string; entry: Plain }[] }>();
  for (const { key, row, column } of pairs) {
    if (results.has(key)) continue;
    const job = jobs.get(row.key) ?? { driveName: row.name, site: row.site, rams: [] };
    job.rams.push({ key, entry: column.entry });
    jobs.set(row.key, job);
  }
  return [...jobs.values()];
}
