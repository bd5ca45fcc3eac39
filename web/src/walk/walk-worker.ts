/** The worker that reads survey files. It keeps the last one, so that another choice needs no new reading. */
import { LONGEST_SURVEY, readSurvey, type SurveyFile } from '@fallwright/records';
import { expose } from 'comlink';
import type { Reply } from '../answer/site-answer.ts';
import type { OpenedWalk, WalkChoice, WalkedRead, WalkListed } from './walk.ts';
import { pointCount, surveyCalled } from './walk-words.ts';
import { walkedLine } from './walked-line.ts';

let survey: SurveyFile = { lines: [], notices: [] };

const work = {
  async open(file: File): Promise<Reply<OpenedWalk>> {
    if (file.size > LONGEST_SURVEY) return { outcome: tooLong(file.size) };
    const read = readSurvey(await file.text());
    if (read.ok) {
      survey = read.value;
      return { outcome: { ok: true, lines: listed(read.value) } };
    }
    const { problems, readable } = read;
    if (readable === undefined) return { outcome: { ok: false, problems } };
    // Who goes on with them has seen the problems.
    survey = {
      ...readable,
      notices: problems.map((one) => ({ ...one, kind: 'unusual' as const })),
    };
    return { outcome: { ok: false, problems, readable: listed(readable) } };
  },

  /** @throws RangeError when no such line has been opened. */
  treat(choice: WalkChoice): Reply<WalkedRead> {
    const line = survey.lines[choice.index];
    if (line === undefined) throw new RangeError('the file is no longer here; open it again');
    return { outcome: walkedLine(line, survey.notices, choice) };
  },
};

function tooLong(bytes: number): OpenedWalk {
  const megabytes = (size: number): number => Math.round(size / 1024 / 1024);
  const message = `It holds ${megabytes(bytes)} MB; a survey has ${megabytes(LONGEST_SURVEY)} MB at most. Save the one line that is wanted as a file of its own.`;
  return { ok: false, problems: [{ kind: 'outOfRange', field: '', message }] };
}

function listed({ lines }: SurveyFile): readonly WalkListed[] {
  return lines.map((line) => ({
    called: surveyCalled(line),
    points: pointCount(line),
    length: line.length,
    hasHeights: line.kind === 'table' || line.withoutHeight < line.points.length,
  }));
}

export type WalkWork = typeof work;

expose(work);
