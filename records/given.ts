import type { HeightReadings } from './site/height-readings.ts';

/** How a number came to be known: the firmer the way, the firmer the number. */
export type Origin = 'measured' | 'stated' | 'table' | 'assumed';

export const ORIGINS = [
  'measured',
  'stated',
  'table',
  'assumed',
] as const satisfies readonly Origin[];

/** A value that a person gave: in SI for the engine, and as it was written for the person. */
export interface Given {
  /** In SI; degrees Celsius for temperatures. */
  readonly value: number;
  /** The ± in the same unit. */
  readonly spread?: number;
  readonly origin: Origin;
  readonly text: string;
  /** The readings that it was worked out from; then they are what was written, and the text is what came of them. */
  readonly readings?: HeightReadings;
}

export function isGiven(data: unknown): data is Given {
  return (
    typeof data === 'object' &&
    data !== null &&
    'value' in data &&
    typeof data.value === 'number' &&
    'text' in data &&
    'origin' in data
  );
}
