/**
 * Rams against drive lines at one place: the same water, fall, lift and delivery line, each pair simulated.
 *
 * A generator, so that the caller can show progress, stop, and keep what is done.
 */
import type { DriveLine, Installation } from '../cycle/installation.ts';
import { delivers, operatingPoint } from '../cycle/operating-point.ts';
import type { OperatingPoint } from '../cycle/run-record.ts';
import type { Ram } from '../machine/ram.ts';
import type { Verdict } from '../site/answer.ts';
import { terminalFlow, verdictOn } from '../site/verdict.ts';

/** A drive line that might be laid, with the name by which it is known. */
export interface DriveChoice {
  readonly name: string;
  readonly driveLine: DriveLine;
}

/** One ram on one drive line. Verdicts leave the start from cold aside. */
export interface Alternative {
  readonly driveName: string;
  readonly ramName: string;
  /** Places of the pair in the lists that were given. */
  readonly driveIndex: number;
  readonly ramIndex: number;
  readonly verdict: Verdict;
  readonly operatingPoint?: OperatingPoint;
}

/** Every ram on every drive line, line by line. */
export function* alternatives(
  installation: Installation,
  drives: readonly DriveChoice[],
  rams: readonly Ram[],
): Generator<Alternative, void, void> {
  for (const [driveIndex, drive] of drives.entries()) {
    for (const [ramIndex, ram] of rams.entries()) {
      const pair: Installation = { ...installation, driveLine: drive.driveLine, ram };
      const point = operatingPoint(pair);
      yield {
        driveName: drive.name,
        ramName: ram.name,
        driveIndex,
        ramIndex,
        verdict: verdictOn(pair, point, terminalFlow(pair), undefined),
        ...(delivers(point) ? { operatingPoint: point } : {}),
      };
    }
  }
}
