/**
 * How large and how small each quantity of a site may be.
 *
 * Judgement: outside `least`–`most` it is a slip of the pen or beyond what this model was made for, and is refused.
 * Outside the usual range it is computed, but worth a second look. Common practice, no source: falls of 0.5–15 m, lifts
 * up to some 150 m, drive lines of a few to 60 m, bores of 12–150 mm.
 */
import type { Purpose } from '@fallwright/units';

export interface Limit {
  readonly called: string;
  readonly purpose: Purpose;
  readonly least: number;
  readonly most: number;
  readonly usualLeast?: number;
  readonly usualMost?: number;
}

function limit(
  called: string,
  purpose: Purpose,
  least: number,
  most: number,
  usual: Partial<Limit> = {},
): Limit {
  return { called, purpose, least, most, ...usual };
}

const PIPE_LIMITS: Readonly<Record<string, Limit>> = {
  bore: limit('the bore', 'bore', 0.003, 0.6, { usualLeast: 0.01, usualMost: 0.2 }),
  wall: limit('the wall', 'bore', 0.0002, 0.06),
  roughness: limit('the roughness', 'bore', 0, 0.01),
  rating: limit('the rating', 'pressure', 1e4, 1e8),
  freeAir: limit('the free air', 'share', 0, 0.5),
};

/** Limits by field name, indexes left out: `drive.length`. */
export const LIMITS: Readonly<Record<string, Limit>> = {
  fall: limit('the fall', 'height', 0.05, 60, { usualLeast: 0.5, usualMost: 20 }),
  lift: limit('the lift', 'height', 0.1, 500, { usualMost: 150 }),
  temperature: limit('the temperature of the water', 'temperature', 0, 40),
  altitude: limit('the altitude', 'altitude', -430, 6000),
  demand: limit('the demand', 'daily', 1e-9, 0.1),
  'demand.perPerson': limit('the need of a person', 'daily', 1e-9, 1e-4),
  'demand.other': limit('the other need', 'daily', 0, 0.1),
  'demand.losses': limit('the share that is lost', 'share', 0, 0.9, { usualMost: 0.5 }),
  'demand.growth': limit('the growth', 'share', 0, 0.2),
  'demand.garden.area': limit('the area of the garden', 'surfaceArea', 0.01, 1e6),
  'demand.garden.perArea': limit('the garden’s need', 'watering', 0, 1e-6),
  'demand.garden.evapotranspiration': limit('the evapotranspiration', 'watering', 0, 1e-6),
  'demand.drip.perPlant': limit('the need of a plant', 'daily', 0, 1e-4),
  'tank.volume': limit('the volume of the tank', 'volume', 1e-3, 1e6),
  'source.flow': limit('the flow of the source', 'sourceFlow', 1e-7, 10),
  'source.inflow': limit('the inflow', 'sourceFlow', 0, 10),
  'source.volume': limit('the volume of the store', 'volume', 1e-4, 1e6),
  'source.area': limit('the surface of the store', 'surfaceArea', 1e-3, 1e6),
  'source.drySeason': limit('the dry-season flow', 'sourceFlow', 1e-7, 10),
  'source.share': limit('the share that may be taken', 'share', 1e-3, 1),
  ...under('source.gauging', {
    volume: limit('the volume of the container', 'volume', 1e-5, 1e4),
    times: limit('the time', 'time', 0.1, 1e7),
    time: limit('the time', 'time', 0.1, 1e7),
    angle: limit('the angle of the notch', 'angle', 0.05, 3.1),
    head: limit('the head', 'waterDepth', 1e-3, 3),
    crestHeight: limit('the height of the crest', 'depth', 5e-3, 20),
    channelWidth: limit('the width of the channel', 'depth', 0.01, 100),
    freeDrop: limit('the free drop', 'waterDepth', 0, 20),
    width: limit('the width', 'depth', 5e-3, 100),
    length: limit('the length', 'pipeLength', 0.1, 1000),
    depths: limit('the depth', 'depth', 1e-3, 20),
    area: limit('the area', 'surfaceArea', 1e-4, 1e6),
    drop: limit('the drop', 'waterDepth', 1e-4, 20),
  }),
  'source.depth': limit('the depth over the intake', 'depth', 0.005, 20),
  'drive.length': limit('the length of the drive pipe', 'pipeLength', 0.2, 2000, {
    usualMost: 100,
  }),
  'delivery.length': limit('the length of the delivery pipe', 'pipeLength', 0.2, 50_000, {
    usualMost: 5000,
  }),
  ...under('drive', PIPE_LIMITS),
  ...under('drive.pipe', PIPE_LIMITS),
  ...under('delivery', PIPE_LIMITS),
  ...under('delivery.pipe', PIPE_LIMITS),
  'drive.air.volume': limit('the caught air', 'smallVolume', 0, 0.2),
  'delivery.air.volume': limit('the caught air', 'smallVolume', 0, 0.2),
  'ram.bore': limit('the bore of the ram', 'bore', 0.006, 0.4),
  'ram.stroke': limit('the stroke', 'stroke', 0.0002, 0.1),
  'ram.weight': limit('the weight', 'weight', 0.01, 500),
  'ram.rating': limit('the rating of the ram', 'pressure', 1e4, 1e8),
  'ram.give': limit('the give of the body', 'smallVolume', 0, 1e-4),
  'ram.snifter': limit('the snifter', 'stroke', 0.0001, 0.01),
  'ram.wasteValve.seat': limit('the seat', 'bore', 0.004, 0.5),
  'ram.wasteValve.stroke': limit('the stroke', 'stroke', 0.0002, 0.1),
  'ram.wasteValve.weight': limit('the weight', 'weight', 0.01, 500),
  'ram.wasteValve.weightInWater': limit('the weight in water', 'weight', 0.01, 500),
  'ram.wasteValve.mass': limit('the moving mass', 'mass', 0.001, 50),
  'ram.wasteValve.forceOpen': limit('the force when open', 'force', 0.01, 2000),
  'ram.wasteValve.forceShut': limit('the force when shut', 'force', 0, 2000),
  'ram.wasteValve.port': limit('the port', 'smallArea', 1e-5, 0.3),
  'ram.wasteValve.gap': limit('the gap', 'smallArea', 1e-5, 0.3),
  'ram.deliveryValve.bore': limit('the bore of the delivery valve', 'bore', 0.002, 0.3),
  'ram.deliveryValve.area': limit('the area of the delivery valve', 'smallArea', 3e-6, 0.1),
  'ram.deliveryValve.cracking': limit('the cracking head', 'height', 0, 10),
  'ram.deliveryValve.passage': limit('the passage', 'bore', 0.001, 1),
  'ram.deliveryValve.backFlow': limit('the back-flow', 'smallVolume', 0, 0.01),
  'ram.airVessel.volume': limit('the volume of the air vessel', 'volume', 1e-5, 1),
  'ram.airVessel.air': limit('the air in the vessel', 'share', 0, 1),
};

function under(
  prefix: string,
  limits: Readonly<Record<string, Limit>>,
): Readonly<Record<string, Limit>> {
  return Object.fromEntries(
    Object.entries(limits).map(([name, value]) => [`${prefix}.${name}`, value]),
  );
}
