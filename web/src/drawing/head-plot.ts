/** Highest and lowest head along the drive line: a small plot, source on the left and ram on the right. */
import type { HeadEnvelope } from '@fallwright/engine';
import type { Point } from './points.ts';
import { heightAt, outline, pathThrough } from './points.ts';
import { multiples, wholeStep } from './scale.ts';
import type { Trouble } from './trouble.ts';
import { alongPipes } from './trouble.ts';
import type { GridLine, PlacedText } from './whole-place.ts';

export interface HeadPlotLayout {
  readonly width: number;
  readonly height: number;
  readonly levels: readonly GridLine[];
  readonly frame: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
  readonly band: string;
  readonly highest: string;
  readonly lowest: string;
  /** Where the highest head is over a rating, or the lowest one parts the water. */
  readonly troubles: readonly string[];
  readonly atRest: number;
  readonly zero: number;
  readonly peak: PlacedText;
  readonly trough: PlacedText;
  readonly rest: PlacedText;
}

export interface HeadPlotWords {
  readonly peak: string;
  readonly trough: string;
  readonly rest: string;
}

export function layOutHeadPlot({
  envelope,
  troubles = [],
  driveLength = envelope.distance[envelope.distance.length - 1] ?? 1,
  fall,
  width,
  height,
  words,
  metresPerGridUnit = 1,
}: {
  readonly envelope: HeadEnvelope;
  readonly troubles?: readonly Trouble[];
  /** Length of the line now, when a new one is not answered yet. */
  readonly driveLength?: number;
  readonly fall: number;
  readonly width: number;
  readonly height: number;
  readonly words: HeadPlotWords;
  readonly metresPerGridUnit?: number;
}): HeadPlotLayout {
  const frame = { left: 36, right: width - 110, top: 26, bottom: height - 24 };
  const length = envelope.distance[envelope.distance.length - 1] ?? 1;
  const high = Math.max(fall, 0, ...envelope.highest);
  const low = Math.min(0, ...envelope.lowest);
  const up = (frame.bottom - frame.top) / Math.max(high - low, 0.1);
  const toY = (head: number): number => frame.top + (high - head) * up;
  const toPoint = (distance: number, head: number): Point => ({
    x: frame.left + (distance / length) * (frame.right - frame.left),
    y: toY(head),
  });
  const top = envelope.distance.map((d, i) => toPoint(d, envelope.highest[i] ?? fall));
  const bottom = envelope.distance.map((d, i) => toPoint(d, envelope.lowest[i] ?? fall));
  const step = wholeStep((high - low) / metresPerGridUnit, 4) * metresPerGridUnit;
  const x = frame.right + 8;
  const [peakY, restY, troughY] = apart(toY(high), toY(fall), toY(low), 15);
  return {
    width,
    height,
    frame,
    levels: multiples(low, high, step).map((head) => ({
      at: toY(head),
      label: String(Math.round(head / metresPerGridUnit)).replace('-', '−'),
    })),
    band: outline([...top, ...bottom.toReversed()]),
    highest: pathThrough(top),
    lowest: pathThrough(bottom),
    troubles: alongPipes(troubles)
      .filter(({ line }) => line === 'drive')
      .map(({ kind, from, to }) => {
        const line = kind === 'over' ? top : bottom;
        const toX = (station: number): number =>
          frame.left + (station / driveLength) * (frame.right - frame.left);
        const [left, right] = [toX(from), toX(to)];
        return pathThrough([
          { x: left, y: heightAt(line, left) },
          ...line.filter(({ x }) => x > left && x < right),
          { x: right, y: heightAt(line, right) },
        ]);
      }),
    atRest: toY(fall),
    zero: toY(0),
    peak: { text: words.peak, x, y: peakY + 4, anchor: 'start' },
    rest: { text: words.rest, x, y: restY + 4, anchor: 'start' },
    trough: { text: words.trough, x, y: troughY + 4, anchor: 'start' },
  };
}

/** Three labels at their heights, moved just enough to stand `gap` apart. */
export function apart(
  top: number,
  middle: number,
  bottom: number,
  gap: number,
): [number, number, number] {
  const low = Math.max(bottom, top + 2 * gap);
  return [top, Math.min(Math.max(middle, top + gap), low - gap), low];
}
