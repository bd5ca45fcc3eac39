/**
 * What readings turn into while they are being taken. They are read by the code that reads a site file: what else a file needs is
 * filled in, so that a flow can be worked out before anything else of the place is known.
 */
import {
  gaugingInWords,
  heightWayInWords,
  type LevelBookRow,
  levelBookRows,
} from '@fallwright/papers';
import type { Given, Problem } from '@fallwright/records';
import { gaugedSource, heightOf, siteFromData } from '@fallwright/records';
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import { settled } from '../answer/settled.ts';
import type { FlowName, HeightName } from '../state/measured-entry.ts';
import { gaugingsOf, heightReadings } from '../state/measured-entry.ts';
import type { PlainRecord, SiteDocument } from '../state/site-document.ts';
import { gaugingNeeds, heightNeeds } from './still-needed.ts';

export type Result =
  | {
      readonly kind: 'known';
      /** `13.90 ± 0.36 L/min`. */
      readonly figure: string;
      /** How it came about, a sentence. */
      readonly how: string;
      /** Conditions that do not hold, and what speaks against the readings. */
      readonly doubts: readonly string[];
    }
  | {
      readonly kind: 'waits';
      /** What is wrong or missing; empty while nothing was written. */
      readonly faults: readonly string[];
    };

/** The least of a place in which a source can stand. */
const REST: SiteDocument = {
  fallwright: 'site@1',
  source: { flow: 'plenty' },
  fall: '2 m',
  drive: [{ material: 'steel', bore: '25 mm', wall: '3 mm', length: '12 m' }],
  lift: '20 m',
};
/** The lift is always more than the fall, so the other height stands out of the way. */
const OTHER: Readonly<Record<HeightName, SiteDocument>> = {
  fall: { lift: '500 m' },
  lift: { fall: '0.05 m' },
};

/** As `OTHER` for a height that is known, so that nothing is said of how the two go together. Within the ends of a fall. */
const otherBeside = (height: HeightName, metres: number): SiteDocument =>
  height === 'fall'
    ? { lift: `${4 * metres} m` }
    : { fall: `${Math.min(60, Math.max(0.05, metres / 4))} m` };

const read = (part: SiteDocument, system: System) =>
  siteFromData({ ...REST, units: system, ...part });

export function gaugingResult(gauging: PlainRecord, system: System): Result {
  const found = read({ source: { gauging: [gauging] } }, system);
  if (!found.ok) {
    return { kind: 'waits', faults: faultsOf(found.problems, gaugingNeeds(gauging)) };
  }
  const one = gaugedSource(found.site.source)?.gaugings[0];
  if (one === undefined) {
    return { kind: 'waits', faults: ['A measure that is nought gives no flow.'] };
  }
  return {
    kind: 'known',
    figure: flowText(one.gauged, system),
    how: `By ${gaugingInWords(one, system)}.`,
    doubts: messages(found.warnings.filter(({ field }) => field.startsWith('source'))),
  };
}

/** All measurements of the source together; undefined while none is whole. */
export function flowResult(
  document: SiteDocument,
  system: System,
): (Extract<Result, { kind: 'known' }> & { readonly count: number }) | undefined {
  const gauging = gaugingsOf(document);
  if (gauging.length === 0) return undefined;
  const { read: found } = settled({ ...REST, units: system, source: { gauging: [...gauging] } });
  if (!found.ok) return undefined;
  const measured = gaugedSource(found.site.source);
  if (measured === undefined) return undefined;
  const { gaugings, combined } = measured;
  // What speaks against one measurement alone is told beside it; here stands what they say of one another.
  const alone = new Set(
    gauging.flatMap((one) => {
      const result = gaugingResult(one, system);
      return result.kind === 'known' ? result.doubts : [];
    }),
  );
  const [only] = gaugings;
  return {
    kind: 'known',
    count: gaugings.length,
    figure: flowText(combined, system),
    how:
      only !== undefined && gaugings.length === 1
        ? `By ${gaugingInWords(only, system)}.`
        : `${gaugings.length} measurements together, the surer counting more.${combined.misfit > 1 ? ' They lie further apart than their spreads explain, and the spread is wider for it.' : ''}`,
    doubts: messages(
      found.warnings.filter(({ field }) => field.startsWith('source.gauging')),
    ).filter((message) => !alone.has(message)),
  };
}

