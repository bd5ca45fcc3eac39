/** What the fields of a range say together: ids and revisions that clash, tunings that cannot be, prices in two currencies. */
import { formatQuantity, quoted, type System, unitSystemOf } from '@fallwright/units';
import { fieldName, type Path } from '../problem.ts';
import type { PathProblem } from '../schema-problems.ts';
import { checkLimit } from '../site/check-limits.ts';
import { checkRam } from '../site/check-ram.ts';
import type { Report } from '../site/check-site.ts';
import { givensOf } from '../site/givens.ts';
import { LIMITS, type Limit } from '../site/limits.ts';
import type { RamForm } from '../site/ram-fields.ts';
import type { RamRevision, RangeRam } from './range-schema.ts';
import { revisionNumber } from './revisions.ts';
import { gridSize, tuningsOf } from './tunings-of.ts';

/** Judgement: each is run in every place it is tried at; nobody keeps more weights than this. */
const MOST_TUNINGS = 60;
/** Judgement: at the most three weeks of days and nights. */
const SET_UP: Limit = { called: 'the time to set it up', purpose: 'time', least: 0, most: 2e6 };
/** Judgement: from a toy to what needs a crane. */
const MASS: Limit = { called: 'the mass', purpose: 'mass', least: 0.05, most: 5000 };

/** Rams that could not be read are holes in the list, so that the others are still checked. */
export function checkRange(range: {
  readonly rams?: readonly (RangeRam | undefined)[];
}): readonly PathProblem[] {
  const problems: PathProblem[] = [];
  const report: Report = (kind, path, message) => {
    problems.push({ kind, field: fieldName(path), path, message });
  };
  const rams = range.rams ?? [];
  const system = unitSystemOf(givensOf(rams).map(({ given }) => given.text));
  checkIds(rams, report);
  checkCurrencies(rams, report);
  for (const [index, ram] of rams.entries()) {
    if (!ram) continue;
    const at: Path = ['rams', index];
    checkRevision(ram, at, system, report);
    checkEarlier(ram, at, system, report);
    if (ram.setUp) checkLimit(ram.setUp, SET_UP, { path: [...at, 'setUp'], system, report });
    if (ram.mass) checkLimit(ram.mass, MASS, { path: [...at, 'mass'], system, report });
  }
  return problems;
}

function checkIds(rams: readonly (RangeRam | undefined)[], report: Report): void {
  for (const field of ['id', 'name'] as const) {
    for (const [index, ram] of rams.entries()) {
      if (!ram) continue;
      const first = rams.findIndex((other) => other?.[field] === ram[field]);
      if (first === index) continue;
      report(
        'contradiction',
        ['rams', index, field],
        `Two rams have the ${field} ${ram[field]}. Give each its own; what was made in another way before is an earlier revision.`,
      );
    }
  }
}

/** Prices are added up, which one currency alone allows. */
function checkCurrencies(rams: readonly (RangeRam | undefined)[], report: Report): void {
  const first = rams.find((ram) => ram?.price)?.price?.currency;
  for (const [index, ram] of rams.entries()) {
    const price = ram?.price;
    if (!price || price.currency === first) continue;
    report(
      'contradiction',
      ['rams', index, 'price'],
      `This price is in ${price.currency} and the first is in ${first}. Write all of a range in one currency.`,
    );
  }
}

function checkEarlier(ram: RangeRam, at: Path, system: System, report: Report): void {
  const earlier = ram.earlier ?? [];
  if (earlier.length > 0 && ram.revision === undefined) {
    report(
      'missing',
      at,
      `Which revision this is is missing: there are ${earlier.length === 1 ? 'one' : earlier.length} before it. Write revision: ${earlier.length + 1}.`,
    );
  }
  let above = ram.revision;
  for (const [index, revision] of earlier.entries()) {
    const here: Path = [...at, 'earlier', index];
    if (revision.revision === undefined) {
      report('missing', here, 'Which revision this was is missing. Write revision: 1.');
    } else if (above !== undefined && revision.revision >= above) {
      report(
        'contradiction',
        [...here, 'revision'],
        `Revision ${revision.revision} stands under revision ${above}. Put them in order, the latest first, each once.`,
      );
    }
    above = revision.revision ?? above;
    checkRevision(revision, here, system, report);
  }
}

