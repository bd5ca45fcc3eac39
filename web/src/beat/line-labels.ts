/**
 * Places for the names of lines: on the line itself, where it runs level and nothing else is near. A plot that is zoomed
 * needs new places each time, so they are looked for.
 */

export interface NamedLine {
  readonly name: string;
  /** Height at each sampled column; columns are evenly spaced. */
  readonly heights: readonly number[];
  /** For an amount: the height of nought. Its name stands in the ground between the two. */
  readonly ground?: number;
}

export interface PlacedName {
  readonly name: string;
  readonly x: number;
  /** Base line of the letters. */
  readonly y: number;
}

export interface LabelFrame {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** Letters of 13 px: the body above the base line, what hangs below, and the mean width of one. */
const ASCENT = 10;
const DESCENT = 4;
const LETTER = 6.6;
const GAP = 3;
/** Judgement: more free room than this looks no better. */
const ROOM_ENOUGH = 22;

interface Box {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A name for each line, in the order given: earlier lines get the better places. */
export function placeNames(lines: readonly NamedLine[], frame: LabelFrame): PlacedName[] {
  const placed: Box[] = [];
  return lines.map((line) => {
    const best = bestPlace(line, lines, frame, placed);
    placed.push(best);
    return { name: line.name, x: best.left, y: best.bottom - DESCENT };
  });
}

function bestPlace(
  line: NamedLine,
  lines: readonly NamedLine[],
  frame: LabelFrame,
  placed: readonly Box[],
): Box {
  const columns = Math.max(1, line.heights.length - 1);
  const spacing = (frame.right - frame.left) / columns;
  const width = line.name.length * LETTER;
  let best: Box = { left: frame.left + 6, right: 0, top: frame.top, bottom: frame.top + 14 };
  let bestScore = Number.NEGATIVE_INFINITY;
  for (let column = 0; column <= columns; column++) {
    const left = frame.left + 6 + column * spacing;
    if (left + width > frame.right - 4) break;
    const last = Math.min(columns, Math.ceil((left + width - frame.left) / spacing));
    const own = line.heights.slice(column, last + 1);
    if (line.ground !== undefined) {
      const box = boxInside(own, line.ground, left, width);
      const room = roomInside(own, line.ground);
      const names = placed.map((other) => roomBetween(other, box));
      const score = Math.min(ROOM_ENOUGH, room, ...names);
      if (score > bestScore + 0.01) {
        bestScore = score;
        best = box;
      }
      continue;
    }
    const highest = Math.min(...own);
    const lowest = Math.max(...own);
    const steepness = lowest - highest;
    const boxes: readonly Box[] = [
      { left, right: left + width, top: highest - GAP - ASCENT - DESCENT, bottom: highest - GAP },
      { left, right: left + width, top: lowest + GAP, bottom: lowest + GAP + ASCENT + DESCENT },
    ];
    for (const box of boxes) {
      if (box.top < frame.top || box.bottom > frame.bottom) continue;
      const others = lines
        .filter((other) => other !== line)
        .map(({ heights }) => roomTo(heights.slice(column, last + 1), box));
      const names = placed.map((other) => roomBetween(other, box));
      const room = Math.min(ROOM_ENOUGH, ...others, ...names);
      const score = room - steepness;
      if (score > bestScore + 0.01) {
        bestScore = score;
        best = box;
      }
    }
  }
  return best;
}

/** A box half way between nought and the least of an amount. */
function boxInside(heights: readonly number[], ground: number, left: number, width: number): Box {
  const nearest = heights.reduce((a, b) => (Math.abs(b - ground) < Math.abs(a - ground) ? b : a));
  const top = (nearest + ground) / 2 - (ASCENT + DESCENT) / 2;
  return { left, right: left + width, top, bottom: top + ASCENT + DESCENT };
}

/** Free height over and under letters inside an amount; below nought where it is too thin or changes sides. */
function roomInside(heights: readonly number[], ground: number): number {
  const depths = heights.map((height) => ground - height);
  const thinnest = Math.max(Math.min(...depths), -Math.max(...depths));
  return (thinnest - ASCENT - DESCENT) / 2;
}

/** Free height between a stretch of line and a box; below nought where it runs through the box. */
function roomTo(heights: readonly number[], { top, bottom }: Box): number {
  const highest = Math.min(...heights);
  const lowest = Math.max(...heights);
  if (lowest < top) return top - lowest;
  if (highest > bottom) return highest - bottom;
  return -ROOM_ENOUGH;
}

function roomBetween(a: Box, b: Box): number {
  const isApart = a.right + 6 < b.left || b.right + 6 < a.left;
  if (isApart) return ROOM_ENOUGH;
  if (a.bottom < b.top) return b.top - a.bottom;
  if (b.bottom < a.top) return a.top - b.bottom;
  return -2 * ROOM_ENOUGH;
}
