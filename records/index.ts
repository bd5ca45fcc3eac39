/** Records as they are saved: their shape, reading with every problem named, and writing. */

export { type FittedRevision, settingsOfRam, withFittedRam } from './bench/fitted-ram.ts';
export { testJsonSchema } from './bench/json-schema.ts';
export { LONGEST_LOG, type PressureLogFile, readPressureLog } from './bench/read-pressure-log.ts';
export { LONGEST_TEST, readTest, type TestRead, testFromData } from './bench/read-test.ts';
export { type BenchSetting, settingsOf } from './bench/settings-of.ts';
export { type BenchTest, TEST_FORMAT, testSchema } from './bench/test-schema.ts';
export { writeTest } from './bench/write-test.ts';
export {
  type AssembledOffers,
  type OfferForms,
  type OffersFrom,
  type OffersMade,
  offersOf,
} from './choice/offers-of.ts';
export { type AssembledPlace, placeToFit } from './choice/place-to-fit.ts';
export { type SiteOfBuild, siteOfBuild } from './choice/site-of-build.ts';
export { unsureOfBuild } from './choice/unsure-of-a-build.ts';
export { type Given, isGiven, ORIGINS, type Origin } from './given.ts';
export { LONGEST_TEXT } from './longest-text.ts';
export {
  type AuthoredDraft,
  type Check,
  type ConflictSide,
  type Draft,
  type MergeConflict,
  type MergedRecord,
  mergeRecords,
  problemsOf,
} from './merge/merge-records.ts';
export type { MergePath, Side } from './merge/merge-trees.ts';
export { isPlainRecord, type Plain, type PlainRecord } from './merge/plain.ts';
export {
  currencyCalled,
  isCurrency,
  isPrice,
  minorDigits,
  moneyDigits,
  moneyOf,
  type Price,
  readPrice,
} from './prices/money.ts';
export {
  KIND_WORDS,
  PIPE_USES,
  type PipeUse,
  PRICE_COLUMNS,
  type PriceColumn,
  type PriceKind,
  type PriceList,
  type PriceRow,
  type PriceUnit,
  UNIT_WORDS,
} from './prices/price-list.ts';
export { LONGEST_PRICES, type PricesRead, readPrices } from './prices/read-prices.ts';
export { writePrices } from './prices/write-prices.ts';
export type { Problem, ProblemKind } from './problem.ts';
export { readGpx } from './profile/read-gpx.ts';
export { readProfileCsv } from './profile/read-profile-csv.ts';
export {
  LONGEST_SURVEY,
  type PlacesLine,
  type SurveyedPlace,
  type SurveyFile,
  type SurveyGap,
  type SurveyLine,
  type SurveyRead,
  type TableLine,
} from './profile/survey-file.ts';
export {
  readSurvey,
  type SurveyProfile,
  type SurveyProfileRead,
  surveyProfile,
} from './profile/survey-profile.ts';
export { rangeJsonSchema } from './range/json-schema.ts';
export {
  RANGE_FORMAT,
  type RamRevision,
  type Range,
  type RangeRam,
  rangeSchema,
  type SettingsForm,
  type TuningForm,
} from './range/range-schema.ts';
export { LONGEST_RANGE, type RangeRead, rangeFromData, readRange } from './range/read-range.ts';
export {
  copied,
  type Details,
  type FoundRam,
  type Revised,
  ramAt,
  ramsMade,
  referenceTo,
  retired,
  revised,
  revisionNumber,
  revisionsOf,
  withDetails,
} from './range/revisions.ts';
export { type NewestSite, ramForSite, siteWithNewest } from './range/site-copy.ts';
export { AS_BUILT, ramFormOf, type TunedRam, tuningsOf } from './range/tunings-of.ts';
export { writeRange } from './range/write-range.ts';
export type { Assumption, Basis } from './site/assumption.ts';
export { conditionInWords } from './site/check-gauging.ts';
export type { DemandForm, TankForm } from './site/demand-fields.ts';
export { GAUGING_METHODS, type GaugingForm, type GaugingMethod } from './site/gauging-fields.ts';
export {
  type GaugedSource,
  type Gauging,
  gaugedBy,
  gaugedSource,
  sourceFlowOf,
  supplyOf,
} from './site/gauging-of.ts';
export { givensOf, systemOf } from './site/givens.ts';
export { heightOf, type MeasuredHeight } from './site/height-of.ts';
export type { HeightReadings, LevelRow } from './site/height-readings.ts';
export { type AssembledSite, installationOf } from './site/installation-of.ts';
export { siteJsonSchema } from './site/json-schema.ts';
export { type SiteLine, siteLines } from './site/line-survey.ts';
export { MATERIAL_WORDS, materialCalled } from './site/materials.ts';
export type { RamForm } from './site/ram-fields.ts';
export { readPlace, readSite } from './site/read-site.ts';
export { MONTH_NAMES, seasonOf } from './site/season.ts';
export { placeFromData, type SiteRead, siteFromData } from './site/site-from-data.ts';
export { SITE_FORMAT, type Site, siteSchema } from './site/site-schema.ts';
export { type SiteUncertainty, uncertaintiesOf } from './site/uncertainties-of.ts';
export { writeSite } from './site/write-site.ts';
export { LONGEST_RECORDING, type Recording, readWav, type WavRead } from './sound/read-wav.ts';
