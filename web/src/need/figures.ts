/** The published figures that stand in for a local one, with the words that a box shows for them. */
import type { AnimalName, Service, SourcedValue } from '@fallwright/engine';
import { ANIMAL_FIGURES, GARDEN_FIGURE, PEOPLE_FIGURES, USUAL_SERVICE } from '@fallwright/engine';

export const SERVICES: readonly { readonly value: Service; readonly label: string }[] = [
  { value: 'one tap', label: 'one tap on the plot' },
  { value: 'several taps', label: 'several taps in the house' },
  { value: 'carried', label: 'carried home, under 1 km' },
  { value: 'far source', label: 'from a source over 1 km away' },
  { value: 'emergency', label: 'in an emergency' },
];

export const ANIMALS: readonly {
  readonly value: AnimalName;
  readonly label: string;
  readonly many: string;
}[] = [
  { value: 'cow', label: 'cow', many: 'cows' },
  { value: 'dairy cow', label: 'dairy cow', many: 'dairy cows' },
  { value: 'range cow', label: 'range cow', many: 'range cows' },
  { value: 'sheep', label: 'sheep', many: 'sheep' },
  { value: 'goat', label: 'goat', many: 'goats' },
  { value: 'horse', label: 'horse', many: 'horses' },
  { value: 'donkey', label: 'donkey', many: 'donkeys' },
  { value: 'camel', label: 'camel', many: 'camels' },
  { value: 'pig', label: 'pig', many: 'pigs' },
  { value: 'sow', label: 'sow with her litter', many: 'sows with their litters' },
  { value: 'hen', label: 'hen', many: 'hens' },
];

/** What one person takes, for the service that the file names; nothing when it names one that has no figure. */
export function personFigure(service: string): SourcedValue | undefined {
  const named = service === '' ? USUAL_SERVICE : service;
  return Object.entries(PEOPLE_FIGURES).find(([name]) => name === named)?.[1];
}

export function animalFigure(name: string): SourcedValue | undefined {
  return Object.entries(ANIMAL_FIGURES).find(([one]) => one === name)?.[1];
}

export const gardenFigure: SourcedValue = GARDEN_FIGURE;
