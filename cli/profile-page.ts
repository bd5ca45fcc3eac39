/** A surveyed profile for a person: what was done to it, a table with crests and sags, and the block for a site file. */
import { styleText } from 'node:util';
import {
  type FittedProfile,
  type ProfilePoint,
  type ProfileTurn,
  pocketVolume,
  SATELLITE_HEIGHT_SPREAD,
  type ThinnedProfile,
} from '@fallwright/engine';
import type { Problem, SurveyLine, SurveyProfile } from '@fallwright/records';
import { formatQuantity, type Purpose, type System, unitShown } from '@fallwright/units';
import { columns } from './columns.ts';
import type { ProfileOptions } from './profile-command.ts';
import { wrapped } from './wrap.ts';

export interface ProfilePageOf {
  readonly line: SurveyLine;
  readonly options: ProfileOptions;
  readonly notices: readonly Problem[];
  readonly treated: SurveyProfile;
  /** End height less start height, as surveyed. */
  readonly surveyedRise: number;
  readonly fitted: FittedProfile;
  readonly thinned: ThinnedProfile;
  readonly threshold: number;
  /** Crests and sags of the thinned profile. */
  readonly turns: readonly ProfileTurn[];
  readonly bore?: number;
  readonly system: System;
}

export function profilePage(about: ProfilePageOf): string {
  const { line, thinned, system } = about;
  const length = thinned.profile.at(-1)?.distance ?? 0;
  const kind = line.kind === 'table' ? 'Table' : `${startOfSentence(line.kind)} “${line.name}”`;
  const head = `${kind}: ${pointCount(line)} points, ${formatQuantity(length, 'pipeLength', system, { figures: 4 })} along the ground`;
  return [
    styleText('bold', head),
    ...notes(about).flatMap((text) => wrapped(text, { first: '  - ', indent: '    ' })),
    '',
    ...tableOf(about),
    '',
    ...wrapped(
      `For the site file, under the pipe of the ${about.options.line} line when it is all one pipe:`,
    ),
    '',
    ...yamlBlock(about),
  ].join('\n');
}

function notes(about: ProfilePageOf): readonly string[] {
  const { line, treated, fitted, thinned, threshold, system, notices, options } = about;
  const show = (value: number, purpose: Purpose, figures = 2): string =>
    formatQuantity(value, purpose, system, { figures });
  const texts = notices.map(({ line: at, message }) =>
    at === undefined ? message : `Line ${at}: ${message}`,
  );
  if (line.kind !== 'table') {
    for (const { after, distance } of line.gaps) {
      texts.push(
        `The recorder was off for ${show(distance, 'pipeLength')} after point ${after + 1}; the line runs straight across.`,
      );
    }
  }
  if (treated.filledIn > 0) {
    texts.push(
      `${treated.filledIn} points have no height; theirs lie on the line between their neighbours.`,
    );
  }
  if (treated.areSatelliteHeights) {
    texts.push(
      `Heights of a satellite recorder are good to some ±${show(SATELLITE_HEIGHT_SPREAD, 'elevation')} (common practice, no source), and to about half of that along one walk: too coarse for a fall of a few metres. Level the fall, and use this for the course of the line.`,
    );
  }
  texts.push(
    treated.window > 0
      ? `Heights are averaged over ${show(treated.window, 'pipeLength')} of ground, twice; that moved them by ${show(treated.typicalChange, 'elevation')} on the whole and ${show(treated.largestChange, 'elevation')} at most.`
      : 'Heights stand as they were read, not filtered.',
  );
  texts.push(...fitNotes(about, show));
  const rises = options.line === 'drive' ? -about.surveyedRise : about.surveyedRise;
  if (rises < -(treated.heightSpread ?? 0)) {
    const way = options.line === 'drive' ? 'up and not down' : 'down and not up';
    texts.push(
      `By its own heights this line runs ${way}. If it was walked against the water, add --reverse.`,
    );
  }
  const left = pointCount(line) - thinned.profile.length;
  if (left > 0) {
    texts.push(
      `${left} points are left out; none lies more than ${show(thinned.largestError, 'elevation')} from the line that is left.`,
    );
  }
  const count = about.turns.filter(({ kind }) => kind === 'crest').length;
  const crests = count === 0 ? 'No crest' : count === 1 ? 'One crest' : `${count} crests`;
  texts.push(
    `${crests}. A rise of less than ${show(threshold, 'elevation')} counts as none: that is the bore, or what the heights are known to.`,
  );
  if (
    fitted.closingError !== 0 &&
    Math.abs(fitted.closingError) > 3 * (treated.heightSpread ?? 0) + 1
  ) {
    texts.push(
      'So large a correction means a wrong end, a wrong track or a wrong height. Check them.',
    );
  }
  return texts;
}

