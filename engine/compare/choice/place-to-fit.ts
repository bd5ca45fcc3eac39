/** A place before anything is bought for it, and what is wished for. */
import type { ProfilePoint, Source } from '../../cycle/installation.ts';
import type { Restraint } from '../../pipes/pipe.ts';
import type { CubicMetre, CubicMetrePerSecond, Metre, Ratio } from '../../quantities.ts';
import type { Water } from '../../water/water.ts';

/** The way that a pipe can take over the ground. */
export interface Route {
  /** Along the ground; no straight pipe is shorter. */
  readonly length: Metre;
  /** Heights along it, above the waste valve's outlet; an even slope when absent. */
  readonly profile?: readonly ProfilePoint[];
}

/** What a drive line of any pipe would lose and carry here. */
export interface DriveLaying {
  /** Strainer, entrance and velocity head. */
  readonly entranceLoss: Ratio;
  readonly fittingsLoss: Ratio;
  readonly restraint: Restraint;
  readonly freeAirFraction: Ratio;
}

export interface PlaceToFit {
  readonly water: Water;
  readonly source: Source;
  /** What the source gives in the dry season; as much as ever when absent. */
  readonly dryFlow?: CubicMetrePerSecond;
  readonly fall: Metre;
  readonly lift: Metre;
  /** From intake to ram. */
  readonly driveRoute: Route;
  /** From ram to tank. */
  readonly deliveryRoute: Route;
  readonly driveLaying: DriveLaying;
}

export interface Wish {
  /** Flow that is needed at the tank. */
  readonly need?: CubicMetrePerSecond;
  /** Water that the tank must hold. */
  readonly tankVolume?: CubicMetre;
  /** Lengths of drive line to try; those of `usualDriveLengths` when absent. */
  readonly driveLengths?: readonly Metre[];
  /** Most rams side by side, each on its own drive line. 1 by default. */
  readonly mostRams?: number;
  /** Largest swing of the vessel's head over its mean. */
  readonly largestPulse?: Ratio;
  /** Chance of doing what is wished that a pick must have, where picks are judged. */
  readonly wantedChance?: Ratio;
}

/** Judgement: a fifth from lowest to highest is a tenth either way, which a delivery pipe rated for its lift can bear. */
export const LARGEST_PULSE: Ratio = 0.2;
/** Judgement: four years in five. */
export const WANTED_CHANCE: Ratio = 0.8;

/** Drive line over fall. Source: USDA, Water supply for country homes, p. 27 (about 1914): 5 to 10, usually 7 (checks: RT15). */
const LENGTHS_PER_FALL: readonly Ratio[] = [5, 7, 10];
/** Judgement: a pipe laid in curves over half as long again as its way is better spent otherwise. */
export const LONGEST_PER_ROUTE: Ratio = 1.5;

/**
 * Lengths of drive line worth trying at a place: the way itself, and the trade's multiples of the fall where they can be
 * laid. A longer one lies in curves; a shorter one starts at a standpipe and is left out where no feeder pipe is offered.
 */
export function usualDriveLengths(place: PlaceToFit, hasFeeder: boolean): Metre[] {
  const way = place.driveRoute.length;
  const usual = LENGTHS_PER_FALL.map((times) => times * place.fall).filter(
    (length) => length <= LONGEST_PER_ROUTE * way && (hasFeeder || length >= way),
  );
  return [...new Set([way, ...usual])].sort((a, b) => a - b);
}
