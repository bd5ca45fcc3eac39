/** How sure an answer is: the chance that it runs, the band of its delivery, and what to measure better first. */
import {
  isFactor,
  middleOf,
  type SampledAnswer,
  type Unsure,
  type VerdictKind,
} from '@fallwright/engine';
import {
  installationOf,
  type Site,
  type SiteUncertainty,
  uncertaintiesOf,
} from '@fallwright/records';
import {
  formatNumber,
  formatQuantity,
  type Purpose,
  type System,
  toLitresPerDay,
} from '@fallwright/units';
import { perCent } from './answered.ts';
import { verdictWords } from './verdict-words.ts';

/** What each is called, and what makes it surer. Where one number is measured, its purpose. */
const THINGS = {
  fall: { words: 'fall', advice: 'measure it', purpose: 'height' },
  lift: { words: 'lift', advice: 'measure it', purpose: 'height' },
  sourceFlow: { words: 'flow of the source', advice: 'measure it', purpose: 'sourceFlow' },
  driveLength: { words: 'length of the drive line', advice: 'measure it', purpose: 'pipeLength' },
  driveBore: { words: 'bore of the drive pipe', advice: 'measure it', purpose: 'bore' },
  deliveryLength: {
    words: 'length of the delivery line',
    advice: 'measure it',
    purpose: 'pipeLength',
  },
  deliveryBore: { words: 'bore of the delivery pipe', advice: 'measure it', purpose: 'bore' },
  stroke: {
    words: 'stroke of the waste valve',
    advice: 'measure it on the ram',
    purpose: 'stroke',
  },
  valveWeight: { words: 'weight of the waste valve', advice: 'weigh it', purpose: 'weight' },
  trappedAir: { words: 'air in the drive line', advice: 'bleed the line and see' },
  roughness: { words: 'roughness of the pipes', advice: 'look into them for scale and growth' },
  fittings: { words: 'loss in the fittings', advice: 'list every bend and valve' },
  wallStiffness: { words: 'stiffness of the drive pipe', advice: 'find out what it is made of' },
  curtainCoefficient: {
    words: 'passage of the waste valve',
    advice: 'a trial of this ram, timed, with its waste caught, tells it',
  },
  drag: {
    words: 'drag of the waste valve’s disc',
    advice: 'a trial of this ram, timed, with its waste caught, tells it',
  },
  deliveryValveLoss: {
    words: 'loss of the delivery valve',
    advice: 'a trial of this ram at two lifts tells it',
  },
  backFlow: {
    words: 'water that runs back at each beat',
    advice: 'a trial of this ram at two lifts tells it',
  },
  bodyGive: {
    words: 'give of the ram’s body',
    advice: 'a trial of this ram at two lifts tells it',
  },
} as const satisfies Record<
  Unsure,
  { readonly words: string; readonly advice: string; readonly purpose?: Purpose }
>;

/** Judgement: at a third of its spread a thing carries a ninth of its variance, and others lead. */
const BETTER_BY = 3;
/** Judgement: below a twentieth of the variance nothing is worth naming. */
const WORTH_NAMING = 0.05;
const MOST = 0.5;

/** What to know better first: what carries most of the variance. */
export interface ImproveFirst {
  readonly what: Unsure;
  readonly words: string;
  readonly share: number;
  /** Standard uncertainty that is taken, in SI or as a ratio. */
  readonly spread: number;
  /** A spread with which others would lead; absent where no measurement of one number does it. */
  readonly measureTo?: number;
  /** Part of the band that would go if it were measured so: the share is of the variance, and widths go as its root. */
  readonly narrowerBy?: number;
  /** Whether the spread was given with the site. */
  readonly isGiven: boolean;
}

/** Nothing when no input moves the delivery. */
export function improveFirst(sampled: SampledAnswer, site: Site): ImproveFirst | undefined {
  const [top] = sampled.shares;
  if (!top || top.share < WORTH_NAMING) return undefined;
  const input = uncertaintiesOf(site).find(({ what }) => what === top.what);
  if (!input) return undefined;
  const spread = spreadInSi(input, site);
  const measureTo = Number((spread / BETTER_BY).toPrecision(1));
  return {
    what: top.what,
    words: THINGS[top.what].words,
    share: top.share,
    spread,
    ...('purpose' in THINGS[top.what] && {
      measureTo,
      narrowerBy: 1 - Math.sqrt(1 - top.share * (1 - (measureTo / spread) ** 2)),
    }),
    isGiven: input.isGiven,
  };
}

