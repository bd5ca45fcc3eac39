/** The drive lines to compare, one row each: how the place would be changed, and how people call it. */
import type { Pipe } from '@fallwright/engine';
import { findPipe } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import { formatQuantity, readQuantity } from '@fallwright/units';
import { textOf } from '../state/entry.ts';
import { isSpelledOut, pipesOf } from '../state/lines.ts';
import type { Path, Plain, PlainRecord, SiteDocument } from '../state/site-document.ts';
import { withValue } from '../state/site-document.ts';
import type { Line } from './changed-line.ts';
import {
  isStraight,
  lengthOf,
  overCrest,
  straightened,
  withLength,
  withPipe,
  written,
} from './changed-line.ts';
import type { Choices } from './choices.ts';
import { OWN_PIPE } from './choices.ts';
import { materialCalled } from './material-called.ts';
import type { OpenedAlternative } from './opened.ts';
import { sameText } from './same-text.ts';

/** One part of the site file at another value. */
export interface PlaceChange {
  readonly path: Path;
  readonly value: Plain;
}

export interface DriveRow {
  /** The same for two rows that come to the same place. */
  readonly key: string;
  readonly name: string;
  /** What tells it from other rows of the same name: length, crest, another fall. Empty when nothing does. */
  readonly details: readonly string[];
  readonly changes: readonly PlaceChange[];
  readonly site: SiteDocument;
  readonly isOnSheet: boolean;
  /** Bore, wall and matter at the ram's end, for the little section; absent when they are not written. */
  readonly pipe?: Pick<Pipe, 'innerDiameter' | 'wallThickness' | 'material'>;
  /** Where it was opened from, when it was not made from the choices. */
  readonly opened?: OpenedAlternative;
}

/** Fields of a site that no answer depends on. */
const OF_PEOPLE = ['name', 'owner', 'place', 'notes', 'units', 'demand'];

function keyOf(site: SiteDocument): string {
  const { ram: _ram, ...others } = site;
  const asked = Object.entries(others).filter(([key]) => !OF_PEOPLE.includes(key));
  return sameText(Object.fromEntries(asked));
}

export function changedSite(document: SiteDocument, changes: readonly PlaceChange[]): SiteDocument {
  return changes.reduce((site, { path, value }) => withValue(site, path, value), document);
}

/** Every row that the choices ask for, each place once. The line on the sheet is always among them. */
export function driveRows(
  choices: Choices,
  document: SiteDocument,
  system: System,
): readonly DriveRow[] {
  const onSheet = keyOf(document);
  const rows = [
    ...linesOf(choices, system).map(({ line, details }) =>
      rowOf(document, [{ path: ['drive'], value: line }], details, onSheet),
    ),
    ...choices.opened.flatMap((opened) => openedRow(opened, choices, document, system, onSheet)),
  ];
  const all = rows.some(({ isOnSheet }) => isOnSheet)
    ? rows
    : [rowOf(document, [], [], onSheet), ...rows];
  const seen = new Set<string>();
  return all.filter(({ key }) => {
    const isNew = !seen.has(key);
    seen.add(key);
    return isNew;
  });
}

interface NamedLine {
  readonly line: Line;
  readonly details: readonly string[];
}

function linesOf(choices: Choices, system: System): NamedLine[] {
  return choices.pipes.flatMap((name) => {
    const pipe = name === OWN_PIPE ? choices.line : withPipe(choices.line, name);
    return lengthsOf(pipe, choices, system).flatMap(({ line, details }) =>
      layingsOf(line, choices, system).map((laid) => ({
        line: laid.line,
        details: [...details, ...laid.details],
      })),
    );
  });
}

function lengthsOf(line: Line, { lengths }: Choices, system: System): NamedLine[] {
  const changed = [lengths.shorter, lengths.longer].flatMap(({ isChosen, text }) => {
    const read = readQuantity(text, 'pipeLength');
    if (!isChosen || !read.ok || !(read.value.value > 0)) return [];
    const details = [`${formatQuantity(read.value.value, 'pipeLength', system)} long`];
    return [{ line: withLength(line, text, system), details }];
  });
  const own = `${formatQuantity(lengthOf(line), 'pipeLength', system)} long`;
  return [
    ...(lengths.asItIs ? [{ line, details: changed.length > 0 ? [own] : [] }] : []),
    ...changed,
  ];
}

