/** Every delivery pipe on offer at the flow of a combination: what it loses, what it costs, what it carries. */
import {
  type ChoiceRequest,
  type Contender,
  deliveryPipeRows,
  pressureClasses,
  pressuresOf,
} from '@fallwright/engine';
import { perCent } from '../answered.ts';
import { moneyInWords, type Reader, shown } from './reader.ts';

export interface DeliveryPipeWords {
  readonly pipe: string;
  readonly friction: string;
  /** Friction over the lift. */
  readonly share: string;
  readonly speed: string;
  /** Of the pipe alone; empty without a price. */
  readonly cost: string;
  /** What it may carry at the water's warmth, against what it would see. */
  readonly carries: string;
  readonly isChosen: boolean;
}

/** The cheapest first, those without a price last. The flow is held: what friction takes from the flow itself, a run says. */
export function deliveryPipesInWords(
  { place, offers }: ChoiceRequest,
  { candidate, run, water }: Contender,
  reader: Reader,
): readonly DeliveryPipeWords[] {
  const { parts } = candidate;
  const pressure =
    pressuresOf(place, parts, run).find(({ part }) => part === 'deliveryPipe')?.pressure ?? 0;
  const classes = pressureClasses(offers.deliveryPipes, {
    pressure,
    temperature: place.water.temperature,
  });
  return deliveryPipeRows({
    pipes: offers.deliveryPipes,
    length: place.deliveryRoute.length,
    lift: place.lift,
    flow: water,
    water: place.water,
  }).map(({ offer, frictionHead, shareOfLift, velocity, cost }) => {
    const own = classes.find((row) => row.offer.key === offer.key);
    return {
      pipe: offer.name,
      friction: shown(frictionHead, 'head', reader, 2),
      share: perCent(shareOfLift),
      speed: shown(velocity, 'velocity', reader, 2),
      cost: cost === undefined ? '' : moneyInWords(cost, reader),
      carries:
        own === undefined
          ? `too weak for ${shown(pressure, 'pressure', reader)}`
          : own.rating === undefined
            ? 'no rating known'
            : `carries ${shown(own.rating, 'pressure', reader)}`,
      isChosen: offer.key === parts.deliveryPipe.key,
    };
  });
}
