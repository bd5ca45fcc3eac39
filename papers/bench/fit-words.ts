/** A fit in words and rows: what was fitted and how sure, what the tests do not tell and why, and whether it predicts. */
import type { FitParameter, FitQuantity, RamFit, Untold } from '@fallwright/engine';
import { formatQuantity, type Purpose, type System } from '@fallwright/units';
import { READ_AS } from './doubt-words.ts';
import { finePerCent } from './share-words.ts';

const NAMES: Readonly<
  Record<FitParameter, { readonly called: string; readonly purpose?: Purpose }>
> = {
  closingForce: { called: 'force that holds the waste valve open', purpose: 'force' },
  drag: { called: 'drag of the waste valve’s disc' },
  wasteValveLoss: { called: 'loss of the waste valve (before: 1)' },
  deliveryValveLoss: { called: 'loss of the delivery valve' },
  backFlow: { called: 'back-flow at each beat', purpose: 'smallVolume' },
  bodyGive: { called: 'give of the body for each metre', purpose: 'smallVolume' },
  roughness: { called: 'roughness of the drive line', purpose: 'stroke' },
  trappedAir: { called: 'air caught in the drive line', purpose: 'smallVolume' },
};

/** What would tell a parameter that the tests at hand do not. Common practice, no source. */
const TOLD_BY: Readonly<Record<FitParameter, string>> = {
  closingForce: 'weigh the moving parts under water, or pull the valve open with a spring balance',
  drag: 'test it at a second stroke or weight, with the beats and the waste read',
  wasteValveLoss: 'hold the waste valve open and catch what runs out',
  deliveryValveLoss: 'test it at a low lift, where the most water passes the delivery valve',
  backFlow: 'test it at a lift of six times the fall or more',
  bodyGive: 'read the peak with a fast sensor, or test it at a high lift',
  roughness: 'hold the waste valve open and catch what runs out, on a long drive line',
  trappedAir: 'read the peak with a fast sensor, before and after bleeding the line',
};

export function fitParameterName(what: FitParameter): string {
  return NAMES[what].called;
}

export interface FitRow {
  readonly what: string;
  readonly before: string;
  readonly after: string;
  /** Nine times out of ten. */
  readonly limits: string;
}

export function fitRows(fit: RamFit, system: System): readonly FitRow[] {
  if (fit.kind === 'notFitted') return [];
  return fit.parameters.map(({ what, before, value, low, high, isAtBound }) => {
    const shown = (of: number): string => valueInWords(what, of, system);
    return {
      what: NAMES[what].called,
      before: shown(before),
      after: shown(value),
      limits: isAtBound ? 'at the end of what can be' : `${shown(low)} to ${shown(high)}`,
    };
  });
}

function valueInWords(what: FitParameter, value: number, system: System): string {
  const { purpose } = NAMES[what];
  if (purpose) return formatQuantity(value, purpose, system);
  return String(Number(value.toPrecision(3)));
}

/** Whether it was fitted, how near it comes, and what was doubted. */
export function fitInWords(fit: RamFit): readonly string[] {
  if (fit.kind === 'notFitted') return [notFitted(fit)];
  const { gapBefore, gapAfter, readings, misfit, leftOut } = fit;
  const doubted = readings.filter(({ isDoubted }) => isDoubted);
  const was =
    gapBefore === undefined
      ? 'stood still at some settings'
      : `was off by ${finePerCent(gapBefore)}`;
  return [
    `Before the fit the prediction ${was}; with it, it is off by ${finePerCent(gapAfter)} (root mean square of ${readings.length} readings).`,
    ...(misfit > 1
      ? [
          `The readings lie ${misfit.toFixed(1)} times as far off as they are good to; the limits are that much wider.`,
        ]
      : []),
    ...doubted.map(
      ({ reading, quantity, gapAfter: gap }) =>
        `Reading ${reading + 1}, ${quantityName(quantity)}, lies ${finePerCent(Math.abs(gap))} ${gap < 0 ? 'under' : 'over'} what the others agree on, and counts for less. Read it again.`,
    ),
    ...(leftOut.length > 0
      ? [
          `Each setting predicted by the others alone: off by ${finePerCent(leftOutError(fit) ?? 0)}.`,
        ]
      : []),
  ];
}