/** The spread of a value in its own unit, whatever its shape; that of a factor as it is. */
function spreadInSi({ what, spread, shape }: SiteUncertainty, site: Site): number {
  if (isFactor(what) || shape !== 'logNormal') return spread;
  return spread * (middleOf(installationOf(site).installation, what) ?? 0);
}

/** Sentences for the part "How sure". */
export function howSureInWords(
  sampled: SampledAnswer,
  site: Site,
  system: System,
): readonly string[] {
  return [
    chanceInWords(sampled),
    ...bandInWords(sampled, system),
    ...needInWords(sampled, site, system),
    ...improveInWords(sampled, site, system),
    'The model’s own error comes on top, and so does air in a line that is called bled.',
  ];
}

function chanceInWords({ samples, chanceItRuns, counts }: SampledAnswer): string {
  const tries = `${samples} tries with the numbers as sure as they are`;
  if (chanceItRuns === 1) return `It runs in all of ${tries}.`;
  const others = Object.entries(counts)
    .filter(([kind]) => kind !== 'runs')
    .sort(([, a], [, b]) => b - a) as [VerdictKind, number][];
  const [kind] = others[0] ?? ['staysShut' as const];
  const most = `${others.length > 1 ? 'mostly ' : ''}${verdictWords(kind)}`;
  const stands = samples - (counts.runs ?? 0) === 1 ? 'other one' : 'others';
  if (chanceItRuns === 0) return `It runs in none of ${tries}: it ${most}.`;
  return `It runs in ${chancePerCent(chanceItRuns)} of ${tries}; in the ${stands} it ${most}.`;
}

/** Neither none nor all by rounding. */
function chancePerCent(chance: number): string {
  if (chance === 0 || chance === 1) return perCent(chance);
  return perCent(Math.min(0.99, Math.max(0.01, chance)));
}

function bandInWords(sampled: SampledAnswer, system: System): readonly string[] {
  const { deliveryBand, bandWhenItRuns } = sampled;
  if (!bandWhenItRuns && deliveryBand.high === 0) return [];
  const volumes = system === 'metric' ? 'litres' : 'gallons';
  // Two figures: a band of some hundred samples is no finer.
  const show = (flow: number): string => formatNumber(flow, 'daily', system, 2);
  const range = (low: number, high: number): string =>
    show(low) === show(high)
      ? `about ${show(low)} ${volumes} a day`
      : `${show(low)} to ${show(high)} ${volumes} a day`;
  const { low, high } = deliveryBand;
  // None goes on by itself, and yet water comes: a store that is filled again and started once a day.
  if (!bandWhenItRuns) {
    return [
      `Likely ${range(low, high)} when it is started once a day: one try in ten gives less, and one in ten more.`,
    ];
  }
  const whenItRuns = range(bandWhenItRuns.low, bandWhenItRuns.high);
  if (high === 0) return [`When it runs, likely ${whenItRuns}.`];
  if (low === 0) {
    return [
      `Likely nothing to ${show(high)} ${volumes} a day; when it runs, ${whenItRuns}. One try in ten gives more.`,
    ];
  }
  return [`Likely ${range(low, high)}: one try in ten gives less, and one in ten more.`];
}

function needInWords(
  { chanceOfNeed, counts }: SampledAnswer,
  site: Site,
  system: System,
): readonly string[] {
  const { demand } = installationOf(site);
  if (chanceOfNeed === undefined || demand === undefined) return [];
  const needed = formatQuantity(demand, 'daily', system);
  // The tank's balance counts what someone who tends the ram can get out of a weak spring; left alone it stops.
  const alone = counts.starves && !site.source.store ? ' for a ram that is left alone' : '';
  if (chanceOfNeed === 0) return [`What is needed, ${needed}, is met in none${alone}.`];
  if (chanceOfNeed === 1) return [`What is needed, ${needed}, is met in all.`];
  return [`What is needed, ${needed}, is met in ${chancePerCent(chanceOfNeed)}.`];
}

