/**
 * Rams against drive lines at one place: the same water, fall, lift and delivery line, each pair simulated.
 *
 * A generator, so that the caller can show progress, stop, and keep what is done. Each pair is answered as the place itself
 * would be with that pair in it: a figure in the comparison is the figure that stands on the sheet once it is chosen.
 */
import type { DriveLine, Installation } from '../cycle/installation.ts';
import type { OperatingPoint, StartUp } from '../cycle/run-record.ts';
import type { Ram } from '../machine/ram.ts';
import type { CubicMetrePerSecond } from '../quantities.ts';
import type { Verdict } from '../site/answer.ts';
import { answerFor } from '../site/answer-for.ts';

/** A drive line that might be laid, with the name by which it is known. */
export interface DriveChoice {
  readonly name: string;
  readonly driveLine: DriveLine;
}

/** One ram on one drive line. */
export interface Alternative {
  readonly driveName: string;
  readonly ramName: string;
  /** Places of the pair in the lists that were given. */
  readonly driveIndex: number;
  readonly ramIndex: number;
  readonly verdict: Verdict;
  /** Present whenever the ram beats and delivers, even when the source cannot feed it for long. */
  readonly operatingPoint?: OperatingPoint;
  /** A cold start with the delivery stop valve shut; absent when it does not deliver. */
  readonly startUp?: StartUp;
  /** Flow through the drive line and the wide-open waste valve. */
  readonly terminalFlow: CubicMetrePerSecond;
  /** Flow at which the waste valve lifts off its open stop. */
  readonly closingFlow: CubicMetrePerSecond;
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
      const { verdict, operatingPoint, startUp, terminalFlow, closingFlow } = answerFor(pair, {
        changes: false,
        pressures: false,
      });
      yield {
        driveName: drive.name,
        ramName: ram.name,
        driveIndex,
        ramIndex,
        verdict,
        ...(operatingPoint ? { operatingPoint } : {}),
        ...(startUp ? { startUp } : {}),
        terminalFlow,
        closingFlow,
      };
    }
  }
}
