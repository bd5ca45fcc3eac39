/** What lies along the drive and the delivery line: crests and their air, sags, pressures at rest, and what would help. */
import {
  type Advice,
  type Answer,
  type Crest,
  GRAVITY,
  type StaticPlace,
} from '@fallwright/engine';
import { type Site, type SiteLine, siteLines } from '@fallwright/records';
import { type System, toLitres } from '@fallwright/units';
import { type Answered, answered } from './answered.ts';

const LINES = {
  drive: { called: 'Drive line', start: 'at the source', end: 'at the ram', water: 'the source' },
  delivery: {
    called: 'Delivery line',
    start: 'at the ram',
    end: 'at the tank',
    water: 'the outlet at the tank',
  },
} as const;

/** One thing along a line, in words. */
export interface LineNote {
  readonly line: 'drive' | 'delivery';
  readonly text: string;
  /** Where along the whole line a vent would keep the air out; absent where none would, or where one stands. */
  readonly ventAt?: number;
}

export function alongTheLinesInWords(
  answer: Answer,
  site: Site,
  system: System,
): readonly string[] {
  return lineNotes(answer, site, system).map(({ text }) => text);
}

export function lineNotes(answer: Answer, site: Site, system: System): readonly LineNote[] {
  const about = answered(answer, site, system);
  return siteLines(site).flatMap((line) => notesOf(line, about));
}

function notesOf(line: SiteLine, about: Answered): readonly LineNote[] {
  const { show } = about;
  const { called } = LINES[line.line];
  const { crests, sags, threshold, advice } = line.reading;
  const note = (text: string): LineNote => ({ line: line.line, text });
  const pressures = note(pressuresInWords(line, about));
  if (!line.isSurveyed) return [pressures];
  const along = (distance: number): string => show(distance, 'pipeLength');
  const none = `${called}: no crest that holds air. Rises of less than ${show(threshold, 'bore', 2)}, the bore or what the heights are known to, are not counted.`;
  return [
    ...(crests.length === 0 ? [note(none)] : []),
    ...crests.map((crest): LineNote => {
      const ways = advice.find((found) => found.crest === crest)?.ways ?? [];
      const vent = ways.find((way) => way.kind === 'vent');
      const texts = [crestInWords(crest, line, about), ...adviceInWords(ways, crest, line, about)];
      return { ...note(texts.join(' ')), ...(vent === undefined ? {} : { ventAt: vent.at }) };
    }),
    ...(sags.length === 0
      ? []
      : [
          note(
            `${called}: ${sags.length === 1 ? 'a sag' : 'sags'}, where silt settles, ${listed(sags.map(({ distance }) => along(distance)))} along.`,
          ),
        ]),
    pressures,
  ];
}

function crestInWords(crest: Crest, { line }: SiteLine, { show, answer }: Answered): string {
  const { called } = LINES[line];
  const where = `${called}: a crest ${show(crest.distance, 'pipeLength')} along, ${show(crest.elevation, 'elevation')} up, rises ${show(crest.prominence, 'elevation', 2)}.`;
  const holds = `It may hold ${show(crest.air, 'smallVolume', 2)} of air.`;
  if (crest.vent !== undefined) {
    return `${where} The vent at ${show(crest.vent, 'pipeLength')} lets its air out.`;
  }
  const flow = line === 'delivery' ? answer.operatingPoint?.deliveryFlow : undefined;
  if (flow === undefined) return `${where} ${holds}`;
  const velocity = flow / ((Math.PI / 4) * crest.bore ** 2);
  const verb = velocity > crest.clearingVelocity ? 'sweeps it out' : 'does not sweep it out';
  return `${where} ${holds} The flow of ${show(velocity, 'velocity', 2)} ${verb}: that takes ${show(crest.clearingVelocity, 'velocity', 2)}.`;
}

