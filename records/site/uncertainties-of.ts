/**
 * How sure the numbers of a site are: each ± as it was given, and a judgement where none stands.
 *
 * A ± is one standard uncertainty. What is left out is taken as certain: temperature, altitude, and that a line called bled
 * holds no air.
 */
import {
  type Installation,
  MATERIALS,
  type MaterialName,
  middleOf,
  type UncertainInput,
  type Unsure,
} from '@fallwright/engine';
import type { Given, Origin } from '../given.ts';
import { sourceFlowOf, supplyOf } from './gauging-of.ts';
import { installationOf } from './installation-of.ts';
import type { PipeLength } from './pipe-fields.ts';
import type { RamForm } from './ram-fields.ts';
import type { Site } from './site-schema.ts';

export interface SiteUncertainty extends UncertainInput {
  /** Whether a person gave the spread, or measured it with the readings; it is ours otherwise. */
  readonly isGiven: boolean;
}

/** How well a number without a ± is known, by how it came to be known. */
interface UsualSpread {
  /** Shares of the value. */
  readonly measured: number;
  readonly stated: number;
  readonly assumed: number;
  /** No better than this, in SI. */
  readonly least?: number;
}

/** Judgement: a level, a hose or a staff in one go is good to 1 cm and ½ %; a height told from memory to 3 %. */
export const HEIGHT: UsualSpread = { measured: 0.005, stated: 0.03, assumed: 0.1, least: 0.01 };
/** Judgement: a tape along a pipe on rough ground is good to 1 %; a stated length is what was bought, less the offcuts. */
export const LENGTH: UsualSpread = { measured: 0.01, stated: 0.03, assumed: 0.2 };
/** Judgement: one filling of a container is good to some 5 %; a flow told from memory to 15 %, for springs change. */
const FLOW: UsualSpread = { measured: 0.05, stated: 0.15, assumed: 0.3 };
/** Judgement: callipers read 0.1 mm, and pipes are not round; a bore that is told is often the nominal one. */
const BORE: UsualSpread = { measured: 0.01, stated: 0.03, assumed: 0.05, least: 1e-4 };
/** Judgement: pipes are made to outside width; tolerances on the wall leave the bore some 1½ % of play. */
export const TABLE_BORE = 0.015;
/** Judgement: a feeler or callipers at the stem, and the washers there. */
const STROKE: UsualSpread = { measured: 0.03, stated: 0.05, assumed: 0.15, least: 1e-4 };
/** Judgement: kitchen scales, and what the water carries of parts of unknown metal. */
const WEIGHT: UsualSpread = { measured: 0.03, stated: 0.06, assumed: 0.15 };
/** Judgement: caught air is seldom measured; told, it is an order of size. */
const AIR: UsualSpread = { measured: 0.2, stated: 0.5, assumed: 0.7 };
/** Judgement: a bench test fits it to a fifth; a figure told is good to a third. */
const BACK_FLOW: UsualSpread = { measured: 0.2, stated: 0.3, assumed: 0.35 };
const GIVE: UsualSpread = { measured: 0.2, stated: 0.4, assumed: 0.5 };

/**
 * Spreads of a typical ram's parts, as ratios. Judgement: chosen together so that its delivery spreads by about a third, as most
 * cells of the handbook tables come within a third of it (docs/MODEL.md, a typical ram).
 */
const TYPICAL_STROKE = 0.08;
const TYPICAL_WEIGHT = 0.12;
const TYPICAL_BACK_FLOW = 0.25;
const TYPICAL_LOSS = 0.3;
const TYPICAL_GIVE = 0.5;
/** Judgement: a loss coefficient that someone wrote is good to a fifth. */
const GIVEN_LOSS = 0.2;
/** Common practice, no source: sharp-edged rings have 0.6 to 0.75, which is some 0.68 ± 0.04. */
const CURTAIN = 0.05;
/** Judgement: roughness in tables is that of new pipe, and sources differ by half either way. */
export const ROUGHNESS = 0.4;
/** Judgement: printed loss coefficients of one fitting differ by a quarter. */
export const FITTINGS = 0.25;
/** Judgement: nobody knows how long a delivery line that was not given will be. */
export const UNKNOWN_LENGTH = 0.4;

