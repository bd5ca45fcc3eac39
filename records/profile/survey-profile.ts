/** From a line of a survey file to a profile, with what was done to it said. */
import {
  groundProfile,
  type ProfilePoint,
  SATELLITE_SPREAD_ALONG,
  smoothHeights,
} from '@fallwright/engine';
import type { Problem } from '../problem.ts';
import { readGpx } from './read-gpx.ts';
import { readProfileCsv } from './read-profile-csv.ts';
import type { PlacesLine, SurveyedPlace } from './survey-file.ts';
import { notASurvey, refusal, type SurveyLine, type SurveyRead } from './survey-file.ts';

export interface SurveyProfile {
  readonly profile: readonly ProfilePoint[];
  /** Length of ground over which heights were averaged; nought when they stand as they were read. */
  readonly window: number;
  readonly largestChange: number;
  readonly typicalChange: number;
  /** How well the heights are known one against another; absent when nobody said and they are not from a satellite. */
  readonly heightSpread?: number;
  readonly areSatelliteHeights: boolean;
  /** Heights that were missing and were filled in between their neighbours. */
  readonly filledIn: number;
}

export type SurveyProfileRead =
  | { readonly ok: true; readonly value: SurveyProfile }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Judgement: with more than half of the heights missing the rest would be our own drawing. */
const MOST_MISSING_SHARE = 0.5;

/** GPX or CSV, told apart by how the text begins. */
export function readSurvey(text: string): SurveyRead {
  const notText = notASurvey(text);
  if (notText !== undefined) return refusal(notText);
  return /^\ufeff?\s*</.test(text) ? readGpx(text) : readProfileCsv(text);
}

/** `window` is the length of ground over which heights are averaged; left out, a walked line has its usual one and a table none. */
export function surveyProfile(line: SurveyLine, window?: number): SurveyProfileRead {
  if (line.kind === 'table') {
    const start = line.profile[0]?.distance ?? 0;
    const fromNought = line.profile.map(({ distance, elevation }) => ({
      distance: distance - start,
      elevation,
    }));
    const smoothed = smoothHeights(fromNought, window ?? 0);
    const spread = line.heightSpread === undefined ? {} : { heightSpread: line.heightSpread };
    return { ok: true, value: { ...smoothed, ...spread, areSatelliteHeights: false, filledIn: 0 } };
  }
  const fault = heightFault(line) ?? placeFaultOf(line);
  if (fault) return { ok: false, problems: [fault] };
  const filled = filledHeights(line.points);
  const smoothed = groundProfile(filled, window);
  const areSatelliteHeights = line.heightSpread === undefined;
  return {
    ok: true,
    value: {
      profile: smoothed.profile,
      window: smoothed.window,
      largestChange: smoothed.largestChange,
      typicalChange: smoothed.typicalChange,
      heightSpread: line.heightSpread ?? SATELLITE_SPREAD_ALONG,
      areSatelliteHeights,
      filledIn: line.withoutHeight,
    },
  };
}

function heightFault({ points, withoutHeight, name }: PlacesLine): Problem | undefined {
  if (withoutHeight <= MOST_MISSING_SHARE * points.length) return undefined;
  const firstMissing = points.find(({ height }) => height === undefined)?.line;
  const how =
    withoutHeight === points.length
      ? 'has no heights'
      : `has heights for only ${points.length - withoutHeight} of its ${points.length} points`;
  return {
    kind: 'missing',
    field: 'ele',
    ...(firstMissing === undefined ? {} : { line: firstMissing }),
    message: `The line “${name}” ${how}. Export it with heights from the recorder, or level the line and write a CSV file whose first line is: distance (m), height (m). Its length along level ground can still be used.`,
  };
}

function placeFaultOf({ points, length, name }: PlacesLine): Problem | undefined {
  if (length > 0.001) return undefined;
  const line = points[0]?.line;
  return {
    kind: 'contradiction',
    field: '',
    ...(line === undefined ? {} : { line }),
    message: `All points of “${name}” lie in one place. Choose another track, or record the walk anew.`,
  };
}

/** Missing heights between two known ones lie on the straight line between them; at an end they take the nearest. */
function filledHeights(points: readonly SurveyedPlace[]) {
  const known = points.flatMap(({ height }, index) => (height === undefined ? [] : [index]));
  let next = 0;
  return points.map((point, index) => {
    while (next < known.length && (known[next] as number) < index) next += 1;
    const after = known[Math.min(next, known.length - 1)] as number;
    const before = next === 0 ? after : (known[next - 1] as number);
    const low = points[before]?.height ?? 0;
    const high = points[after]?.height ?? 0;
    const share = after <= before ? 0 : Math.min(1, (index - before) / (after - before));
    return { ...point, height: point.height ?? low + share * (high - low) };
  });
}
