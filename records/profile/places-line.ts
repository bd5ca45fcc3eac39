/** Surveyed places put together to a line, with its length, its gaps and its missing heights counted. */
import { groundDistance } from '@fallwright/engine';
import type { PlacesLine, SurveyedPlace, SurveyGap } from './survey-file.ts';

export function placesLine(
  kind: PlacesLine['kind'],
  name: string,
  parts: readonly (readonly SurveyedPlace[])[],
): PlacesLine {
  const points = parts.flat();
  const starts = new Set<number>();
  let count = 0;
  for (const part of parts) {
    if (count > 0 && part.length > 0) starts.add(count);
    count += part.length;
  }
  const gaps: SurveyGap[] = [];
  let length = 0;
  for (const [index, point] of points.entries()) {
    const before = points[index - 1];
    if (!before) continue;
    const distance = groundDistance(before, point);
    length += distance;
    if (starts.has(index)) gaps.push({ after: index - 1, distance });
  }
  const withoutHeight = points.filter(({ height }) => height === undefined).length;
  return { kind, name, points, gaps, length, withoutHeight };
}

/** What is wrong with a place, or undefined. */
export function placeFault(
  latitude: number | undefined,
  longitude: number | undefined,
): string | undefined {
  if (latitude === undefined || Math.abs(latitude) > 90) {
    return 'The latitude (lat) must be a number of degrees from −90 to 90, such as 46.1234.';
  }
  if (longitude === undefined || Math.abs(longitude) > 180) {
    return 'The longitude (lon) must be a number of degrees from −180 to 180, such as 7.1234.';
  }
  return undefined;
}

/** Judgement: from below the Dead Sea's shore to above the highest mountain. Recorders write −9999 or the like for "unknown". */
export function isHeightOnEarth(height: number): boolean {
  return height >= -500 && height <= 9000;
}
