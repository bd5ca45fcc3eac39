/**
 * Where along the lines the pressures of an answer are more than the pipe may carry, or fall so low that the water parts.
 *
 * As in the check of pressures, the larger of the simulated peak and the Joukowsky bound counts, here at each place with
 * the height of the pipe there.
 */
import type { Installation, PressureCheck, PressureCheckRow } from '@fallwright/engine';
import { GRAVITY } from '@fallwright/engine';
import type { DevelopedPlace, Station } from './developed-place.ts';
import { heightOn } from './developed-place.ts';
import { heightAt } from './points.ts';

export interface Trouble {
  readonly line: 'drive' | 'delivery';
  /** Metres along both lines, from the source. */
  readonly from: number;
  readonly to: number;
  readonly kind: 'over' | 'parts';
  /** It is the ram itself, where the drive line ends. */
  readonly isRam?: true;
  /** Gauge pressure that counts and the rating it is over, both in pascals. Absent where the water parts. */
  readonly pressure?: number;
  readonly rating?: number;
}

/** How finely a pipe is looked along. Judgement: a fiftieth of a pipe is a few pixels. */
const LOOKS = 50;
/** Judgement: within this of boiling, in metres, the run has reached it; it is not followed below. */
const AT_BOILING = 0.05;

export function troublesOf(
  place: DevelopedPlace,
  installation: Installation,
  check: PressureCheck,
  vesselHead: number | undefined,
): readonly Trouble[] {
  const perMetre = installation.water.density * GRAVITY;
  const drive = spansOf(installation.driveLine.segments, 0);
  const delivery = spansOf(installation.deliveryLine.segments, place.driveLength);
  const highest = lineOf(check.envelope.distance, check.envelope.highest, place.driveLength);
  const lowest = lineOf(check.envelope.distance, check.envelope.lowest, place.driveLength);
  const total = place.driveLength + place.deliveryLength;
  const grade = [
    { x: place.driveLength, y: vesselHead ?? place.lift },
    { x: total, y: place.lift },
  ];
  const troubles: Trouble[] = [];
  for (const row of check.rows) {
    const { part } = row;
    if (row.outcome !== 'over') continue;
    const figures = {
      pressure: row.governing,
      ...(row.rating === undefined ? {} : { rating: row.rating }),
    };
    if (part.kind === 'ramBody') {
      const at = { from: place.driveLength, to: place.driveLength };
      troubles.push({ line: 'drive', kind: 'over', isRam: true, ...at, ...figures });
      continue;
    }
    const isDrive = part.kind === 'driveSegment';
    const span = (isDrive ? drive : delivery)[part.index];
    if (span === undefined) continue;
    const line = isDrive ? place.drive : place.delivery;
    const bound = isDrive ? boundHead(row, line, span, perMetre) : -Infinity;
    const headAt = (station: number): number =>
      isDrive ? Math.max(bound, heightAt(highest, station)) : heightAt(grade, station);
    const found = stretchWhere(
      span,
      (station) => (headAt(station) - heightOn(line, station)) * perMetre > (row.rating ?? 0),
    );
    troubles.push({
      line: isDrive ? 'drive' : 'delivery',
      kind: 'over',
      // The check has found it; should the pipe's drawn height hide the place, the whole pipe is marked.
      ...(found ?? span),
      ...figures,
    });
  }
  const boiling = installation.water.vapourHead + AT_BOILING;
  const pressureHead = (station: number): number =>
    heightAt(lowest, station) - heightOn(place.drive, station);
  const whole = { from: 0, to: place.driveLength };
  const parts = check.hasCavity
    ? (stretchWhere(whole, (station) => pressureHead(station) <= boiling) ?? whole)
    : undefined;
  if (parts !== undefined) {
    troubles.push({ line: 'drive', kind: 'parts', ...parts });
  }
  return troubles;
}

interface Span {
  readonly from: number;
  readonly to: number;
}

function spansOf(segments: readonly { readonly length: number }[], from: number): Span[] {
  let start = from;
  return segments.map(({ length }) => {
    const span = { from: start, to: start + length };
    start = span.to;
    return span;
  });
}

/** The envelope as a line over stations. While a new length is not answered yet it is stretched to it. */
function lineOf(distance: readonly number[], heads: readonly number[], length: number) {
  const last = distance.at(-1) ?? 1;
  return distance.map((d, i) => ({ x: (d / last) * length, y: heads[i] ?? 0 }));
}

/** The check gives the bound as a pressure at the pipe's lowest point. */
function boundHead(
  row: PressureCheckRow,
  line: readonly Station[],
  span: Span,
  perMetre: number,
): number {
  if (row.joukowskyBound === undefined) return -Infinity;
  const corners = line.filter(({ station }) => station > span.from && station < span.to);
  const heights = corners.map(({ height }) => height);
  const foot = Math.min(heightOn(line, span.from), heightOn(line, span.to), ...heights);
  return row.joukowskyBound / perMetre + foot;
}

function stretchWhere(span: Span, isSo: (station: number) => boolean): Span | undefined {
  const stations = Array.from(
    { length: LOOKS + 1 },
    (_, i) => span.from + ((span.to - span.from) * i) / LOOKS,
  ).filter(isSo);
  const from = stations[0];
  const to = stations.at(-1);
  if (from === undefined || to === undefined) return undefined;
  // One look alone is still a place that must be seen.
  const least = (span.to - span.from) / LOOKS;
  return from === to ? { from: Math.max(span.from, from - least), to } : { from, to };
}

/** The troubles that are drawn along a pipe: the ram has its own mark. */
export const alongPipes = (troubles: readonly Trouble[]): readonly Trouble[] =>
  troubles.filter(({ isRam }) => isRam !== true);

/** The part of a line between two stations. */
export function partOf(line: readonly Station[], from: number, to: number): Station[] {
  return [
    { station: from, height: heightOn(line, from) },
    ...line.filter(({ station }) => station > from && station < to),
    { station: to, height: heightOn(line, to) },
  ];
}
