/** All that a bench reading says: its efficiencies, what in it cannot be, and how it stands to the cycle on the same rig. */
import type { Installation } from '../cycle/installation.ts';
import type { RunOptions } from '../cycle/operating-point.ts';
import type { BenchReading } from './bench-reading.ts';
import { predictedReading, type ReadingPredicted } from './measured-against-predicted.ts';
import { doubtsAboutReading, type ReadingDoubt } from './reading-doubts.ts';
import { efficienciesOf, type ReadingEfficiencies } from './reading-efficiencies.ts';

export interface BenchCase {
  readonly reading: BenchReading;
  readonly installation: Installation;
  readonly head: 'atVessel' | 'throughLine';
}

export interface ReadingAnswer {
  readonly reading: BenchReading;
  /** Absent when fewer than two flows were read. */
  readonly efficiencies?: ReadingEfficiencies;
  readonly doubts: readonly ReadingDoubt[];
  readonly predicted: ReadingPredicted;
}

export function answerReading(
  { reading, installation, head }: BenchCase,
  options?: RunOptions,
): ReadingAnswer {
  const predicted = predictedReading(installation, reading, head, options);
  const efficiencies = efficienciesOf(reading);
  return {
    reading,
    ...(efficiencies && { efficiencies }),
    doubts: doubtsAboutReading(reading, { lineCapacity: predicted.lineCapacity }),
    predicted,
  };
}
