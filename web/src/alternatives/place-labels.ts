/** Words beside points, as many as find room: none stands on a mark or on other words. The first in the list choose first. */
export interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Labelled {
  readonly key: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  /** Distance from the point's middle to where words may begin. */
  readonly clear: number;
  /** Stands even where it covers something. */
  readonly isNeeded: boolean;
}

export interface PlacedLabel {
  readonly key: string;
  readonly text: string;
  readonly x: number;
  readonly y: number;
  readonly anchor: 'start' | 'middle' | 'end';
}

/** Judgement: mean width of a letter at 12 px, and the heights over and under its base line. */
const LETTER = 6.3;
const ABOVE = 10;
const BELOW = 4;

export function placeLabels(
  wanted: readonly Labelled[],
  marks: readonly Box[],
  frame: Box,
  words: readonly Box[] = [],
): PlacedLabel[] {
  const taken: Box[] = [...words];
  return wanted.flatMap((label) => {
    const places = placesFor(label).filter((place) => isInside(boxOf(place), frame));
    const free = places.find((place) => {
      const box = boxOf(place);
      return (
        !marks.some((mark) => overlaps(mark, box)) && !taken.some((other) => overlaps(other, box))
      );
    });
    const chosen = free ?? (label.isNeeded ? (places[0] ?? placesFor(label)[0]) : undefined);
    if (chosen === undefined) return [];
    taken.push(boxOf(chosen));
    return [chosen];
  });
}

function placesFor({ key, text, x, y, clear }: Labelled): PlacedLabel[] {
  const label = { key, text };
  return [
    { ...label, x: x + clear, y: y + 4, anchor: 'start' },
    { ...label, x: x - clear, y: y + 4, anchor: 'end' },
    { ...label, x, y: y - clear * 0.7 - 2, anchor: 'middle' },
    { ...label, x, y: y + clear * 0.7 + 10, anchor: 'middle' },
  ];
}

export function boxOf({ text, x, y, anchor }: PlacedLabel): Box {
  const width = text.length * LETTER;
  const left = anchor === 'start' ? x : anchor === 'end' ? x - width : x - width / 2;
  return { left, right: left + width, top: y - ABOVE, bottom: y + BELOW };
}

const overlaps = (a: Box, b: Box): boolean =>
  a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;

const isInside = (box: Box, frame: Box): boolean =>
  box.left >= frame.left &&
  box.right <= frame.right &&
  box.top >= frame.top &&
  box.bottom <= frame.bottom;
