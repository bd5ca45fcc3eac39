/** What the drawing needs to be changed by hand: the document it draws, and where changes go. */
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import { createContext, useContext } from 'react';
import type { PointPlace } from '../profile/line-points.ts';
import { pointKey } from '../profile/line-points.ts';
import type { LineName } from '../state/lines.ts';
import type { SiteDocument } from '../state/site-document.ts';

export interface Editing {
  /** What is kept; while something is dragged the drawing shows another one. */
  readonly document: SiteDocument;
  readonly system: System;
  readonly isDragging: boolean;
  /** The point that the hand or the keyboard is on: it is shown with its numbers, however many points there are. */
  readonly inHand: PointPlace | undefined;
  readonly takeInHand: (place: PointPlace | undefined) => void;
  /** Shows a document that is not kept yet; `undefined` goes back to the one that is. */
  readonly preview: (document: SiteDocument | undefined) => void;
  /** Keeps a point's new place. A drag is a step of its own for undo; keys on one point are one step together. */
  readonly putPoint: (
    document: SiteDocument,
    place: PointPlace,
    how: 'dragged' | 'byKey' | 'added',
  ) => void;
  readonly takeOut: (place: PointPlace) => void;
  readonly putLevel: (document: SiteDocument, which: Level, how: 'dragged' | 'byKey') => void;
  readonly showInTable: (place: PointPlace) => void;
  /** The id of the words that say which keys do what. */
  readonly hintId: string;
}

/** The two heights that a place is measured by: of the source, and of the tank. */
export type Level = 'fall' | 'lift';

export const EditingContext = createContext<Editing | undefined>(undefined);

/** Absent where a drawing is only looked at, such as on paper. */
export const useEditing = (): Editing | undefined => useContext(EditingContext);

export const handleId = (place: PointPlace): string => `point-${pointKey(place)}`;

export const LINE_WORDS: Readonly<Record<LineName, string>> = {
  drive: 'drive line',
  delivery: 'delivery line',
};

/** A place on a line in words: `6 m along, 1.5 m high`. Figures as fine as points are written. */
export function spotWords(
  { at, height }: { readonly at: number; readonly height: number },
  system: System,
): string {
  const figures = (metres: number): number => Math.max(2, wholeDigits(metres) + 2);
  const along = formatQuantity(at, 'pipeLength', system, { figures: figures(at) });
  const high = formatQuantity(height, 'elevation', system, { figures: figures(height) });
  return `${along} along, ${high} high`;
}

const wholeDigits = (metres: number): number =>
  Math.max(0, Math.floor(Math.log10(Math.max(Math.abs(metres), 1e-3))) + 1);
