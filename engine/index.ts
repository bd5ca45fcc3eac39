/** The engine's public names. Everything is SI; see docs/MODEL.md for what is assumed. */

export { answerReading, type BenchCase, type ReadingAnswer } from './bench/answer-reading.ts';
export {
  beatsInLog,
  type LogSummary,
  logSummary,
  MOST_READINGS,
  type PressureLog,
} from './bench/beats/beats-in-log.ts';
export {
  type BeatCorrection,
  type CorrectedBeats,
  correctedBeats,
} from './bench/beats/corrected-beats.ts';
export {
  type BeatsHeard,
  beatsHeard,
  beatsInSound,
  SOUND_TIME_SPREAD,
} from './bench/beats/hear-beats.ts';
export {
  type Beat,
  FEWEST_BEATS,
  type Gap,
  type GapKind,
  type Rhythm,
  rhythmOf,
} from './bench/beats/rhythm.ts';
export {
  LEAST_SAMPLE_RATE,
  LONGEST_HEARD,
  MOST_SAMPLE_RATE,
  SoundEar,
  type SoundFrames,
} from './bench/beats/sound-ear.ts';
export { TAP_SPREAD, tappedBeats } from './bench/beats/tapped-beats.ts';
export {
  averaged,
  type BenchFlows,
  type BenchQuantity,
  type BenchReading,
  flowsOf,
  type Measured,
  USUAL_SPREADS,
} from './bench/bench-reading.ts';
export {
  FIT_PARAMETERS,
  type FitFactors,
  type FitParameter,
  fitBounds,
  fitValue,
  OF_THE_RAM,
  ramWithFactors,
  USUAL_LOG_SPREADS,
  withFitFactors,
} from './bench/fit/fit-parameters.ts';
export {
  type FitDone,
  type FitKnowledge,
  type FitNot,
  type FitOptions,
  type FittedParameter,
  type FittedReading,
  fitRam,
  type LeftOut,
  NINETY,
  type RamFit,
} from './bench/fit/fit-ram.ts';
export { type FitDatum, type FitQuantity, predictedOf } from './bench/fit/fit-readings.ts';
export { type NextSetting, type NextTest, nextTests } from './bench/fit/next-test.ts';
export {
  type Combination,
  type ToldApart,
  toldApart,
  type Untold,
} from './bench/fit/told-apart.ts';
export {
  BENCH_RESOLUTION,
  predictedReading,
  type ReadingPredicted,
  type Residual,
} from './bench/measured-against-predicted.ts';
export { doubtsAboutReading, isImpossible, type ReadingDoubt } from './bench/reading-doubts.ts';
export {
  efficienciesOf,
  type ReadingEfficiencies,
  type SureRatio,
} from './bench/reading-efficiencies.ts';
export { type Alternative, alternatives, type DriveChoice } from './compare/alternatives.ts';
export { type AdviceRow, type AdviceRule, adviceFor, RULES } from './compare/choice/advice.ts';
export {
  type Candidate,
  candidates,
  type Feeder,
  type Parts,
} from './compare/choice/candidates.ts';
export {
  type Choice,
  type ChoiceBatch,
  type ChoiceOptions,
  type ChoiceProgress,
  type ChoiceReply,
  type ChoiceRequest,
  type ChoiceResult,
  type ChoiceTask,
  choose,
  chooseHere,
  type Field,
  type Judgement,
  performTask,
} from './compare/choice/choose.ts';
export { frontOf, type Point as FrontPoint } from './compare/choice/front.ts';
export { installationOf as installationOfParts } from './compare/choice/installation-of-parts.ts';
export { judgeBySamples } from './compare/choice/judge-by-samples.ts';
export { type Miss, missesOf } from './compare/choice/nearest-miss.ts';
export {
  ITEM_UNITS,
  type ItemKind,
  type ItemUnit,
  type Money,
  type Offers,
  type PipeOffer,
  type PricedItem,
  type RamOffer,
  type SoldLength,
  type TankOffer,
  type Tuning,
  type VesselOffer,
} from './compare/choice/offers.ts';
export {
  type BoughtPiece,
  type Cut,
  type CutPlan,
  cutPlan,
  type LineName,
  type WantedLines,
} from './compare/choice/parts-list/cut-plan.ts';
export type { PartsGroup } from './compare/choice/parts-list/needs.ts';
export { nominalSize } from './compare/choice/parts-list/nominal-size.ts';
export {
  type PartKind,
  type PartsList,
  type PartsLister,
  type PartsRow,
  partsLister,
  partsListOf,
} from './compare/choice/parts-list/parts-list.ts';
export type { Lack } from './compare/choice/parts-list/pick-item.ts';
export type { Contender, Pick as ChoicePick, Picks } from './compare/choice/picks.ts';
export {
  type DriveLaying,
  LARGEST_PULSE,
  type PlaceToFit,
  type Route,
  usualDriveLengths,
  WANTED_CHANCE,
  type Wish,
} from './compare/choice/place-to-fit.ts';
export type { RatedPart, Reason } from './compare/choice/reasons.ts';
export {
  type CandidateRun,
  type Margins,
  marginsOf,
  type PartPressure,
  pressuresOf,
  pulseOf,
} from './compare/choice/run.ts';
export { anchorForce, bendForce } from './compare/choice/sizing/anchor-force.ts';
export {
  cheapestWithin,
  type DeliveryPipeRow,
  deliveryPipeRows,
} from './compare/choice/sizing/delivery-pipe-choice.ts';
export { type PressureClassRow, pressureClasses } from './compare/choice/sizing/pressure-class.ts';
export {
  type DeliveryDuty,
  deliveringShare,
  snifterSize,
  snifterSpray,
} from './compare/choice/sizing/snifter-size.ts';
export { intakeDepth, strainerArea } from './compare/choice/sizing/strainer-area.ts';
export {
  airInVessel,
  pulseShare,
  type VesselDuty,
  vesselForPulse,
} from './compare/choice/sizing/vessel-for-pulse.ts';
export { type Sizing, sizingOf } from './compare/choice/sizing-of.ts';
export { type BeatFilm, type FilmOptions, filmBeat } from './cycle/beat-film.ts';
export { daubuissonEfficiency, rankineEfficiency } from './cycle/efficiencies.ts';
export type {
  AirPocket,
  DeliveryLine,
  DriveLine,
  Installation,
  ProfilePoint,
  Source,
  SteadySource,
  StoredSource,
} from './cycle/installation.ts';
export type { FrictionLaw } from './cycle/line-grid.ts';
export { type LineEnd, LineSurge, type LineSurgeSetup } from './cycle/line-surge.ts';
export {
  beatAtHead,
  delivers,
  operatingPoint,
  type RunOptions,
  startedKernel,
} from './cycle/operating-point.ts';
export type { RamKernel } from './cycle/ram-kernel.ts';
export type {
  HeadEnvelope,
  OperatingPoint,
  RunEnd,
  RunOutcome,
  StartUp,
  Trace,
} from './cycle/run-record.ts';
export { type StartUpOptions, startUp } from './cycle/start-up.ts';
export { terminalFlow } from './cycle/terminal-flow.ts';
export { type TraceOptions, traceRun } from './cycle/trace-run.ts';
export { wasteValveTransit } from './cycle/valve-transit.ts';
export {
  type DeliveryValve,
  deliveryLossPerFlowSquared,
  passageInertance,
} from './machine/delivery-valve.ts';
export type { AirVessel, Ram, Snifter } from './machine/ram.ts';
export {
  submergedWeightOfMass,
  TYPICAL_SIZES,
  type TypicalSize,
  typicalRam,
} from './machine/typical-ram.ts';
export type {
  SprungValve,
  SwingValve,
  WasteValve,
  WeightedValve,
} from './machine/waste-valve.ts';
export { closingFlow, flowArea, openingForces, seatArea } from './machine/waste-valve.ts';
export { findRoot, type Root } from './numerics/find-root.ts';
export { interpolate, type TablePoint } from './numerics/interpolate.ts';
export {
  covarianceOf,
  type FitEnd,
  HUBER,
  type LeastSquaresFit,
  type LeastSquaresOptions,
  type LeastSquaresProblem,
  levenbergMarquardt,
} from './numerics/levenberg-marquardt.ts';
export { type Reading, type Repeated, repeated } from './numerics/repeated.ts';
export { seededStream } from './numerics/seeded-stream.ts';
export { type Thinned, thinPolyline } from './numerics/thin-polyline.ts';
export { minimumBendRadius } from './pipes/bend-radius.ts';
export { boreChangeDrop, suddenContractionLoss, suddenExpansionLoss } from './pipes/bore-change.ts';
export { churchillFriction } from './pipes/churchill-friction.ts';
export { colebrookFriction } from './pipes/colebrook-friction.ts';
export { type CreepElement, creepCompliance, HDPE_CREEP, type WallCreep } from './pipes/creep.ts';
export { deratedRating } from './pipes/derated-rating.ts';
export type { KnownBy, SourcedValue } from './pipes/evidence.ts';
export { findPipe, PIPES, pipeNames } from './pipes/find-pipe.ts';
export { FITTINGS, type FittingName, findFitting, fittingNames } from './pipes/fittings.ts';
export { darcyFriction } from './pipes/friction.ts';
export { frictionHeadLoss, meanVelocity } from './pipes/friction-head-loss.ts';
export { haalandFriction } from './pipes/haaland-friction.ts';
export { hazenWilliamsGradient } from './pipes/hazen-williams.ts';
export { joukowskyHead, joukowskyPressure } from './pipes/joukowsky.ts';
export { laminarFriction } from './pipes/laminar-friction.ts';
export { deratingFactor, MATERIALS, type Material, type MaterialName } from './pipes/materials.ts';
export type { Pipe, PipeSegment, Restraint } from './pipes/pipe.ts';
export { finalVelocity, growthTime, timeToVelocity, velocityAfter } from './pipes/rigid-column.ts';
export { type EndLosses, lineHeadLoss, type SteadyFlow, steadyFlow } from './pipes/steady-flow.ts';
export type { TablePipe } from './pipes/tables/table-pipe.ts';
export { thickWallFactor, thinWallFactor, wallCompliance } from './pipes/wall-stretch.ts';
export { airFreeWaveSpeed, mixtureWaveSpeed, waveSpeed } from './pipes/wave-speed.ts';
export { GRAVITY, STANDARD_ATMOSPHERE } from './quantities.ts';
export type {
  Answer,
  Change,
  Changeable,
  Limit,
  MaterialChange,
  PressureCheck,
  PressureCheckRow,
  RunningStretch,
  Verdict,
  VerdictKind,
  WhatWouldChange,
} from './site/answer.ts';
export {
  type AnswerOptions,
  answerFor,
  type EarlyAnswer,
  earlyAnswer,
  withPressures,
} from './site/answer-for.ts';
export {
  dailyDemand,
  largestMonth,
  type MonthlyDemand,
  type Needs,
  type Season,
  steadyDemand,
  type Takers,
  USES,
  type Use,
} from './site/demand/daily-demand.ts';
export {
  ANIMAL_FIGURES,
  type AnimalName,
  EMERGENCY_PARTS,
  GARDEN_FIGURE,
  PEOPLE_FIGURES,
  PLANT_FACTORS,
  type Planting,
  type Service,
  USUAL_SERVICE,
  WATERING_EFFICIENCIES,
  type WateringMethod,
  wateringNeed,
} from './site/demand/demand-figures.ts';
export {
  DRAW_PATTERNS,
  DRAW_STEPS,
  type DrawName,
  type DrawPattern,
  drawOfUses,
  hourlyDraw,
  PATTERN_OF_USE,
  shares,
} from './site/demand/draw-pattern.ts';
export {
  type ByMonth,
  eachMonth,
  inMonth,
  MONTH_LENGTHS,
  MONTHS,
  type Month,
} from './site/demand/months.ts';
export { type Met, needMet } from './site/demand/need-met.ts';
export { seasonalDelivery } from './site/demand/seasonal-delivery.ts';
export {
  type DayBalance,
  type DaySetup,
  dayBalance,
  type MonthBalance,
  type TankFlows,
  tankStep,
  type YearBalance,
  type YearSetup,
  yearBalance,
} from './site/demand/tank-balance.ts';
export { type DailyTank, dailyTank, reserveVolume } from './site/demand/tank-size.ts';
export {
  type PlannedMonth,
  type WaterPlan,
  type WaterPlanOf,
  waterPlan,
} from './site/demand/water-plan.ts';
export { type Emptying, emptying, type SurfaceAt } from './site/drain-time.ts';
export { bucketFlow } from './site/gauging/bucket-flow.ts';
export {
  type CombinedFlow,
  combinedFlow,
  type Disagreement,
  type KnownFlow,
} from './site/gauging/combined.ts';
export { dropFlow } from './site/gauging/drop-flow.ts';
export {
  type FloatSection,
  floatFlow,
  SURFACE_COEFFICIENT,
  sectionArea,
} from './site/gauging/float-flow.ts';
export type { Condition, ConditionKind, Gauged } from './site/gauging/gauged.ts';
export { type RectangularWeir, rectangularWeirFlow } from './site/gauging/rectangular-weir-flow.ts';
export { type Supply, supplyFrom } from './site/gauging/supply.ts';
export { type VNotch, vNotchFlow } from './site/gauging/v-notch-flow.ts';
export {
  COARSE_SHARE,
  COARSE_SPREAD,
  type CoarseWay,
  coarseHeight,
  isTooCoarse,
} from './site/levels/coarse-height.ts';
export { type GaugeHead, type GaugeReading, gaugeHead } from './site/levels/gauge-head.ts';
export { HOP_SPREAD, heightByHops } from './site/levels/hops.ts';
export {
  type HeightBetween,
  heightBetween,
  type LevelBook,
  type LevelBookFault,
  type LevelStation,
  levelBook,
  levelBookFaults,
  levelsByInstrument,
  type ReducedStation,
  STAFF_SPREAD,
} from './site/levels/level-book.ts';
export {
  crestsAndSags,
  crestThreshold,
  type ProfileTurn,
} from './site/profile/crests-and-sags.ts';
export { type FittedProfile, fitToEnds, reversedProfile } from './site/profile/fit-to-ends.ts';
export { type GroundPlace, groundDistance } from './site/profile/ground-distance.ts';
export {
  type GroundPoint,
  groundProfile,
  SATELLITE_HEIGHT_SPREAD,
  SATELLITE_SPREAD_ALONG,
} from './site/profile/ground-profile.ts';
export {
  type Advice,
  type Crest,
  type LineReading,
  readLine,
  type SurveyedLine,
} from './site/profile/line-advice.ts';
export { clearingVelocity, pocketVolume } from './site/profile/pocket-volume.ts';
export { type SmoothedHeights, smoothHeights } from './site/profile/smooth-heights.ts';
export {
  type StaticPlace,
  type StaticPressure,
  staticPressure,
} from './site/profile/static-pressure.ts';
export { type ThinnedProfile, thinProfile } from './site/profile/thin-profile.ts';
export {
  type DeliveryBand,
  type SampledAnswer,
  type SampleOptions,
  type SampleProgress,
  sampleAnswer,
  sampledAnswer,
  type VarianceShare,
} from './site/uncertainty/sample-answer.ts';
export {
  isFactor,
  type Shape,
  UNSURE_FACTORS,
  UNSURE_VALUES,
  type UncertainInput,
  type Unsure,
  type UnsureFactor,
  type UnsureValue,
} from './site/uncertainty/uncertain-input.ts';
export { middleOf, withInputs } from './site/uncertainty/with-inputs.ts';
export { varied } from './site/varied.ts';
export { whatWouldChange } from './site/what-would-change.ts';
export { atmosphericPressure, pressureAtGeopotentialHeight } from './water/atmosphere.ts';
export { isentropicBulkModulus, isothermalBulkModulus } from './water/bulk-modulus.ts';
export { waterDensity } from './water/density.ts';
export { COLDEST_WATER, WARMEST_WATER } from './water/liquid-range.ts';
export { waterSoundSpeed } from './water/sound-speed.ts';
export { vapourPressure } from './water/vapour-pressure.ts';
export { waterViscosity } from './water/viscosity.ts';
export { type Water, waterAt } from './water/water.ts';
