/** What was read from a survey file and what was done to it, in words. */
import { SATELLITE_HEIGHT_SPREAD } from '@fallwright/engine';
import type { SurveyLine } from '@fallwright/records';
import { formatQuantity, type Purpose, plainFigures, type System } from '@fallwright/units';
import type { WalkWords } from './walk.ts';
import type { WalkTreated } from './walked-line.ts';

type Show = (value: number, purpose: Purpose, figures?: number) => string;

/** Judgement: a walk and a tape part by a few per cent; by more, one of them is of another line. */
const MOST_STRETCH = 0.1;

export function walkInWords(about: WalkTreated, system: System): WalkWords {
  const show: Show = (value, purpose, figures = 2) =>
    formatQuantity(value, purpose, system, { figures });
  return {
    warnings: [...noticed(about), ...warnings(about, show)],
    done: [
      ...read(about, show),
      ...filtered(about, show),
      ...held(about, show),
      ...stretchedTo(about, show),
      ...left(about, show),
      ...crests(about, show),
    ],
  };
}

export function surveyCalled({ kind, name }: SurveyLine): string {
  if (kind === 'table') return 'Table of distances and heights';
  return `${kind.charAt(0).toUpperCase()}${kind.slice(1)} “${name}”`;
}

export function pointCount(survey: SurveyLine): number {
  return survey.kind === 'table' ? survey.profile.length : survey.points.length;
}

const noticed = ({ notices }: WalkTreated): readonly string[] =>
  notices.map(({ line, message }) => (line === undefined ? message : `Line ${line}: ${message}`));

function warnings(about: WalkTreated, show: Show): readonly string[] {
  const { choice, treated, fitted, rise, walkedLength } = about;
  const texts: string[] = [];
  if (treated.areSatelliteHeights) {
    const spread = show(SATELLITE_HEIGHT_SPREAD, 'elevation');
    texts.push(
      choice.line === 'drive'
        ? `Heights of a satellite recorder are good to some ±${spread} (common practice, no source): too coarse for a fall, and for the crests of a drive line. Level both. Take the length and the course from here.`
        : `Heights of a satellite recorder are good to some ±${spread} (common practice, no source), and to about half of that along one walk. Level the lift; a crest smaller than that does not show.`,
    );
  }
  if (rise < -(treated.heightSpread ?? 0)) {
    texts.push(
      choice.line === 'drive'
        ? 'By its own heights this line runs up to the ram. If it was walked against the water, choose the other end.'
        : 'By its own heights this line runs down from the ram. If it was walked against the water, choose the other end.',
    );
  }
  if (Math.abs(fitted.closingError) > 3 * (treated.heightSpread ?? 0) + 1) {
    texts.push(
      `The file’s own difference in height is out by ${show(Math.abs(fitted.closingError), 'elevation')}. So much means a wrong end, a wrong track or a wrong height: check them.`,
    );
  }
  const { length } = choice;
  if (length !== undefined && Math.abs(walkedLength / length - 1) > MOST_STRETCH) {
    texts.push(
      `The walk is ${ratioInWords(walkedLength / length, show)} the pipe as it is written. Is it the right track, from end to end?`,
    );
  }
  return texts;
}

/** Of a length over a shorter or a longer one: `12 % longer than`, `3.4 times as long as`. */
function ratioInWords(ratio: number, show: Show): string {
  if (ratio >= 2) return `${plainFigures(ratio, 2)} times as long as`;
  return `${show(Math.abs(ratio - 1), 'share')} ${ratio > 1 ? 'longer' : 'shorter'} than`;
}

function read({ survey, walkedLength }: WalkTreated, show: Show): readonly string[] {
  const count = pointCount(survey).toLocaleString('en');
  const texts = [
    `${surveyCalled(survey)}: ${count} points, ${show(walkedLength, 'pipeLength', 4)} along the ground.`,
  ];
  if (survey.kind === 'table') return texts;
  if (survey.withoutHeight > 0) {
    texts.push(
      `${survey.withoutHeight.toLocaleString('en')} points have no height; theirs lie on the line between their neighbours.`,
    );
  }
  const across = survey.gaps.reduce((sum, { distance }) => sum + distance, 0);
  if (survey.gaps.length > 0 && across > 0) {
    const times = survey.gaps.length === 1 ? 'once' : `${survey.gaps.length} times`;
    texts.push(
      `The recorder was off ${times}; the line runs straight across, ${show(across, 'pipeLength')} in all.`,
    );
  }
  return texts;
}

function filtered({ treated }: WalkTreated, show: Show): readonly string[] {
  if (!(treated.window > 0)) return ['Heights stand as they were read, not filtered.'];
  return [
    `Heights are averaged over ${show(treated.window, 'pipeLength')} of ground, twice. That moved them by ${show(treated.typicalChange, 'elevation')} on the whole and ${show(treated.largestChange, 'elevation')} at most.`,
  ];
}

function held({ choice, fitted, rise }: WalkTreated, show: Show): readonly string[] {
  const end = choice.line === 'drive' ? 'fall' : 'lift';
  if (choice.far === undefined) {
    return [
      `The end at the ram is put at nought. By this file the ${end} is ${show(rise, 'elevation', 3)}.`,
    ];
  }
  if (Math.abs(fitted.closingError) < 0.005) {
    return [
      `The ends lie at nought and at the ${end} of ${show(choice.far, 'elevation', 3)}, as the file has them.`,
    ];
  }
  return [
    `The ends are held at nought and at the ${end} of ${show(choice.far, 'elevation', 3)}. By the file it would be ${show(rise, 'elevation', 3)}; the difference, ${show(Math.abs(fitted.closingError), 'elevation')}, is spread along the line.`,
  ];
}

function stretchedTo({ choice, walkedLength }: WalkTreated, show: Show): readonly string[] {
  const { length } = choice;
  if (length === undefined || Math.abs(length - walkedLength) < 0.005) return [];
  const how = length > walkedLength ? 'drawn out' : 'drawn together';
  return [`It is ${how} to the ${show(length, 'pipeLength', 4)} of pipe that are written.`];
}

function left({ survey, thinned }: WalkTreated, show: Show): readonly string[] {
  const count = pointCount(survey) - thinned.profile.length;
  if (count <= 0) return [];
  return [
    `${count.toLocaleString('en')} points are left out and ${thinned.profile.length} kept; none lies more than ${show(thinned.largestError, 'elevation')} from the line that is left.`,
  ];
}

function crests({ crests: found, threshold }: WalkTreated, show: Show): readonly string[] {
  const counts = `A rise of less than ${show(threshold, 'elevation')} counts as none: that is the bore, or what the heights are known to.`;
  if (found.length === 0) return [`No crest. ${counts}`];
  const each = found.map(
    ({ distance, air }) =>
      `${show(distance, 'pipeLength', 3)} along (may hold ${show(air, 'smallVolume')} of air)`,
  );
  return [`${found.length === 1 ? 'A crest' : 'Crests'} ${each.join(', ')}. ${counts}`];
}
