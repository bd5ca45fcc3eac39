/** From an answered site to its drawing: the geometry in metres and every word on it in the person's units. */
import type { Installation, PipeSegment } from '@fallwright/engine';
import { GRAVITY } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import type { SiteAnswer } from '../answer/site-answer.ts';
import { leastDepthOf } from '../profile/line-points.ts';
import { METRES_PER_FOOT } from '../profile/written-metres.ts';
import type { LineName } from '../state/lines.ts';
import type { SiteDocument } from '../state/site-document.ts';
import { ventsOf } from '../walk/vents.ts';
import { asWritten } from './as-written.ts';
import { developPlace } from './developed-place.ts';
import type { Drawn } from './elevation-desk.ts';
import type { ElevationWords } from './elevation-words.ts';
import type { Trouble } from './trouble.ts';
import { troublesOf } from './trouble.ts';

export interface DrawnSite extends Drawn {
  readonly materials: { readonly isDriveMetal: boolean; readonly isDeliveryMetal: boolean };
  readonly shown: SiteDocument;
}

/** What the person wrote of the heights, so that their ± stands on the drawing too. */
export interface HeightsAsWritten {
  readonly fallSpread?: number | undefined;
  readonly liftSpread?: number | undefined;
}

/** The answer drawn with the heights, lengths and points of `document`, which the answer may be a moment behind. */
export function elevationOf(
  { installation: answered, answer, assumptions }: SiteAnswer,
  {
    document,
    name,
    system,
    written,
  }: {
    readonly document: SiteDocument;
    readonly name: string;
    readonly system: System;
    readonly written: HeightsAsWritten;
  },
): DrawnSite {
  const installation = asWritten(answered, document);
  const place = developPlace(installation, {
    drive: crestsAsWritten(document, 'drive'),
    delivery: crestsAsWritten(document, 'delivery'),
  });
  const check = answer.pressureCheck;
  const envelope = check?.envelope;
  const hasHeads = envelope !== undefined && envelope.distance.length > 1;
  const lost = answer.operatingPoint && answer.operatingPoint.vesselHead - answered.lift;
  const vesselHead = lost === undefined ? undefined : installation.lift + lost;
  const isAirAssumed = assumptions.some(
    ({ field, value }) => /^drive\[\d+\]\.air$/.test(field) && value.kind === 'quantity',
  );
  return {
    place,
    troubles: check === undefined ? [] : troublesOf(place, installation, check, vesselHead),
    vesselHead,
    ...(hasHeads ? { envelope } : {}),
    words: wordsFor({ installation, answer, lost, isAirAssumed, name, system, written }),
    metresPerGridUnit: system === 'us' ? METRES_PER_FOOT : 1,
    materials: {
      isDriveMetal: installation.driveLine.segments.some(isMetal),
      isDeliveryMetal: installation.deliveryLine.segments.some(isMetal),
    },
    shown: document,
  };
}

const crestsAsWritten = (document: SiteDocument, line: LineName) => ({
  leastDepth: leastDepthOf(document, line),
  vents: ventsOf(document, line).map(({ station }) => station),
});

const METALS: readonly string[] = ['steel', 'galvanisedSteel', 'castIron', 'copper'];
const isMetal = ({ pipe }: PipeSegment): boolean => METALS.includes(pipe.material);

