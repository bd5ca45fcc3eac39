/**
 * A place whose measurements are still being taken. A reading that is not whole yet must not take the answer away: it waits,
 * the answer stands on the rest, and what it waits for is told beside the answer.
 */
import type { Problem, SiteRead } from '@fallwright/records';
import { siteFromData } from '@fallwright/records';
import { withoutUnfinished } from '../need/need-entry.ts';
import {
  gaugingsOf,
  hasReadings,
  withoutGauging,
  withWrittenHeight,
  writtenHeight,
} from '../state/measured-entry.ts';
import type { SiteDocument } from '../state/site-document.ts';
import { isRecord, withValue } from '../state/site-document.ts';

export interface Settled {
  /** The place without the measurements that wait. */
  readonly data: SiteDocument;
  readonly read: SiteRead;
  /** What keeps them from being used. */
  readonly waiting: readonly Problem[];
}

/** Of a place to answer, or of one to choose for. */
type Reader = (data: unknown) => SiteRead;

export function settled(data: SiteDocument, reader: Reader = siteFromData): Settled {
  const read = reader(data);
  if (read.ok) return { data, read, waiting: [] };
  const waiting = read.problems.filter((problem) => isOfMeasurement(problem, data));
  if (waiting.length === 0) return { data, read, waiting };
  const rest = withoutWaiting(data, waiting);
  return { data: rest, read: reader(rest), waiting };
}

/** As `siteFromData`, for a page on which things are being measured and needs are being told. */
export function readSettled(data: unknown, reader: Reader = siteFromData): SiteRead {
  if (!isRecord(data)) return reader(data);
  const { read, waiting } = settled(withoutUnfinished(data), reader);
  if (!read.ok || waiting.length === 0) return read;
  const told = waiting.map(
    (problem): Problem => ({
      ...problem,
      kind: 'unusual',
      message: `Not used yet: ${problem.message}`,
    }),
  );
  return { ...read, warnings: [...read.warnings, ...told] };
}

const GAUGING = /^source\.gauging(?:\[(\d+)\])?/;
const HEIGHT = /^(fall|lift)(?=$|[.[])/;

export function isOfMeasurement({ field }: Problem, data: SiteDocument): boolean {
  if (GAUGING.test(field)) return true;
  const height = HEIGHT.exec(field)?.[1] as 'fall' | 'lift' | undefined;
  return height !== undefined && hasReadings(data, height);
}

function withoutWaiting(data: SiteDocument, waiting: readonly Problem[]): SiteDocument {
  const gone = new Set<number>();
  let rest = data;
  for (const { field } of waiting) {
    const [isGauging, index] = GAUGING.exec(field) ?? [];
    if (isGauging !== undefined) {
      // A measurement that is written without a list is the first.
      if (index !== undefined || gaugingsOf(data).length < 2) gone.add(Number(index ?? 0));
      else for (const at of gaugingsOf(data).keys()) gone.add(at);
      continue;
    }
    const height = HEIGHT.exec(field)?.[1] as 'fall' | 'lift';
    rest = withWrittenHeight(
      withValue(rest, [height], undefined),
      height,
      writtenHeight(data, height),
    );
  }
  for (const index of [...gone].sort((a, b) => b - a)) rest = withoutGauging(rest, index);
  return rest;
}
