import { type Reading, relativeSpread, repeated, together } from '../../numerics/repeated.ts';
import type { Ratio, SquareMetre } from '../../quantities.ts';
import { STOPWATCH_SPREAD } from './bucket-flow.ts';
import { broken, doubtsAbout, type Gauged, mustBeAboveZero } from './gauged.ts';

/**
 * Mean velocity over the velocity of the surface, when nobody says.
 * Source: the single value in common use, 0.85 with a range of 0.80–0.90 (seen in field notes on the float method).
 * Others print 0.66 for water 0.3 m deep (USBR Water Measurement Manual, table 13-1, memory): the spread covers half of that.
 */
export const SURFACE_COEFFICIENT: Reading & { readonly spread: number } = {
  value: 0.85,
  spread: 0.08,
};

/** Judgement: a taped length between two strings. */
const LENGTH_SPREAD = 0.01;
/** Judgement: a few depths over an uneven bed, even when each is read well. */
const SECTION_SPREAD = 0.07;
/** Source: ISO 748, least time of a float between its marks (memory). */
const LEAST_FLOAT_TIME = 20;

/** The section across the stream: measured as an area, or as a width and depths in the middle of equal strips. */
export type FloatSection =
  | { readonly area: Reading }
  | { readonly width: Reading; readonly depths: readonly Reading[] };

/** Area of a section of equal strips: A = b d̄. */
export function sectionArea(section: FloatSection): SquareMetre {
  if ('area' in section) return section.area.value;
  const { width, depths } = section;
  return (width.value * depths.reduce((sum, { value }) => sum + value, 0)) / depths.length;
}

/**
 * Flow from the time that a float takes over a measured length, and the section of the stream there.
 *
 *   Q = c A L/t̄
 *
 * Holds in a straight, even reach without wind, for floats that take 20 s and more. Rough: the coefficient alone is known to a
 * tenth.
 * Source: FAO (1981), Simple methods for aquaculture: Water, ch. 3, whose five float times are a check. Spreads: Judgement, above.
 * @throws RangeError when a length, an area or a time is not above zero.
 */
export function floatFlow({
  length,
  times,
  section,
  coefficient = SURFACE_COEFFICIENT,
}: {
  readonly length: Reading;
  readonly times: readonly Reading[];
  readonly section: FloatSection;
  readonly coefficient?: Reading;
}): Gauged {
  const area = sectionArea(section);
  const shortest = Math.min(...times.map(({ value }) => value));
  mustBeAboveZero({ length: length.value, area, time: shortest, coefficient: coefficient.value });
  const time = repeated(times, STOPWATCH_SPREAD);
  const flow = (coefficient.value * area * length.value) / time.mean;
  const share = together(
    relativeSpread(coefficient, SURFACE_COEFFICIENT.spread / SURFACE_COEFFICIENT.value),
    sectionSpread(section, area),
    relativeSpread(length, LENGTH_SPREAD),
    time.spread / time.mean,
  );
  return {
    flow,
    spread: flow * share,
    readings: time,
    outside: broken([
      { kind: 'floatTooQuick', has: time.mean, bound: LEAST_FLOAT_TIME, asks: 'least' },
    ]),
    doubts: doubtsAbout(time, 1),
  };
}

/** A stated ± of the whole area counts as it is; that of a few depths never for less than what lies between them. */
function sectionSpread(section: FloatSection, area: SquareMetre): Ratio {
  if ('area' in section) return relativeSpread(section.area, SECTION_SPREAD);
  const { width, depths } = section;
  const strip = width.value / depths.length;
  const ofDepths = Math.hypot(...depths.map(({ spread = 0 }) => strip * spread)) / area;
  return together(SECTION_SPREAD, relativeSpread(width, 0), ofDepths);
}