function fitNotes(
  { fitted, options, thinned }: ProfilePageOf,
  show: (value: number, purpose: Purpose, figures?: number) => string,
): readonly string[] {
  const known = options.line === 'drive' ? options.fall : options.lift;
  const word = options.line === 'drive' ? 'fall' : 'lift';
  const low = options.line === 'drive' ? thinned.profile.at(-1) : thinned.profile[0];
  const high = options.line === 'drive' ? thinned.profile[0] : thinned.profile.at(-1);
  if (known === undefined) {
    const rise = (high?.elevation ?? 0) - (low?.elevation ?? 0);
    return [
      `The end at the ram is put at 0 m. By this survey the ${word} is ${show(rise, 'elevation', 3)}; give --${word} to hold the other end too.`,
    ];
  }
  return [
    `The ends are held at 0 m and the ${word}; the survey’s own difference was out by ${show(Math.abs(fitted.closingError), 'elevation')}, which is spread along the line.`,
  ];
}

function tableOf({ thinned, turns, bore, system }: ProfilePageOf): readonly string[] {
  const { profile } = thinned;
  const unit = (purpose: Purpose): string => unitShown(purpose, system);
  const cell = (value: number, purpose: Purpose): string => {
    const text = formatQuantity(value, purpose, system, { figures: 4 });
    return text.slice(0, text.lastIndexOf('\u00a0'));
  };
  const rows = profile.map(({ distance, elevation }, index) => {
    const turn = turns.find((found) => found.index === index);
    return [
      cell(distance, 'pipeLength'),
      cell(elevation, 'elevation'),
      turn?.kind ?? '',
      turn?.kind === 'crest' && bore !== undefined
        ? formatQuantity(airAt(profile, turns, turn, bore), 'smallVolume', system, { figures: 2 })
        : '',
    ];
  });
  return columns(
    [
      { head: `along (${unit('pipeLength')})`, align: 'right' },
      { head: `height (${unit('elevation')})`, align: 'right' },
      { head: '' },
      { head: bore === undefined ? '' : 'may hold air', align: 'right' },
    ],
    rows,
  ).map((row) => row.trimEnd());
}

function airAt(
  profile: readonly ProfilePoint[],
  turns: readonly ProfileTurn[],
  turn: ProfileTurn,
  bore: number,
): number {
  const place = turns.indexOf(turn);
  const from = turns[place - 1]?.index ?? 0;
  const to = turns[place + 1]?.index ?? profile.length - 1;
  return pocketVolume(profile, { index: turn.index, from, to }, bore);
}

/** Metres to the centimetre, which every site file reads whatever its units. */
function yamlBlock({ thinned, treated, options }: ProfilePageOf): readonly string[] {
  const metres = (value: number): string => `${Number(value.toFixed(2)) + 0} m`;
  const spread = treated.heightSpread === undefined ? '' : ` ± ${metres(treated.heightSpread)}`;
  const places = new Set<string>();
  const [ram, other] =
    options.line === 'drive'
      ? [thinned.profile.at(-1), thinned.profile[0]]
      : [thinned.profile[0], thinned.profile.at(-1)];
  const isOtherHeld = (options.line === 'drive' ? options.fall : options.lift) !== undefined;
  const points = thinned.profile.flatMap((point) => {
    const { distance, elevation } = point;
    const isHeld = point === ram || (point === other && isOtherHeld);
    const at = metres(distance);
    // Two points within a centimetre would be one place.
    if (places.has(at)) return [];
    places.add(at);
    return [`  - { at: ${at}, height: ${metres(elevation)}${isHeld ? '' : spread} }`];
  });
  const length = thinned.profile.at(-1)?.distance ?? 0;
  return [`length: ${metres(length)}`, 'profile:', ...points];
}

export function pointCount(line: SurveyLine): number {
  return line.kind === 'table' ? line.profile.length : line.points.length;
}

function startOfSentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
