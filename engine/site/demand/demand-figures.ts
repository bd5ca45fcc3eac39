/**
 * Published figures of daily need, each with its range and its source: planning figures, and the local one is better.
 *
 * The numbers stand here as their sources print them, in litres a day, and are turned to SI on the spot. The same table is in
 * `checks/data/hydraulics/water_demand.csv`; a check compares the two.
 */
import type { KnownBy, SourcedValue } from '../../pipes/evidence.ts';
import type { CubicMetrePerSecond, MetrePerSecond, Ratio, Second } from '../../quantities.ts';

export const DAY: Second = 86_400;
/** A litre a day, in m³/s. */
const FLOW_PRINTED: CubicMetrePerSecond = 1e-3 / DAY;
/** A litre a day on each square metre, which is a millimetre a day, in m/s. */
const DEPTH_PRINTED: MetrePerSecond = 1e-3 / DAY;

const SPHERE = 'Sphere Project (2011), table 14.1, as quoted by The Open University';
const WHO = 'Howard and Bartram, WHO (2003), summary table';
const COURSE =
  'training course text: 20 L within 1 km, 50 L with one household tap, 50–100 L guideline';
const NRCS = 'USDA-NRCS Missouri, livestock watering systems (slides)';
const TEXAS = 'Texas A&M System E-450 (2007), table 1';
const EXTENSION = 'general figures of farm advisers, no page read';
const WATERING = 'web note on watering: plant factor and efficiency';

function figure(
  unit: number,
  [low, value, high]: readonly [number, number, number],
  source: string,
  knownBy: KnownBy,
): SourcedValue {
  return { value: value * unit, low: low * unit, high: high * unit, source, knownBy };
}

/** What one person takes by how the water comes to them (m³/s each). */
export const PEOPLE_FIGURES = {
  /** Drinking, hygiene and cooking in an emergency. */
  emergency: figure(FLOW_PRINTED, [7.5, 15, 15], SPHERE, 'seen'),
  /** A source over a kilometre or half an hour away. */
  'far source': figure(FLOW_PRINTED, [0, 5, 5], WHO, 'memory'),
  /** Carried home, from within a kilometre or half an hour. */
  carried: figure(FLOW_PRINTED, [15, 20, 20], COURSE, 'seen'),
  /** One tap on the plot. */
  'one tap': figure(FLOW_PRINTED, [40, 50, 60], COURSE, 'seen'),
  /** Several taps in the house. */
  'several taps': figure(FLOW_PRINTED, [100, 100, 200], WHO, 'memory'),
} as const satisfies Readonly<Record<string, SourcedValue>>;

export type Service = keyof typeof PEOPLE_FIGURES;

/** Judgement: a ram most often feeds a tank with a tap below it, and the figure lies in the guideline of 50–100 L a day. */
export const USUAL_SERVICE: Service = 'one tap';

/** The parts of the emergency figure: the ends of its range are their sums (m³/s each). */
export const EMERGENCY_PARTS: readonly {
  readonly use: string;
  readonly low: CubicMetrePerSecond;
  readonly high: CubicMetrePerSecond;
}[] = [
  { use: 'drinking and food, survival', low: 2.5 * FLOW_PRINTED, high: 3 * FLOW_PRINTED },
  { use: 'basic hygiene', low: 2 * FLOW_PRINTED, high: 6 * FLOW_PRINTED },
  { use: 'basic cooking', low: 3 * FLOW_PRINTED, high: 6 * FLOW_PRINTED },
];

/** What one animal drinks (m³/s each). Hot weather about doubles the figure of beef cattle (NRCS). */
export const ANIMAL_FIGURES = {
  /** Beef cattle, grown, at maintenance. */
  cow: figure(FLOW_PRINTED, [30, 38, 45], NRCS, 'seen'),
  'range cow': figure(FLOW_PRINTED, [26, 50, 68], TEXAS, 'seen'),
  /** In milk; about three litres more for each litre of milk. */
  'dairy cow': figure(FLOW_PRINTED, [75, 100, 150], EXTENSION, 'memory'),
  sheep: figure(FLOW_PRINTED, [7.6, 10, 11.4], NRCS, 'seen'),
  goat: figure(FLOW_PRINTED, [7.6, 10, 11.4], NRCS, 'seen'),
  horse: figure(FLOW_PRINTED, [30, 38, 45], NRCS, 'seen'),
  donkey: figure(FLOW_PRINTED, [12, 18, 25], EXTENSION, 'memory'),
  camel: figure(FLOW_PRINTED, [25, 35, 50], EXTENSION, 'memory'),
  /** Growing or finishing. */
  pig: figure(FLOW_PRINTED, [6, 12, 20], EXTENSION, 'memory'),
  /** With her litter. */
  sow: figure(FLOW_PRINTED, [18, 22, 30], EXTENSION, 'memory'),
  /** A hundred laying hens drink 20–40 L a day. */
  hen: figure(FLOW_PRINTED / 100, [20, 25, 40], EXTENSION, 'memory'),
} as const satisfies Readonly<Record<string, SourcedValue>>;

export type AnimalName = keyof typeof ANIMAL_FIGURES;

/** Depth of water that a vegetable plot takes in a warm dry season (m/s). */
export const GARDEN_FIGURE: SourcedValue = figure(DEPTH_PRINTED, [3, 5, 8], EXTENSION, 'memory');

/** Need of a planting as a share of the reference evapotranspiration. */
export const PLANT_FACTORS = {
  vegetables: figure(1, [1, 1, 1], EXTENSION, 'memory'),
  lawn: figure(1, [1, 1, 1], WATERING, 'seen'),
  shrubs: figure(1, [0.3, 0.5, 0.8], WATERING, 'seen'),
} as const satisfies Readonly<Record<string, SourcedValue>>;

export type Planting = keyof typeof PLANT_FACTORS;

/** Share of the water given that reaches the roots. */
export const WATERING_EFFICIENCIES = {
  drip: figure(1, [0.85, 0.9, 0.95], WATERING, 'seen'),
  sprinkler: figure(1, [0.75, 0.75, 0.75], WATERING, 'seen'),
} as const satisfies Readonly<Record<string, SourcedValue>>;

export type WateringMethod = keyof typeof WATERING_EFFICIENCIES;

/**
 * Flow that a planting needs at the tap.
 *
 *   q = ET₀ · f · A/η
 *
 * ET₀: reference evapotranspiration as a depth in time; f: plant factor; η: share that reaches the roots.
 *
 * Source: web note on watering (WATERFORM in `checks/data/hydraulics/sources.csv`), in SI.
 * @throws RangeError when `efficiency` is not above nought and at most 1.
 */
export function wateringNeed({
  evapotranspiration,
  plantFactor,
  area,
  efficiency,
}: {
  readonly evapotranspiration: MetrePerSecond;
  readonly plantFactor: Ratio;
  readonly area: number;
  readonly efficiency: Ratio;
}): CubicMetrePerSecond {
  if (!(efficiency > 0 && efficiency <= 1)) {
    throw new RangeError(`efficiency must be above nought and at most 1, got ${efficiency}`);
  }
  return (evapotranspiration * plantFactor * area) / efficiency;
}