/** One revision, wherever it stands. */
function checkRevision(revision: RamRevision, at: Path, system: System, report: Report): void {
  const here: Report = (kind, path, message) => report(kind, [...at, ...path], message);
  const number = revisionNumber(revision);
  if (!Number.isInteger(number) || number < 1) {
    here('wrongForm', ['revision'], 'A revision is a whole number from 1. Write revision: 1.');
  }
  const form: RamForm = typeof revision.ram === 'string' ? { typical: revision.ram } : revision.ram;
  if (form.typical === undefined && form.bore === undefined) {
    here(
      'missing',
      ['ram'],
      'What the ram begins from is missing. Write typical: DN25 and what differs from it, or bore, seat, stroke and weight.',
    );
  }
  const before: string[] = [];
  checkRam(form, (kind, path, message) => {
    before.push(message);
    here(kind, path, message);
  });
  const limited = givensOf({
    ram: revision.ram,
    tunings: revision.tunings,
    settings: revision.settings,
  });
  for (const { path, given } of limited) {
    const limit = limitAt(path);
    if (limit) checkLimit(given, limit, { path: [...at, ...path], system, report });
  }
  checkTunings(revision, new Set(before), here, system);
}

/** A stroke is a stroke, whether it is the ram's own or a tuning's. */
function limitAt(path: Path): Limit | undefined {
  const names = path.filter((step) => typeof step === 'string');
  if (names[0] === 'ram') return LIMITS[names.join('.')];
  if (names.includes('stroke')) return LIMITS['ram.wasteValve.stroke'];
  const last = names.at(-1) === 'weights' ? 'weight' : names.at(-1);
  return LIMITS[`ram.wasteValve.${last}`];
}

function checkTunings(
  revision: RamRevision,
  known: ReadonlySet<string>,
  report: Report,
  system: System,
): void {
  const { settings, tunings = [] } = revision;
  const stroke = settings?.stroke;
  if (stroke && !(Number.isInteger(stroke.steps) && stroke.steps >= 2)) {
    report(
      'wrongForm',
      ['settings', 'stroke', 'steps'],
      'The steps are a whole number of at least 2: least and most are two of them. Write steps: 3.',
    );
    return;
  }
  if (stroke && !(stroke.most.value > stroke.least.value)) {
    const show = (value: number): string => formatQuantity(value, 'stroke', system);
    report(
      'contradiction',
      ['settings', 'stroke', 'most'],
      `The most is ${show(stroke.most.value)} and the least ${show(stroke.least.value)}. The most must be more than the least.`,
    );
    return;
  }
  if (settings && gridSize(settings) === 0) {
    report(
      'missing',
      ['settings'],
      'No settings are told. Write stroke: { least: 2.4 mm, most: 4 mm, steps: 3 }, or weights: [95 g, 120 g], or both.',
    );
  }
  const count = tunings.length + (settings ? gridSize(settings) : 0);
  if (count > MOST_TUNINGS) {
    report(
      'outOfRange',
      [settings ? 'settings' : 'tunings'],
      `These make ${count} tunings; at most ${MOST_TUNINGS} can be tried. Take fewer steps or weights.`,
    );
    return;
  }
  for (const [index, tuning] of tunings.entries()) {
    if (tunings.findIndex(({ name }) => name === tuning.name) !== index) {
      report(
        'contradiction',
        ['tunings', index, 'name'],
        `Two tunings are called ${quoted(tuning.name)}. Give each its own name.`,
      );
    }
  }
  checkMass(revision, report);
  // What a tuning makes of the ram has to be a ram. One slip in a list of springs is told once.
  const told = new Set(known);
  for (const [index, { name, form }] of tuningsOf(revision).entries()) {
    const where: Path =
      index < tunings.length ? ['tunings', index] : settings ? ['settings'] : ['ram'];
    checkRam(form, (kind, _path, message) => {
      if (told.has(message)) return;
      told.add(message);
      report(kind, where, `Set up as ${quoted(name)}: ${message}`);
    });
  }
}

/** Where the mass that moves is told apart from the weight, another weight has another mass. */
function checkMass({ ram, tunings = [], settings }: RamRevision, report: Report): void {
  if (typeof ram === 'string' || !ram.wasteValve?.mass) return;
  const advice =
    'The ram’s moving mass is told apart from its weight, so it has to be told for this weight too. Write mass: 150 g beside it.';
  for (const [index, tuning] of tunings.entries()) {
    if ((tuning.weight || tuning.weightInWater) && !tuning.mass) {
      report('missing', ['tunings', index], advice);
    }
  }
  if (settings?.weights) {
    report(
      'contradiction',
      ['settings', 'weights'],
      'The ram’s moving mass is told apart from its weight, so each weight needs its own. List them as tunings with weight and mass.',
    );
  }
}
