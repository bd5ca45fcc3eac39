/**
 * One line of a survey file made ready for a line of the place: turned round, its heights filtered, held at the ends that are
 * known, stretched to the pipes, and thinned without losing its crests.
 */
import {
  crestsAndSags,
  crestThreshold,
  type FittedProfile,
  fitToEnds,
  type ProfilePoint,
  pocketVolume,
  reversedProfile,
  SATELLITE_HEIGHT_SPREAD,
  type ThinnedProfile,
  thinProfile,
} from '@fallwright/engine';
import {
  type Problem,
  type SurveyLine,
  type SurveyProfile,
  surveyProfile,
} from '@fallwright/records';
import { decimate } from '../beat/decimate.ts';
import type { WalkChoice, WalkCrest, WalkedRead, WalkPoint } from './walk.ts';
import { walkInWords } from './walk-words.ts';

/** Judgement: the commonest drive pipe; a crest is at least a bore high. As on the command line. */
const USUAL_BORE = 0.025;
/** Judgement: a drawing on a desk is some 700 pixels wide, and each column of it has a lowest and a highest height. */
const COLUMNS = 300;

/** What was done to a survey, for the words about it. */
export interface WalkTreated {
  readonly survey: SurveyLine;
  readonly notices: readonly Problem[];
  readonly choice: WalkChoice;
  readonly treated: SurveyProfile;
  readonly fitted: FittedProfile;
  readonly thinned: ThinnedProfile;
  readonly threshold: number;
  readonly crests: readonly WalkCrest[];
  readonly walkedLength: number;
  /** From the ram to the other end, by the survey alone. */
  readonly rise: number;
  readonly isReversed: boolean;
}

export function walkedLine(
  survey: SurveyLine,
  notices: readonly Problem[],
  choice: WalkChoice,
): WalkedRead {
  const read = surveyProfile(survey, choice.window);
  if (!read.ok) {
    const levelLength =
      survey.kind === 'table' || survey.length < 0.01 ? {} : { levelLength: survey.length };
    return { ok: false, problems: read.problems, ...levelLength };
  }
  const treated = read.value;
  const unfiltered = surveyProfile(survey, 0);
  const isDrive = choice.line === 'drive';
  const forward = heightGained(treated.profile);
  // Water falls to the ram and is lifted from it.
  const isReversed = choice.isReversed ?? (isDrive ? forward > 0 : forward < 0);
  const rise = (isDrive ? -1 : 1) * (isReversed ? -forward : forward);
  const walkedLength = treated.profile.at(-1)?.distance ?? 0;
  const ready = (profile: readonly ProfilePoint[]): readonly ProfilePoint[] =>
    stretched(isReversed ? reversedProfile(profile) : profile, choice.length);
  const far = choice.far === undefined ? {} : { [isDrive ? 'start' : 'end']: choice.far };
  const fitted = fitToEnds(ready(treated.profile), { [isDrive ? 'end' : 'start']: 0, ...far });
  const bore = choice.bore ?? USUAL_BORE;
  const threshold = crestThreshold({ bore, heightSpread: treated.heightSpread ?? 0 });
  const thinned = thinProfile(fitted.profile, { count: choice.count, threshold });
  const crests = crestsOf(thinned.profile, threshold, bore);
  const asRead = unfiltered.ok
    ? movedAlike(ready(atDistancesOf(treated.profile, unfiltered.value.profile)), fitted)
    : [];
  const { heightSpread, areSatelliteHeights } = treated;
  const about: WalkTreated = {
    survey,
    notices,
    choice,
    treated,
    fitted,
    thinned,
    threshold,
    crests,
    walkedLength,
    rise,
    isReversed,
  };
  // Between two places of one walk the whole spread of a satellite's heights counts.
  const riseSpread = areSatelliteHeights ? SATELLITE_HEIGHT_SPREAD : heightSpread;
  return {
    ok: true,
    value: {
      kept: thinned.profile,
      asRead: forTheEye(asRead),
      crests,
      walkedLength,
      isReversed,
      window: treated.window,
      isUsualWindow: choice.window === undefined,
      ...(heightSpread === undefined ? {} : { heightSpread }),
      rise,
      ...(riseSpread === undefined ? {} : { riseSpread }),
      areSatelliteHeights,
      words: { metric: walkInWords(about, 'metric'), us: walkInWords(about, 'us') },
    },
  };
}

const heightGained = (profile: readonly ProfilePoint[]): number =>
  (profile.at(-1)?.elevation ?? 0) - (profile[0]?.elevation ?? 0);

function stretched(
  profile: readonly ProfilePoint[],
  length: number | undefined,
): readonly ProfilePoint[] {
  const walked = profile.at(-1)?.distance ?? 0;
  if (length === undefined || !(walked > 0)) return profile;
  const scale = length / walked;
  return profile.map(({ distance, elevation }) => ({ distance: distance * scale, elevation }));
}

/** Filtering moves heights and leaves the points: the same points with the heights of the other. */
function atDistancesOf(
  places: readonly ProfilePoint[],
  heights: readonly ProfilePoint[],
): readonly ProfilePoint[] {
  return places.map(({ distance, elevation }, index) => ({
    distance,
    elevation: heights[index]?.elevation ?? elevation,
  }));
}

/** Moved as the fitted profile was. */
function movedAlike(
  profile: readonly ProfilePoint[],
  { shift, closingError }: FittedProfile,
): readonly ProfilePoint[] {
  const length = profile.at(-1)?.distance ?? 1;
  return profile.map(({ distance, elevation }) => ({
    distance,
    elevation: elevation + shift + (closingError * distance) / length,
  }));
}

function crestsOf(
  profile: readonly ProfilePoint[],
  threshold: number,
  bore: number,
): readonly WalkCrest[] {
  const turns = crestsAndSags(profile, { threshold });
  return turns.flatMap(({ kind, index, distance, elevation }, place) => {
    if (kind !== 'crest') return [];
    const from = turns[place - 1]?.index ?? 0;
    const to = turns[place + 1]?.index ?? profile.length - 1;
    return [{ distance, elevation, air: pocketVolume(profile, { index, from, to }, bore) }];
  });
}

/** Every spike of what was read stays to be seen. */
function forTheEye(profile: readonly ProfilePoint[]): readonly WalkPoint[] {
  const { times, values } = decimate(
    {
      time: Float64Array.from(profile, ({ distance }) => distance),
      values: Float64Array.from(profile, ({ elevation }) => elevation),
    },
    { from: 0, to: profile.at(-1)?.distance ?? 1, columns: COLUMNS },
  );
  return times.map((distance, index) => ({ distance, elevation: values[index] ?? 0 }));
}