function adviceInWords(
  ways: readonly Advice[],
  crest: Crest,
  { line }: SiteLine,
  { show }: Answered,
): readonly string[] {
  if (ways.length === 0) return [];
  const along = (distance: number): string => show(distance, 'pipeLength');
  const [first] = ways;
  if (first?.kind === 'lower') {
    const above = show(Math.abs(crest.pressureHead), 'elevation', 2);
    const lower = show(first.lowering, 'elevation', 2);
    const so =
      line === 'drive'
        ? 'so the line does not fill by itself, and a vent would draw air in'
        : 'so the ram must first lift the water that high, and a vent would draw air in once it runs over';
    return [`It lies ${above} above ${LINES[line].water}, ${so}. Lay it at least ${lower} lower.`];
  }
  const said = ways.map((way): string => {
    if (way.kind === 'vent') {
      // An open standpipe on the drive line would take the hammer as an air vessel does.
      const how =
        line === 'drive' ? 'a cock, shut again once the line is full' : 'a cock or an air valve';
      return `a vent at ${along(way.at)} (${how})`;
    }
    const lower = `at most ${show(way.lowering, 'elevation', 2)} lower`;
    if (way.kind === 'lower') return `laying it ${lower}`;
    return `laying the pipe straight from ${along(way.from)} to ${along(way.to)} (${lower})`;
  });
  return [`${startOfSentence(said.join(', or '))}, would keep the air out.`];
}

function pressuresInWords(
  { line, length, isSurveyed, reading }: SiteLine,
  about: Answered,
): string {
  const { show, installation } = about;
  const { called, start, end } = LINES[line];
  const where = ({ distance }: StaticPlace): string => {
    if (distance <= 0) return start;
    return distance >= length ? end : `${show(distance, 'pipeLength')} along`;
  };
  const { lowest, highest } = reading.pressure;
  const perMetre = installation.water.density * GRAVITY;
  const bar = show(highest.pressureHead * perMetre, 'pressure', 2);
  const taken = isSurveyed ? '' : ', taken as straight because it has no profile';
  const sucks =
    lowest.pressureHead < 0 ? ' There it lies below the open air’s: any leak draws air in.' : '';
  return `${called} at rest${taken}: the head is lowest ${where(lowest)}, ${show(lowest.pressureHead, 'head')}, and highest ${where(highest)}, ${show(highest.pressureHead, 'head')} (${bar}).${sucks}`;
}

function listed(texts: readonly string[]): string {
  return texts.length < 2
    ? (texts[0] ?? '')
    : `${texts.slice(0, -1).join(', ')} and ${texts.at(-1)}`;
}

function startOfSentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** The same for programs: metres and litres, with the unit in each name. */
export function lineRecords(site: Site) {
  return siteLines(site).map(({ line, isSurveyed, length, reading }) => ({
    line,
    isSurveyed,
    lengthMetres: length,
    lowestStaticHeadMetres: reading.pressure.lowest.pressureHead,
    lowestStaticAtMetres: reading.pressure.lowest.distance,
    highestStaticHeadMetres: reading.pressure.highest.pressureHead,
    highestStaticAtMetres: reading.pressure.highest.distance,
    crests: reading.crests.map((crest) => ({
      atMetres: crest.distance,
      heightMetres: crest.elevation,
      prominenceMetres: crest.prominence,
      airLitres: toLitres(crest.air),
      staticHeadMetres: crest.pressureHead,
      clearingVelocityMetresPerSecond: crest.clearingVelocity,
      ventAtMetres: crest.vent ?? null,
      advice: (reading.advice.find((found) => found.crest === crest)?.ways ?? []).map(adviceRecord),
    })),
    sags: reading.sags.map(({ distance, elevation }) => ({
      atMetres: distance,
      heightMetres: elevation,
    })),
  }));
}

function adviceRecord(way: Advice) {
  const { kind } = way;
  if (kind === 'vent') return { kind, atMetres: way.at };
  const lowering = { loweringMetres: way.lowering };
  if (kind === 'lower') return { kind, atMetres: way.at, ...lowering };
  return { kind, fromMetres: way.from, toMetres: way.to, ...lowering };
}