function wordsFor({
  installation,
  answer,
  lost: lostHead,
  isAirAssumed,
  name,
  system,
  written,
}: Pick<SiteAnswer, 'installation' | 'answer'> & {
  /** Head lost in the delivery line while the ram runs. */
  readonly lost: number | undefined;
  readonly isAirAssumed: boolean;
  readonly name: string;
  readonly system: System;
  readonly written: HeightsAsWritten;
}): ElevationWords {
  const height = (metres: number, spread?: number): string =>
    formatQuantity(metres, 'height', system, spread === undefined ? {} : { spread });
  const length = (metres: number): string => formatQuantity(metres, 'pipeLength', system);
  const { fall, lift, ram, source } = installation;
  const drive = lineWords(installation.driveLine.segments, length);
  const delivery = lineWords(installation.deliveryLine.segments, length);
  const deliveryMetres = totalOf(installation.deliveryLine.segments);
  const lost = lostHead === undefined ? undefined : Math.max(0, lostHead);
  const air = (volume: number): string =>
    `${formatQuantity(volume, 'smallVolume', system)} of air${isAirAssumed ? ' assumed' : ''}`;
  const driveCrest = (station: number, volume: number | undefined, isVented: boolean): string =>
    isVented
      ? `vent at ${length(station)}`
      : volume === undefined
        ? `crest at ${length(station)}, taken as bled`
        : `${air(volume)} at ${length(station)}`;
  const pressure = (pascals: number): string =>
    formatQuantity(pascals, 'pressure', system, { figures: 2 });
  const trouble = ({ kind, isRam, pressure: most, rating }: Trouble): string =>
    kind === 'parts'
      ? 'the water parts here: its head falls to boiling'
      : `${isRam ? 'the ram is over' : 'over'} its ${pressure(rating ?? 0)} rating: up to ${pressure(most ?? 0)}`;
  const envelope = answer.pressureCheck?.envelope;
  const peak = envelope === undefined ? undefined : Math.max(...envelope.highest);
  const trough = envelope === undefined ? undefined : Math.min(...envelope.lowest);
  const sourceWords = sourceInWords(source, system);
  const restPressure = installation.water.density * GRAVITY * lift;
  const head = (metres: number): string => formatQuantity(metres, 'head', system);
  const gridUnit = system === 'us' ? 'ft' : 'm';
  const liftWords = `lift ${height(lift, written.liftSpread)}`;
  return {
    gridUnit,
    // Each begins with what is written at the part, so that who speaks to the screen can say what stands there.
    parts: {
      source: `${sourceWords}: change the source`,
      drive: `${drive}: change the drive line`,
      ram: `${ram.name} ram: change it`,
      delivery: `delivery line, ${delivery}: change it`,
      tank: `tank, ${liftWords}: change the tank`,
    },
    title: `${name === '' ? 'The place' : name} in elevation: the drive line`,
    placeTitle: `${name === '' ? 'The place' : name} in elevation: the whole place`,
    description: [
      `The source stands ${height(fall, written.fallSpread)} above the ram’s waste valve.`,
      `The drive line is ${drive}.`,
      `The delivery line, ${delivery}, rises ${height(lift, written.liftSpread)} from the ram to the tank.`,
      ...(lost === undefined ? [] : [`While the ram runs, ${head(lost)} is lost in it.`]),
      ...(peak === undefined || trough === undefined
        ? []
        : [`The head in the drive line swings between ${head(trough)} and ${head(peak)}.`]),
    ].join(' '),
    drive: {
      source: sourceWords,
      fall: `fall ${height(fall, written.fallSpread)}`,
      drive,
      ram: `${ram.name} ram`,
      crest: driveCrest,
      trouble,
      scaleBar: (metres) => `${length(metres)}, both ways: nothing stretched`,
    },
    place: {
      tank: 'tank',
      lift: liftWords,
      liftNote: `${formatQuantity(restPressure, 'pressure', system, { figures: 2 })} at rest`,
      ram: 'ram, level 0',
      fall: `fall ${height(fall)}`,
      delivery: ['delivery line,', delivery],
      grade: lost === undefined ? '' : gradeInWords(lost, deliveryMetres, system),
      gradeShort: 'grade line',
      crest: (along, _air, isVented) =>
        isVented ? `vent at ${length(along)}` : `crest at ${length(along)}: bleed it`,
      restGrade: 'at rest',
      trouble,
      stretch: (stretch) =>
        stretch === 1 ? 'heights and lengths to one scale' : `heights drawn ${stretch} × lengths`,
    },
    headsTitle: `Highest and lowest head in the drive line, ${gridUnit}`,
    headsDescription:
      peak === undefined || trough === undefined
        ? ''
        : `Between ${head(trough)} and ${head(peak)}; ${head(fall)} at rest.`,
    ...(peak === undefined || trough === undefined
      ? {}
      : {
          heads: {
            peak: `peak ${head(peak)}`,
            trough: `lowest ${head(trough)}`,
            rest: `at rest ${head(fall)}`,
          },
        }),
  };
}

const totalOf = (segments: readonly PipeSegment[]): number =>
  segments.reduce((sum, segment) => sum + segment.length, 0);

function lineWords(segments: readonly PipeSegment[], length: (metres: number) => string): string {
  const [only, ...others] = segments;
  const total = length(totalOf(segments));
  if (only === undefined) return total;
  return others.length === 0
    ? `${total} of ${only.pipe.name}`
    : `${total} in ${segments.length} pipes`;
}

function sourceInWords(source: Installation['source'], system: System): string {
  if (source.kind === 'store') {
    return source.inflow > 0
      ? `store, ${formatQuantity(source.inflow, 'sourceFlow', system)} runs in`
      : 'store, nothing runs in';
  }
  return source.yield === undefined
    ? 'source, plenty of water'
    : `source, ${formatQuantity(source.yield, 'sourceFlow', system)}`;
}

/** Judgement: under a centimetre nobody can measure it, and a figure would only look exact. */
const NOTHING_LOST = 0.01;

function gradeInWords(lost: number, length: number, system: System): string {
  const along = formatQuantity(length, 'pipeLength', system);
  if (lost < NOTHING_LOST) return `grade line, next to nothing lost in ${along}`;
  const figures = lost < 1 ? 1 : 2;
  return `grade line, ${formatQuantity(lost, 'head', system, { figures })} lost in ${along}`;
}
