/** Beats that were counted, in words, and as a strip of one line. */
import type { Beat, BeatsHeard, Rhythm } from '@fallwright/engine';
import { plainFigures, toBeatsPerMinute } from '@fallwright/units';
import { finePerCent } from './share-words.ts';

export const NONE_IN_WORDS: Readonly<
  Record<'sound' | 'log', Readonly<Record<Extract<BeatsHeard, { kind: 'none' }>['why'], string>>>
> = {
  sound: {
    silent:
      'There is no sound in this recording. Check the microphone, and record again within a step of the ram.',
    tooShort: 'This recording is too short to hold beats. Record half a minute.',
    noBeat:
      'No regular beat is heard. Hold the recorder nearer to the ram and away from the falling water, or press it to the drive pipe, and record half a minute.',
  },
  log: {
    silent: 'The pressure in this log does not move. Check the sensor and its tap.',
    tooShort:
      'This log is too short to hold beats. Log half a minute, with at least ten readings to a beat.',
    noBeat:
      'No regular beat is found. Log at the ram’s body and not behind the air vessel, with at least ten readings to a beat.',
  },
};

/** Judgement, from recordings of speech without a ram: what was taken for beats there was fewer and less even than this. */
const FEW_BEATS = 16;
const UNEVEN_FOR_FEW = 0.05;

/** The rhythm in sentences, the rate first. */
export function rhythmInWords(rhythm: Rhythm, others: number): readonly string[] {
  const { beats, missed, doubles, isUneven, period, periods, periodSpread } = rhythm;
  const rate = toBeatsPerMinute(rhythm.beatFrequency);
  const spread = toBeatsPerMinute(rhythm.spread);
  const counted = toBeatsPerMinute(rhythm.countedFrequency);
  const figures = (value: number): string => plainFigures(value, 3);
  const long = rhythm.gaps.filter(({ kind }) => kind === 'long').length;
  const pauses = rhythm.gaps.filter(({ kind }) => kind === 'pause').length;
  return [
    `${rateInFigures(rate, spread)} a minute, from ${beats} beats of ${figures(period)} s on the whole.`,
    `Periods spread by ${finePerCent(periodSpread)}: eight in ten lie from ${figures(periods.low)} s to ${figures(periods.high)} s.`,
    ...(isUneven
      ? [
          'The beat is uneven: a beat that was missed cannot be told from a long one, so none is called missed. Look for air, dirt or a sticking valve.',
        ]
      : []),
    ...(beats < FEW_BEATS && periodSpread > UNEVEN_FOR_FEW
      ? ['So few beats, and so uneven, may be chance. Record a minute, nearer to the ram.']
      : []),
    ...(missed > 0
      ? [
          `${missed === 1 ? 'One beat is' : `${missed} beats are`} missing where one was due; counting what was heard alone gives ${figures(counted)} a minute.`,
        ]
      : []),
    ...(doubles > 0
      ? [
          `${doubles === 1 ? 'One beat was' : `${doubles} beats were`} double: a second one came too soon to be the next.`,
        ]
      : []),
    ...(long > 0 && !isUneven
      ? [`${long === 1 ? 'One gap is' : `${long} gaps are`} neither one period nor several.`]
      : []),
    ...(pauses > 0 ? [`${pauses === 1 ? 'A pause is' : `${pauses} pauses are`} left out.`] : []),
    ...(others > 0 ? [othersInWords(others, beats)] : []),
  ];
}

/** Where nearly every beat has another sound, it is the valve falling open. Judgement: half of them. */
function othersInWords(others: number, beats: number): string {
  return others > beats / 2
    ? `${others} other sounds stand between the beats, about ${plainFigures(others / beats, 2)} to a beat: the valve falling open, or an echo.`
    : `${others === 1 ? 'One other sound stands' : `${others} other sounds stand`} between the beats: a double beat, or something else that knocked.`;
}

/** As many figures as the spread allows, and the spread with them. */
export function rateInFigures(rate: number, spread: number): string {
  const decimals = spread > 0 ? Math.max(0, Math.min(2, 1 - Math.floor(Math.log10(spread)))) : 2;
  return `${rate.toFixed(decimals)} ± ${spread > 0 ? spread.toFixed(decimals) : '0'} beats`;
}

export interface StripOf {
  readonly beats: readonly Beat[];
  readonly others: readonly Beat[];
  readonly rhythm: Rhythm;
  /** Letters on the line. */
  readonly width: number;
}

export interface BeatStrip {
  readonly line: string;
  readonly from: number;
  readonly to: number;
}

/** A cell is no longer than this share of a period, so that two beats never share one. */
const CELL = 0.2;
/** Judgement: a beat less sure than this is worth a look. */
export const UNSURE = 0.6;

/**
 * Beats along one line: `|` a beat, `!` one that is not sure, `+` another sound, `_` a beat that is missing, `·` nothing.
 *
 * A long row shows the part with the first gap that is not regular, or its beginning.
 */
export function beatStrip({ beats, others, rhythm, width }: StripOf): BeatStrip {
  const first = beats[0]?.time ?? 0;
  const last = beats.at(-1)?.time ?? 0;
  const { period, gaps } = rhythm;
  const cell = Math.min(CELL * period, (last - first + period) / width);
  const shown = width * cell;
  const odd = gaps.find(({ kind }) => kind !== 'regular');
  const begin = first - period / 2;
  const wanted = odd ? odd.from - shown / 3 : begin;
  const from = Math.max(begin, Math.min(wanted, last + period / 2 - shown));
  const cells = new Array<string>(width).fill('·');
  const put = (time: number, sign: string): void => {
    const place = Math.floor((time - from) / cell);
    if (place >= 0 && place < width) cells[place] = sign;
  };
  for (const { time } of others) put(time, '+');
  for (const { from: start, length, periods, kind } of gaps) {
    if (kind !== 'missed') continue;
    for (let k = 1; k < periods; k++) put(start + (k * length) / periods, '_');
  }
  for (const { time, confidence } of beats) put(time, confidence < UNSURE ? '!' : '|');
  return { line: cells.join(''), from, to: from + shown };
}
