/** Why a combination was not taken, as data with its numbers. Words are made elsewhere. */
import type { CubicMetre, CubicMetrePerSecond, Metre, Pascal, Ratio } from '../../quantities.ts';
import type { Limit, VerdictKind } from '../../site/answer.ts';
import type { Money } from './offers.ts';

export type RatedPart = 'drivePipe' | 'ram' | 'deliveryPipe' | 'vessel';

export type Reason =
  /** The drive pipe is too short for its way and no feeder is offered, or far too long for it. */
  | { readonly kind: 'lengthDoesNotFit'; readonly length: Metre; readonly route: Metre }
  /** A pipe that must be of one piece is sold in none so long. */
  | {
      readonly kind: 'noPieceLongEnough';
      readonly name: string;
      readonly length: Metre;
      readonly longest: Metre;
    }
  | { readonly kind: 'tankTooSmall'; readonly volume: CubicMetre; readonly needs: CubicMetre }
  | {
      readonly kind: 'staysOpen';
      readonly terminalFlow: CubicMetrePerSecond;
      readonly closingFlow: CubicMetrePerSecond;
    }
  | {
      readonly kind: 'overRated';
      readonly part: RatedPart;
      readonly name: string;
      readonly pressure: Pascal;
      readonly rating: Pascal;
    }
  | { readonly kind: 'liftTooHigh'; readonly reaches: Metre; readonly needs: Metre }
  /** The water in the standpipe would stand below the ground: the feeder loses too much. */
  | { readonly kind: 'standpipeDry'; readonly level: Metre; readonly ground: Metre }
  /** It was run, and does not run. */
  | { readonly kind: 'verdict'; readonly verdict: VerdictKind; readonly decidedBy: Limit }
  /** It gives, or could at most give, too little. */
  | {
      readonly kind: 'belowNeed';
      readonly need: CubicMetrePerSecond;
      readonly water?: CubicMetrePerSecond;
      readonly atMost?: CubicMetrePerSecond;
    }
  | { readonly kind: 'pulse'; readonly share: Ratio; readonly largest: Ratio }
  /**
   * Another costs no more and gives no less. `water` is its own where it can be told, `atMost` what it could not exceed. Where
   * prices are missing only water is compared, and there are no costs.
   */
  | {
      readonly kind: 'beaten';
      readonly by: string;
      readonly byCost?: Money;
      readonly byWater: CubicMetrePerSecond;
      readonly cost?: Money;
      readonly water?: CubicMetrePerSecond;
      readonly atMost?: CubicMetrePerSecond;
    }
  /** It failed when run again on the fine grid on which figures are quoted. */
  | { readonly kind: 'failsWhenQuoted'; readonly why: VerdictKind | 'overRated' }
  /** The search was stopped before its turn. */
  | { readonly kind: 'notTried' };