/** What is wrong between the written flow and the measured one. */
export function flowContradiction(
  document: SiteDocument,
  name: FlowName,
  system: System,
): readonly string[] {
  const written = (document.source as PlainRecord | undefined)?.[name];
  if (written === undefined) return [];
  const source = { flow: written, gauging: [...gaugingsOf(document)] };
  const { read: found } = settled({ ...REST, units: system, source });
  if (!found.ok) return [];
  return found.warnings
    .filter(({ field }) => field === 'source.flow')
    .map(({ message }) => message);
}

export interface HeightResult {
  readonly result: Result;
  /** The level book worked out, point by point. */
  readonly rows: readonly LevelBookRow[];
  /** Known too poorly to choose a ram by. */
  readonly isCoarse: boolean;
}

export function heightResult(
  document: SiteDocument,
  height: HeightName,
  system: System,
): HeightResult {
  const readings = heightReadings(document, height);
  if (Object.keys(readings).length === 0) {
    return { result: { kind: 'waits', faults: [] }, rows: [], isCoarse: false };
  }
  const found = read({ ...OTHER[height], [height]: readings }, system);
  if (!found.ok) {
    const problems = found.problems.filter(({ field }) => field.startsWith(height));
    const faults = faultsOf(problems, heightNeeds(readings, height));
    return { result: { kind: 'waits', faults }, rows: [], isCoarse: false };
  }
  const given: Given = found.site[height];
  const worked = given.readings && heightOf(given.readings);
  if (!worked?.ok) return { result: { kind: 'waits', faults: [] }, rows: [], isCoarse: false };
  const { value } = worked;
  const alone = read({ ...otherBeside(height, given.value), [height]: readings }, system);
  const doubts = alone.ok ? alone.warnings.filter(({ field }) => field.startsWith(height)) : [];
  return {
    result: {
      kind: 'known',
      figure: formatQuantity(value.height, 'height', system, { figures: 4, spread: value.spread }),
      how: `The ${height} ${heightWayInWords(value, given, system)}.`,
      doubts: messages(doubts),
    },
    rows: levelBookRows(given, system),
    isCoarse: value.isTooCoarse,
  };
}

/** What the readings of a height come to; undefined while they wait. */
export function measuredMetres(document: SiteDocument, height: HeightName): number | undefined {
  const readings = heightReadings(document, height);
  // The system is only for words.
  const found = read({ ...OTHER[height], [height]: readings }, 'metric');
  return found.ok ? found.site[height].value : undefined;
}

/** What is wrong between the written height and the measured one. */
export function heightContradiction(
  document: SiteDocument,
  height: HeightName,
  system: System,
): readonly string[] {
  const found = read({ ...OTHER[height], [height]: document[height] }, system);
  if (!found.ok) return [];
  return found.warnings
    .filter(({ field, message }) => field === height && message.includes(' is written as '))
    .map(({ message }) => message);
}

function flowText(
  { flow, spread }: { readonly flow: number; readonly spread: number },
  system: System,
): string {
  return formatQuantity(flow, 'sourceFlow', system, { spread });
}

/** What lacks is told in the words of the boxes, where it is known which of them are empty; everything else as a file is told. */
function faultsOf(problems: readonly Problem[], needs: string | undefined): readonly string[] {
  if (needs === undefined) return messages(problems);
  return [...messages(problems.filter(({ kind }) => kind !== 'missing')), needs];
}

const messages = (problems: readonly Problem[]): readonly string[] => [
  ...new Set(problems.map(({ message }) => message)),
];