/** Judgement: tolerances of EN 10255 and ISO 4427 on the wall, a tenth either way, taken as two spreads. */
const WALL_THICKNESS = 0.05;

/**
 * Spread of the logarithm of a drive wall's stiffness. Judgement: the range that the sources of a modulus span (MATERIALS) is
 * two spreads to either side: 2 % for steel, 19 % for PE100, 85 % for a hose, whose make nobody knows.
 */
export function wallSpread(material: MaterialName): number {
  const { low, high } = MATERIALS[material].youngsModulus;
  return Math.hypot(Math.log(high / low) / 4, WALL_THICKNESS);
}

/** Everything about a site that is not exact. Things that it does not have are left out. */
export function uncertaintiesOf(site: Site): readonly SiteUncertainty[] {
  const { installation } = installationOf(site);
  const inputs = [
    normal('fall', site.fall, HEIGHT),
    normal('lift', site.lift, HEIGHT),
    ...sourceUncertainty(site),
    ...lineUncertainties(site, installation),
    ...ramUncertainties(typeof site.ram === 'object' ? site.ram : {}, installation),
  ];
  return inputs.filter(({ spread }) => spread > 0);
}

function usual(origin: Origin, spread: UsualSpread): number {
  return origin === 'table' ? spread.stated : spread[origin];
}

export function spreadOf({ value, spread, origin }: Given, ifNone: UsualSpread): number {
  return spread ?? Math.max(ifNone.least ?? 0, usual(origin, ifNone) * value);
}

export function normal(what: Unsure, given: Given, ifNone: UsualSpread): SiteUncertainty {
  return {
    what,
    spread: spreadOf(given, ifNone),
    shape: 'normal',
    isGiven: given.spread !== undefined,
  };
}

/** A factor about a given value. */
function ratio(what: Unsure, given: Given, ifNone: UsualSpread): SiteUncertainty {
  const spread = given.value > 0 ? ofLogarithm(spreadOf(given, ifNone) / given.value) : 0;
  return { what, spread, shape: 'logNormal', isGiven: given.spread !== undefined };
}

/**
 * Spread of the logarithm of a quantity whose relative spread is r: √(ln(1 + r²)), which stays sensible where r is above one.
 *
 * Source: moments of the lognormal distribution, any text on statistics.
 */
function ofLogarithm(relative: number): number {
  return Math.sqrt(Math.log1p(relative ** 2));
}

export function judged(what: Unsure, spread: number): SiteUncertainty {
  return { what, spread, shape: 'logNormal', isGiven: false };
}

export function sourceUncertainty({ source }: Site): readonly SiteUncertainty[] {
  const supply = supplyOf(source);
  const from = supply.from === 'drySeason' ? source.drySeason : sourceFlowOf(source);
  if (from === undefined || supply.flow === undefined || supply.flow <= 0) return [];
  const flow = normal('sourceFlow', from, FLOW);
  return [{ ...flow, spread: flow.spread * supply.share }];
}

function lineUncertainties(site: Site, installation: Installation): readonly SiteUncertainty[] {
  const { driveLine } = installation;
  const walls = driveLine.segments.map(({ pipe }) => wallSpread(pipe.material));
  const { delivery } = site;
  return [
    lengthOf('driveLength', site.drive),
    boreOf('driveBore', site.drive, middleOf(installation, 'driveBore')),
    ...airOf(site, installation),
    ...(delivery
      ? [
          lengthOf('deliveryLength', delivery),
          boreOf('deliveryBore', delivery, middleOf(installation, 'deliveryBore')),
        ]
      : [judged('deliveryLength', UNKNOWN_LENGTH)]),
    judged('roughness', ROUGHNESS),
    judged('fittings', FITTINGS),
    judged('wallStiffness', Math.max(...walls)),
  ];
}

