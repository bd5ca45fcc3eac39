import type { Installation } from '../../cycle/installation.ts';
import type { CubicMetrePerSecond } from '../../quantities.ts';
import { sampledAnswer } from '../../site/uncertainty/sample-answer.ts';
import { isFactor, type UncertainInput } from '../../site/uncertainty/uncertain-input.ts';
import { middleOf } from '../../site/uncertainty/with-inputs.ts';
import type { Judgement } from './choose.ts';

/**
 * Judges a combination by samples of what is not known exactly about its place.
 *
 * The chance is that of running and giving what is needed, or of running where nothing is. What this combination does not have,
 * such as a yield that nobody measured, is not drawn. One seed gives every combination draws of the same ranks, so that they
 * are told apart by what they are and not by luck.
 */
export function judgeBySamples(
  inputs: readonly UncertainInput[],
  { samples, seed }: { readonly samples: number; readonly seed: number },
): (installation: Installation, needed?: CubicMetrePerSecond) => Judgement {
  return (installation, needed) => {
    const drawn = inputs.filter(
      ({ what }) => isFactor(what) || middleOf(installation, what) !== undefined,
    );
    const answer = sampledAnswer(installation, drawn, {
      samples,
      seed,
      ...(needed === undefined ? {} : { demand: needed }),
    });
    const { low, high } = answer.deliveryBand;
    return { chance: answer.chanceOfNeed ?? answer.chanceItRuns, low, high };
  };
}
