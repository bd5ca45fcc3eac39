/** What is written on the drawings. Everything with a number in it comes in the person's units. */
import type { DriveDetailWords } from './drive-detail.ts';
import type { HeadPlotWords } from './head-plot.ts';
import type { WholePlaceWords } from './whole-place.ts';

export interface PartNames {
  readonly source: string;
  readonly drive: string;
  readonly ram: string;
  readonly delivery: string;
  readonly tank: string;
}

export interface ElevationWords {
  readonly place: WholePlaceWords;
  readonly drive: DriveDetailWords;
  readonly heads?: HeadPlotWords;
  readonly headsTitle: string;
  /** The unit of the grid: `m` or `ft`. */
  readonly gridUnit: string;
  /** What each part is called as a link to its fields. */
  readonly parts: PartNames;
  readonly title: string;
  readonly placeTitle: string;
  readonly headsDescription?: string;
  /** The same in sentences, for those who do not see it. */
  readonly description: string;
}
