/** A place at a glance, for lists of places: whether it runs and how much it gives. All SI. */
import type { Answer, VerdictKind } from '@fallwright/engine';

export type Glance =
  | {
      readonly kind: VerdictKind;
      /** What reaches the tank; absent when nothing does. */
      readonly delivered?: number;
      readonly needed?: number;
      readonly handStrokes?: number;
      readonly terminalFlow: number;
      readonly closingFlow: number;
    }
  /** `first` is the first field that is missing or wrong. */
  | { readonly kind: 'notEnoughYet'; readonly first: string };

export function glanceOf(answer: Answer): Glance {
  const { verdict, operatingPoint, demand, emptying, startUp, terminalFlow, closingFlow } = answer;
  return {
    kind: verdict.kind,
    ...(operatingPoint === undefined
      ? {}
      : { delivered: emptying?.meanDelivery ?? operatingPoint.deliveryFlow }),
    ...(demand === undefined ? {} : { needed: demand.needed }),
    ...(startUp?.outcome === 'goesOn' ? { handStrokes: startUp.handStrokes } : {}),
    terminalFlow,
    closingFlow,
  };
}
