/** Answers and sheets in words: pure functions, for the terminal, the browser and print alike. */
export { alongTheLinesInWords } from './along-the-lines.ts';
export { type AnswerRecord, answerRecord, type RunningNumbers } from './answer-record.ts';
export { duration, perCent } from './answered.ts';
export { assumedValue, assumptionsInWords } from './assumption-words.ts';
export {
  type BeatStrip,
  beatStrip,
  NONE_IN_WORDS,
  rateInFigures,
  rhythmInWords,
} from './bench/beat-words.ts';
export { benchCautions } from './bench/bench-cautions.ts';
export { doubtInWords } from './bench/doubt-words.ts';
export { findings } from './bench/findings.ts';
export { type ResidualRow, ratioInFigures, residualRows } from './bench/reading-rows.ts';
export { type BeatsRecord, beatsRecord, type TestRecord, testRecord } from './bench/records.ts';
export { gapInWords, shareInWords } from './bench/share-words.ts';
export { cautions } from './cautions.ts';
export {
  type ChangeRow,
  changeInWords,
  changeRows,
  changesInWords,
  enoughChanges,
  type MaterialRow,
  materialRows,
  thingChanged,
} from './changes.ts';
export { demandInWords } from './demand-words.ts';
export { howSureInWords, howSureRecord, type ImproveFirst, improveFirst } from './how-sure.ts';
export { type LevelBookRow, levelBookRows, measuredInWords } from './measured.ts';
export { monthName, monthsInWords } from './month-words.ts';
export { planRecord } from './plan-record.ts';
export { type HourRow, hourRows, type MonthRow, monthRows } from './plan-rows.ts';
export { type PressureRow, partInWords, pressureRows } from './pressures.ts';
export { reasonsInWords } from './reasons.ts';
export { runInWords } from './run-words.ts';
export { fromFullStoreInWords, startUpInWords } from './start-up-words.ts';
export { tankInWords } from './tank-words.ts';
export { isRunning, verdictSentence, verdictWords } from './verdict-words.ts';
export { hasSeasons, waterPlanOf } from './water-plan-of.ts';