function layingsOf(line: Line, { laid }: Choices, system: System): NamedLine[] {
  const air = readQuantity(laid.air, 'smallVolume');
  const isAirGood = laid.air.trim() === '' || air.ok;
  const amount = air.ok ? `, ${formatQuantity(air.value.value, 'smallVolume', system)} of air` : '';
  const isTold = (laid.straight || laid.overCrest) && !isStraight(line);
  return [
    ...(laid.asItIs ? [{ line, details: isTold ? ['laid as it is'] : [] }] : []),
    ...(laid.straight ? [{ line: straightened(line), details: ['straight'] }] : []),
    ...(laid.overCrest && isAirGood
      ? [{ line: overCrest(line, laid.air), details: [`over a crest${amount}`] }]
      : []),
  ];
}

function rowOf(
  document: SiteDocument,
  changes: readonly PlaceChange[],
  details: readonly string[],
  onSheet: string,
  opened?: OpenedAlternative,
): DriveRow {
  const site = changedSite(document, changes);
  const line = pipesOf(site, 'drive');
  const key = keyOf(site);
  const pipe = lastPipe(line);
  return {
    key,
    name: nameOfLine(line),
    details,
    changes,
    site,
    isOnSheet: key === onSheet,
    ...(pipe === undefined ? {} : { pipe }),
    ...(opened === undefined ? {} : { opened }),
  };
}

export function nameOfLine(line: Line): string {
  const names = line.map((pipe) => {
    if (!isSpelledOut(pipe)) {
      const found = findPipe(textOf(pipe.pipe));
      return found.ok ? found.pipe.name : textOf(pipe.pipe);
    }
    return `${textOf(pipe.material)} ${textOf(pipe.bore)}`.trim();
  });
  return names.filter((name, i) => name !== names[i - 1]).join(' + ');
}

function lastPipe(line: Line): DriveRow['pipe'] {
  const pipe: PlainRecord = line.at(-1) ?? {};
  if (!isSpelledOut(pipe)) {
    const found = findPipe(textOf(pipe.pipe));
    return found.ok ? found.pipe : undefined;
  }
  const bore = readQuantity(textOf(pipe.bore), 'bore');
  const wall = readQuantity(textOf(pipe.wall), 'bore');
  const material = materialCalled(textOf(pipe.material));
  if (!bore.ok || material === undefined) return undefined;
  const innerDiameter = bore.value.value;
  return {
    innerDiameter,
    wallThickness: wall.ok ? wall.value.value : innerDiameter / 10,
    material,
  };
}

/** A row for an alternative that changes the line or the place; one that tunes the ram is a column. */
function openedRow(
  opened: OpenedAlternative,
  choices: Choices,
  document: SiteDocument,
  system: System,
  onSheet: string,
): DriveRow[] {
  const row = (changes: readonly PlaceChange[], detail: string): DriveRow[] => [
    rowOf(document, changes, [detail], onSheet, opened),
  ];
  const lineTo = (line: Line): PlaceChange[] => [{ path: ['drive'], value: line }];
  switch (opened.kind) {
    case 'length': {
      const text = written(opened.length, 'pipeLength', system);
      return row(lineTo(withLength(choices.line, text, system)), `${text} long`);
    }
    case 'air': {
      const text = written(opened.volume, 'smallVolume', system);
      return opened.volume > 0
        ? row(lineTo(overCrest(choices.line, text)), `${text} of air caught in it`)
        : row(lineTo(choices.line.map(bled)), 'bled of its air');
    }
    case 'place':
      return placeRow(opened, system, row);
    default:
      return [];
  }
}

function bled(pipe: PlainRecord): PlainRecord {
  const { air: _air, freeAir: _freeAir, laid: _laid, ...others } = pipe;
  return others;
}

function placeRow(
  { what, value, isStore }: Extract<OpenedAlternative, { kind: 'place' }>,
  system: System,
  row: (changes: readonly PlaceChange[], detail: string) => DriveRow[],
): DriveRow[] {
  if (what === 'sourceFlow') {
    const text = written(value, 'sourceFlow', system);
    const path = ['source', isStore ? 'inflow' : 'flow'];
    return row([{ path, value: text }], `${text} from the source`);
  }
  const text = written(value, 'height', system);
  return row([{ path: [what], value: text }], `${what} of ${text}`);
}