/** Pipes of a line are measured one by one: their spreads add by squares. */
function lengthOf(
  what: 'driveLength' | 'deliveryLength',
  lengths: readonly PipeLength[],
): SiteUncertainty {
  const spreads = lengths.map(({ length }) => spreadOf(length, LENGTH));
  return {
    what,
    spread: Math.hypot(...spreads),
    shape: 'normal',
    isGiven: lengths.every(({ length }) => length.spread !== undefined),
  };
}

/** All bores of a line are drawn in one ratio, that of the least sure pipe. */
function boreOf(
  what: 'driveBore' | 'deliveryBore',
  lengths: readonly PipeLength[],
  last: number | undefined,
): SiteUncertainty {
  const bores = lengths.map(({ pipe, bore }) => (typeof pipe === 'object' ? pipe.bore : bore));
  const ratios = bores.map((bore) => (bore ? spreadOf(bore, BORE) / bore.value : TABLE_BORE));
  return {
    what,
    spread: Math.max(...ratios) * (last ?? 0),
    shape: 'normal',
    isGiven: bores.every((bore) => bore?.spread !== undefined),
  };
}

/** A line without pockets is taken as bled. */
function airOf(site: Site, installation: Installation): readonly SiteUncertainty[] {
  const total = middleOf(installation, 'trappedAir') ?? 0;
  if (total <= 0) return [];
  const told = site.drive.flatMap(({ air }) => air ?? []);
  if (told.length === 0) return [judged('trappedAir', AIR.assumed)];
  const relative = Math.hypot(...told.map(({ volume }) => spreadOf(volume, AIR))) / total;
  const spread = ofLogarithm(relative);
  return [
    {
      what: 'trappedAir',
      spread,
      shape: 'logNormal',
      isGiven: told.every(({ volume }) => volume.spread !== undefined),
    },
  ];
}

/** Of a ram that is told by these parts; what they leave out is that of a typical ram. */
export function ramUncertainties(
  parts: RamForm,
  installation: Installation,
): readonly SiteUncertainty[] {
  const { wasteValve = {}, deliveryValve = {}, spreads = {} } = parts;
  const stroke = parts.stroke ?? wasteValve.stroke;
  const weight =
    wasteValve.kind === 'sprung' || wasteValve.kind === 'swing'
      ? wasteValve.forceOpen
      : (wasteValve.weightInWater ?? parts.weight ?? wasteValve.weight);
  // The weight under water is what counts; it goes with the weight in air in one ratio.
  const force = middleOf(installation, 'valveWeight') ?? 0;
  const { backFlow } = deliveryValve;
  return [
    stroke ? normal('stroke', stroke, STROKE) : inSi('stroke', TYPICAL_STROKE, installation),
    weight && weight.value > 0
      ? {
          ...normal('valveWeight', weight, WEIGHT),
          spread: (spreadOf(weight, WEIGHT) / weight.value) * force,
        }
      : inSi('valveWeight', TYPICAL_WEIGHT, installation),
    fittedOr('curtainCoefficient', spreads.wasteValve, CURTAIN),
    ...(spreads.drag ? [fittedOr('drag', spreads.drag, 0)] : []),
    fittedOr(
      'deliveryValveLoss',
      spreads.deliveryValve,
      deliveryValve.loss === undefined ? TYPICAL_LOSS : GIVEN_LOSS,
    ),
    backFlow ? ratio('backFlow', backFlow, BACK_FLOW) : judged('backFlow', TYPICAL_BACK_FLOW),
    parts.give ? ratio('bodyGive', parts.give, GIVE) : judged('bodyGive', TYPICAL_GIVE),
  ];
}

/** What bench tests left open of a coefficient, or the judgement where none tells it. */
function fittedOr(what: Unsure, fitted: Given | undefined, usually: number): SiteUncertainty {
  return {
    what,
    spread: fitted?.value ?? usually,
    shape: 'logNormal',
    isGiven: fitted !== undefined,
  };
}

/** A share of the installation's own value, as a spread in SI. */
function inSi(
  what: 'stroke' | 'valveWeight',
  share: number,
  installation: Installation,
): SiteUncertainty {
  const spread = share * (middleOf(installation, what) ?? 0);
  return { what, spread, shape: 'normal', isGiven: false };
}
