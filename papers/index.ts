/** Answers and sheets in words: pure functions, for the terminal, the browser and print alike. */
export { alongTheLinesInWords, type LineNote, lineNotes } from './along-the-lines.ts';
export { type AnswerRecord, answerRecord, type RunningNumbers } from './answer-record.ts';
export { duration, perCent } from './answered.ts';
export { assumedValue, assumptionsInWords } from './assumption-words.ts';
export {
  type AgainstCurve,
  type AgainstPoint,
  againstInWords,
  curveLifts,
  ramPicture,
  testPicture,
} from './bench/against-picture.ts';
export {
  type BeatStrip,
  beatStrip,
  NONE_IN_WORDS,
  rateInFigures,
  rhythmInWords,
  UNSURE,
} from './bench/beat-words.ts';
export { benchCautions } from './bench/bench-cautions.ts';
export { doubtInWords } from './bench/doubt-words.ts';
export { findings } from './bench/findings.ts';
export {
  type FitRecord,
  type FitRow,
  fitInWords,
  fitParameterName,
  fitRecord,
  fitRows,
  leftOutError,
  untoldInWords,
} from './bench/fit-words.ts';
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
export type { Chart, ChartMatter, ChartPoint, ChartWord } from './charts/chart.ts';
export {
  dayChart,
  dayChartInWords,
  PLAN_CHART_HEIGHTS,
  yearChart,
  yearChartInWords,
} from './charts/plan-charts.ts';
export {
  isOverADay,
  SURFACE_CHART_HEIGHT,
  surfaceChart,
  surfaceChartInWords,
} from './charts/surface-chart.ts';
export { brokenAdvice } from './choice/advice-words.ts';
export { combinationInWords, ramsInWords } from './choice/combination-words.ts';
export { type DeliveryPipeWords, deliveryPipesInWords } from './choice/delivery-pipe-words.ts';
export { type FrontRow, frontRows } from './choice/front-rows.ts';
export { groupInWords, kindInWords, lineInWords, missingInWords } from './choice/item-words.ts';
export {
  chanceInWords,
  leastMarginInWords,
  type MarginRow,
  marginRows,
} from './choice/margin-words.ts';
export { changesNeeded, missesInWords, shortfallInWords } from './choice/nothing-works.ts';
export { type PrintedPart, partsRows, totalInWords } from './choice/parts-rows.ts';
export {
  PICK_NAMES,
  type PickName,
  type Proposal,
  pickName,
  proposalOf,
  proposalSummary,
  proposals,
} from './choice/pick-words.ts';
export { moneyInWords, type Reader, sizeInWords } from './choice/reader.ts';
export { type SizeRow, sizingRows } from './choice/sizing-rows.ts';
export { reasonInWords, type WhyNotRow, whyNotRow } from './choice/why-not.ts';
export { demandInWords } from './demand-words.ts';
export {
  type FrontPlot,
  frontPlot,
  type PlacedBuild,
  type PlottedBuild,
  waterBars,
} from './drawing/front-plot.ts';
export { type RamSection, ramSection } from './drawing/ram-section.ts';
export { ramExtent, ramThumb } from './drawing/ram-thumb.ts';
export type {
  Area,
  Drawing,
  Key,
  Line,
  Matter,
  Point,
  Shape,
  Stroke,
  Tone,
  Words,
} from './drawing/shapes.ts';
export { howSureInWords, howSureRecord, type ImproveFirst, improveFirst } from './how-sure.ts';
export {
  gaugingInWords,
  heightWayInWords,
  type LevelBookRow,
  levelBookRows,
  measuredInWords,
} from './measured.ts';
export { monthName, monthsInWords } from './month-words.ts';
export { planRecord } from './plan-record.ts';
export { type HourRow, hourRows, type MonthRow, monthRows } from './plan-rows.ts';
export { type PressureRow, partInWords, pressureRows } from './pressures.ts';
export {
  type AnswersCompared,
  answersCompared,
  rangeNewsInWords,
  rangeNewsRecord,
} from './range-news.ts';
export { reasonsInWords } from './reasons.ts';
export { runInWords } from './run-words.ts';
export { fromFullStoreInWords, startUpInWords } from './start-up-words.ts';
export { tankInWords } from './tank-words.ts';
export { isRunning, verdictSentence, verdictWords } from './verdict-words.ts';
export { hasSeasons, waterPlanOf } from './water-plan-of.ts';