function improveInWords(sampled: SampledAnswer, site: Site, system: System): readonly string[] {
  const first = improveFirst(sampled, site);
  if (!first)
    return isSettled(sampled) ? [] : ['No single number decides it; several do together.'];
  const thing = THINGS[first.what];
  const part = `${perCent(first.share)} of the spread`;
  const decides =
    first.share >= MOST
      ? `The ${thing.words} decides most of it (${part})`
      : `The ${thing.words} decides more of it than anything else (${part})`;
  if (first.measureTo === undefined || !('purpose' in thing)) {
    return [`${decides}: ${thing.advice}.`];
  }
  const show = (size: number, figures: number): string =>
    spreadInWords(size, thing.purpose, system, figures);
  const taken = first.isGiven ? '' : ` No ± stands with it; ${show(first.spread, 2)} was taken.`;
  const gain =
    first.narrowerBy === undefined
      ? ''
      : `, and the band will be about ${perCent(first.narrowerBy)} narrower`;
  return [`${decides}: ${thing.advice} to ${show(first.measureTo, 1)} first${gain}.${taken}`];
}

/** Whether all tries came to the same, or nearly all to nothing. */
function isSettled({ deliveryBand: { low, high } }: SampledAnswer): boolean {
  return low === high;
}

/** Heights and lengths under half a metre read best in the small unit. */
function spreadInWords(size: number, purpose: Purpose, system: System, figures: number): string {
  const isHeight = purpose === 'height' || purpose === 'pipeLength';
  const shown = isHeight && size < 0.5 ? 'waterDepth' : purpose;
  return `±\u00a0${formatQuantity(size, shown, system, { figures })}`;
}

/** The same for programs; every field is `null` when no samples were asked for. */
export function howSureRecord(sampled: SampledAnswer | undefined, site: Site, system: System) {
  if (!sampled) return NOT_SAMPLED;
  const { deliveryBand, chanceOfNeed } = sampled;
  const first = improveFirst(sampled, site);
  const daily = (flow: number): number => figures(toLitresPerDay(flow));
  return {
    chanceItRuns: figures(sampled.chanceItRuns),
    chanceStandardError: figures(sampled.standardErrorOfChance),
    deliveredLitresPerDayLow: daily(deliveryBand.low),
    deliveredLitresPerDayMiddle: daily(deliveryBand.middle),
    deliveredLitresPerDayHigh: daily(deliveryBand.high),
    chanceNeedIsMet: chanceOfNeed === undefined ? null : figures(chanceOfNeed),
    improveFirst: first
      ? {
          what: first.what,
          words: first.words,
          share: figures(first.share),
          unit: unitOf(first.what),
          spread: figures(first.spread),
          measureTo: first.measureTo === undefined ? null : figures(first.measureTo),
          narrowerBy: first.narrowerBy === undefined ? null : figures(first.narrowerBy),
          isGiven: first.isGiven,
        }
      : null,
    spreadShares: sampled.shares.map(({ what, share }) => ({ what, share: figures(share) })),
    samples: sampled.samples,
    seed: sampled.seed,
    howSureInWords: howSureInWords(sampled, site, system),
  };
}

const NOT_SAMPLED = {
  chanceItRuns: null,
  chanceStandardError: null,
  deliveredLitresPerDayLow: null,
  deliveredLitresPerDayMiddle: null,
  deliveredLitresPerDayHigh: null,
  chanceNeedIsMet: null,
  improveFirst: null,
  spreadShares: null,
  samples: null,
  seed: null,
  howSureInWords: null,
} as const;

function unitOf(what: Unsure): string {
  if (isFactor(what)) return 'ratio';
  if (what === 'sourceFlow') return 'm3/s';
  if (what === 'trappedAir') return 'm3';
  return what === 'valveWeight' ? 'N' : 'm';
}

/** Six figures, as everywhere in a record. */
function figures(value: number): number {
  return Number(value.toPrecision(6));
}
