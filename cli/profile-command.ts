/** A survey as a profile: what is along it, how it was treated, and the block that goes into a site file. */
import {
  crestsAndSags,
  crestThreshold,
  fitToEnds,
  type ProfilePoint,
  reversedProfile,
  thinProfile,
} from '@fallwright/engine';
import {
  LONGEST_SURVEY,
  readSurvey,
  type SurveyFile,
  type SurveyLine,
  surveyProfile,
} from '@fallwright/records';
import { type Purpose, quoted, readQuantity, type System } from '@fallwright/units';
import { BadInput } from './bad-input.ts';
import { pointCount, profilePage } from './profile-page.ts';
import { nameOf, textOf } from './read-file.ts';

export interface ProfileOptions {
  readonly line: 'drive' | 'delivery';
  readonly track?: string;
  readonly fall?: string;
  readonly lift?: string;
  readonly bore?: string;
  readonly points: string;
  readonly smooth?: string;
  readonly reverse?: boolean;
  readonly asFarAsRead?: boolean;
  readonly units?: System;
}

/** Judgement: a site file holds lists of at most 500, and nobody sees more points than this in a picture. */
const MOST_POINTS = 400;
/** Judgement: the commonest drive pipe; a crest is at least a bore high. */
const USUAL_BORE = 0.025;

export async function profileCommand(file: string, options: ProfileOptions): Promise<void> {
  const known = knownFrom(options);
  const survey = await surveyFrom(file, options);
  const line = chosenLine(nameOf(file), survey, options.track);
  const read = surveyProfile(line, known.window);
  if (!read.ok) throw new BadInput(nameOf(file), read.problems);
  const { profile: walked, heightSpread = 0 } = read.value;
  const inOrder: readonly ProfilePoint[] = options.reverse ? reversedProfile(walked) : walked;
  const ends =
    options.line === 'drive'
      ? { end: 0, ...(known.fall === undefined ? {} : { start: known.fall }) }
      : { start: 0, ...(known.lift === undefined ? {} : { end: known.lift }) };
  const fitted = fitToEnds(inOrder, ends);
  const threshold = crestThreshold({ bore: known.bore ?? USUAL_BORE, heightSpread });
  const thinned = thinProfile(fitted.profile, { count: known.points, threshold });
  const page = profilePage({
    line,
    options,
    notices: survey.notices,
    treated: read.value,
    surveyedRise: (inOrder.at(-1)?.elevation ?? 0) - (inOrder[0]?.elevation ?? 0),
    fitted,
    thinned,
    threshold,
    turns: crestsAndSags(thinned.profile, { threshold }),
    ...(known.bore === undefined ? {} : { bore: known.bore }),
    system: options.units ?? 'metric',
  });
  process.stdout.write(`${page.replaceAll('\u00a0', ' ')}\n`);
}

async function surveyFrom(file: string, options: ProfileOptions): Promise<SurveyFile> {
  const name = nameOf(file);
  const read = readSurvey(await textOf(file, { longest: LONGEST_SURVEY, called: 'survey' }));
  if (read.ok) return read.value;
  if (!read.readable) throw new BadInput(name, read.problems);
  const notices = read.problems.map((problem) => ({ ...problem, kind: 'unusual' as const }));
  if (options.asFarAsRead) return { ...read.readable, notices };
  const count = read.readable.lines.reduce((sum, line) => sum + pointCount(line), 0);
  const message = `${count} points could be read all the same. To go on with them, add --as-far-as-read.`;
  throw new BadInput(name, [...read.problems, { field: '', message }]);
}

function chosenLine(name: string, { lines }: SurveyFile, track: string | undefined): SurveyLine {
  const [first] = lines;
  if (first && lines.length === 1 && track === undefined) return first;
  const chosen = /^\d{1,6}$/.test(track ?? '') ? lines[Number(track) - 1] : undefined;
  if (chosen) return chosen;
  const list = lines.map(
    (line, index) =>
      `--track ${index + 1}: ${line.kind} ${quoted(line.name)}, ${pointCount(line)} points, ${Math.round(line.length)} m`,
  );
  const asked = track === undefined ? '' : `There is no line ${quoted(track)} in it. `;
  const what = lines.length === 1 ? 'one line' : `${lines.length} lines`;
  throw new BadInput(name, [
    {
      field: '--track',
      message: `${asked}This file holds ${what}. Choose one: ${list.join('; ')}.`,
    },
  ]);
}

function knownFrom(options: ProfileOptions) {
  const problems: { readonly field: string; readonly message: string }[] = [];
  const read = (field: 'fall' | 'lift' | 'bore' | 'smooth', purpose: Purpose) => {
    const text = options[field];
    if (text === undefined) return undefined;
    const quantity = readQuantity(text, purpose, `--${field}`);
    if (quantity.ok) return quantity.value.value;
    for (const { message } of quantity.problems) problems.push({ field: `--${field}`, message });
    return undefined;
  };
  const fall = read('fall', 'height');
  const lift = read('lift', 'height');
  const bore = read('bore', 'bore');
  const window = read('smooth', 'pipeLength');
  if (bore === 0)
    problems.push({ field: '--bore', message: 'The bore is nought. Write it like 26.6 mm.' });
  const wrongEnd = options.line === 'drive' ? 'lift' : 'fall';
  if (options[wrongEnd] !== undefined) {
    problems.push({
      field: `--${wrongEnd}`,
      message:
        options.line === 'drive'
          ? 'The lift is the height of the end of a delivery line. Add --line delivery, or give --fall.'
          : 'The fall is the height of the start of a drive line. Leave out --line delivery, or give --lift.',
    });
  }
  const points = /^\d{1,4}$/.test(options.points) ? Number(options.points) : 0;
  if (!(points >= 2 && points <= MOST_POINTS)) {
    problems.push({
      field: '--points',
      message: `${quoted(options.points)} is no number of points. Write a whole number from 2 to ${MOST_POINTS}.`,
    });
  }
  if (problems.length > 0) throw new BadInput('the command line', problems);
  return { fall, lift, bore, window, points };
}
