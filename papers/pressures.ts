/** Pressures against ratings, part by part: the simulated peak, the bound of Joukowsky, and what the part may carry. */
import type { Answer, PressureCheckRow } from '@fallwright/engine';
import type { Site } from '@fallwright/records';
import type { System } from '@fallwright/units';
import { answered } from './answered.ts';

export interface PressureRow {
  readonly part: string;
  readonly peak: string;
  /** Empty where there is no such bound. */
  readonly bound: string;
  readonly rating: string;
  readonly outcome: PressureCheckRow['outcome'];
  readonly outcomeWords: string;
}

const OUTCOMES = {
  within: 'within',
  over: 'OVER its rating',
  noRating: 'no rating known',
} as const satisfies Record<PressureCheckRow['outcome'], string>;

export function pressureRows(answer: Answer, site: Site, system: System): readonly PressureRow[] {
  const { show } = answered(answer, site, system);
  return (answer.pressureCheck?.rows ?? []).map((row) => ({
    part: partInWords(row.part),
    peak: show(row.simulatedPeak, 'pressure'),
    bound: row.joukowskyBound === undefined ? '' : show(row.joukowskyBound, 'pressure'),
    rating: row.rating === undefined ? '' : show(row.rating, 'pressure'),
    outcome: row.outcome,
    outcomeWords: OUTCOMES[row.outcome],
  }));
}

export function partInWords(part: PressureCheckRow['part']): string {
  switch (part.kind) {
    case 'driveSegment':
      return `drive: ${part.name}`;
    case 'ramBody':
      return `ram body: ${part.name}`;
    case 'deliverySegment':
      return `delivery: ${part.name}`;
  }
}