/** Root mean square of the gaps of settings that the fit did not see; undefined without any. */
export function leftOutError(fit: RamFit): number | undefined {
  if (fit.kind === 'notFitted') return undefined;
  const gaps = fit.leftOut.flatMap((one) => one.gaps.map(({ gap }) => gap));
  if (gaps.length === 0) return undefined;
  return Math.sqrt(gaps.reduce((sum, gap) => sum + gap ** 2, 0) / gaps.length);
}

function quantityName(quantity: FitQuantity): string {
  return quantity === 'heldOpenFlow' ? 'flow with the valve held open' : READ_AS[quantity].called;
}

function notFitted({ why, standsAt }: Extract<RamFit, { kind: 'notFitted' }>): string {
  switch (why) {
    case 'nothingRead':
      return 'Nothing was fitted: no reading holds beats, flows or heads to fit to.';
    case 'doesNotRun':
      return `Nothing was fitted: the simulated ram stands still at ${standsAt.length === 0 ? 'some settings' : `reading ${standsAt.map((i) => i + 1).join(', ')}`}, whatever its parts are within what can be. Check the stroke, the weight and the drive line.`;
    case 'nothingTold':
      return 'Nothing was fitted: these readings tell no part of the ram better than it was known before. Test it at more settings, or read more closely.';
    default:
      return 'Nothing was fitted: the search did not come to an end, so the ram stays as it is. Look for a reading that is wrong, or test it at one more setting.';
  }
}

/** What the tests do not tell, why, and what would. */
export function untoldInWords(untold: readonly Untold[]): readonly string[] {
  return untold.map((one) => {
    const name = upper(NAMES[one.what].called);
    const would = `To tell it: ${TOLD_BY[one.what]}.`;
    if (one.kind === 'noEffect') return `${name}: these readings hardly feel it. ${would}`;
    if (one.kind === 'tooFewReadings') return `${name}: there are too few readings. ${would}`;
    const others = one.others.map(({ what }) => `the ${NAMES[what].called}`);
    if (others.length === 0) {
      return `${name}: several others together do the same to these readings. ${would}`;
    }
    const list =
      others.length === 1
        ? `${others[0]} does`
        : `${others.slice(0, -1).join(', ')} and ${others.at(-1)} together do`;
    return `${name}: ${list} the same to these readings. ${would}`;
  });
}

function upper(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

export type FitRecord = ReturnType<typeof fitRecord>;

/** A fit for programs, in SI units. */
export function fitRecord(fit: RamFit) {
  return {
    fallwright: 'fit@1',
    fitted: fit.kind === 'fitted',
    whyNot: fit.kind === 'fitted' ? null : fit.why,
    parameters:
      fit.kind === 'fitted'
        ? fit.parameters.map(({ what, before, value, logSpread, low, high, isAtBound }) => ({
            what,
            before: figures(before),
            value: figures(value),
            spreadShare: figures(logSpread),
            low90: figures(low),
            high90: figures(high),
            isAtBound,
          }))
        : [],
    untold: fit.untold.map(({ what, kind }) => ({ what, kind })),
    misfit: fit.kind === 'fitted' ? figures(fit.misfit) : null,
    gapBefore: fit.kind === 'fitted' && fit.gapBefore !== undefined ? figures(fit.gapBefore) : null,
    gapAfter: fit.kind === 'fitted' ? figures(fit.gapAfter) : null,
    leftOutGap: leftOutError(fit) ?? null,
    readings:
      fit.kind === 'fitted'
        ? fit.readings.map(({ reading, quantity, gapBefore, gapAfter, isDoubted }) => ({
            reading: reading + 1,
            quantity,
            gapBefore: gapBefore === undefined ? null : figures(gapBefore),
            gapAfter: figures(gapAfter),
            isDoubted,
          }))
        : [],
    words: [...fitInWords(fit), ...untoldInWords(fit.untold)].map((text) =>
      text.replaceAll('\u00a0', ' '),
    ),
  };
}

function figures(value: number): number {
  return Number(value.toPrecision(5));
}
