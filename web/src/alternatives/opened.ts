/** Alternatives that come from "what would change it": one thing of the place at another value. All in SI. */
import type { Change, Installation, RunningStretch } from '@fallwright/engine';
import { GRAVITY, PIPES, submergedWeightOfMass } from '@fallwright/engine';

export type OpenedAlternative =
  | { readonly kind: 'pipe'; readonly name: string }
  | { readonly kind: 'length'; readonly length: number }
  | { readonly kind: 'air'; readonly volume: number }
  | { readonly kind: 'stroke'; readonly stroke: number }
  /** Weight in air of the valve's moving parts. */
  | { readonly kind: 'weight'; readonly weight: number }
  | {
      readonly kind: 'place';
      readonly what: 'fall' | 'lift' | 'sourceFlow';
      readonly value: number;
      readonly isStore: boolean;
    };

/** Judgement: a tenth of the stretch away from its turning point, so that it does not stop at the first leaf. */
const INSIDE = 0.1;
/** Judgement: nearer to now than this it is no alternative. */
const SAME = 0.02;

/**
 * A line of "what would change it" as an alternative: the nearest value that gives enough, or else at which it runs; for a
 * ram that runs already, the middle of its stretch, as far as can be from both turning points. Nothing when the change
 * turns nothing, or when the middle is where it stands.
 */
export function alternativeFromChange(
  change: Change,
  installation: Installation,
): OpenedAlternative | undefined {
  const value = valueToTry(change);
  if (value === undefined) return undefined;
  const { wasteValve } = installation.ram;
  switch (change.what) {
    case 'driveLength':
      return { kind: 'length', length: value };
    case 'driveBore':
      return pipeOfBore(value, change, installation);
    case 'trappedAir':
      return { kind: 'air', volume: value };
    case 'stroke':
      return { kind: 'stroke', stroke: value };
    case 'valveWeight': {
      // A spring is not a thing with a weight: what to fetch for it cannot be said in one number.
      if (wasteValve.kind !== 'weighted') return undefined;
      const mass = wasteValve.movingMass + (value - change.now) / submergedWeightOfMass(1);
      return mass > 0 ? { kind: 'weight', weight: mass * GRAVITY } : undefined;
    }
    case 'fall':
    case 'lift':
    case 'sourceFlow':
      return {
        kind: 'place',
        what: change.what,
        value,
        isStore: installation.source.kind === 'store',
      };
  }
}

function valueToTry({ now, runs, enough }: Change): number | undefined {
  const stretch = enough ?? runs;
  if (stretch === undefined) return undefined;
  const value = now < stretch.low || now > stretch.high ? inside(stretch, now) : middle(stretch);
  const isSame = Math.abs(value - now) <= SAME * Math.max(now, value);
  return isSame ? undefined : value;
}

function inside({ low, high }: RunningStretch, now: number): number {
  return now < low ? low + INSIDE * (high - low) : high - INSIDE * (high - low);
}

/** Of two positive ends in proportion; a stretch that begins at nought is best at nought: no air is better than some. */
function middle({ low, high }: RunningStretch): number {
  return Math.sqrt(low * high);
}

/** A pipe that can be bought: the bore of the same material nearest to the wanted one, on the way from the present one. */
function pipeOfBore(
  bore: number,
  { now }: Change,
  { driveLine }: Installation,
): OpenedAlternative | undefined {
  const present = driveLine.segments.at(-1)?.pipe;
  const onTheWay = PIPES.filter(
    ({ material, innerDiameter }) =>
      material === present?.material &&
      (bore > now ? innerDiameter > now * (1 + SAME) : innerDiameter < now * (1 - SAME)),
  );
  const gap = (width: number): number => Math.abs(Math.log(width / bore));
  const [nearest] = onTheWay.sort((a, b) => gap(a.innerDiameter) - gap(b.innerDiameter));
  return nearest === undefined ? undefined : { kind: 'pipe', name: nearest.name };
}
