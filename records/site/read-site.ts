/** A site file, from text or from data: the site, or every problem with it. */
import { fieldName, type Path, type Problem } from '../problem.ts';
import { fieldsAt } from '../schema-fields.ts';
import { type PathProblem, schemaProblems, valueAt } from '../schema-problems.ts';
import { readYaml, type YamlText } from '../yaml-text.ts';
import { checkLines } from './check-lines.ts';
import { checkSite, type PartialSite } from './check-site.ts';
import { SITE_FORMAT, type Site, siteSchema } from './site-schema.ts';

export type SiteRead =
  | {
      readonly ok: true;
      readonly site: Site;
      /** Can be computed, but worth a second look. */
      readonly warnings: readonly Problem[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** What people call our fields elsewhere. */
const HINTS: Readonly<Record<string, string>> = {
  head: 'The height of the source above the ram is the fall: fall: 1.9 m.',
  supplyhead: 'The height of the source above the ram is the fall: fall: 1.9 m.',
  height: 'The height above the ram is the fall for the source and the lift for the tank.',
  flow: 'The flow of the source is written: source: { flow: 14 L/min }.',
  supply: 'Where the water comes from is the source: source: { flow: 14 L/min }.',
  deliveryhead: 'The height of the tank above the ram is the lift: lift: 12 m.',
  diameter: 'The inside width is the bore: bore: 26.6 mm.',
  id: 'The inside width is the bore: bore: 26.6 mm.',
  od: 'Write the inside width as bore and the thickness as wall.',
  thickness: 'The thickness of a pipe is its wall: wall: 3 mm.',
  crest: 'A crest is written: laid: over a crest.',
};

/** Reads YAML or JSON text. Never throws on what a person wrote. */
export function readSite(source: string): SiteRead {
  const yaml = readYaml(source);
  if (!yaml.ok) return yaml;
  return readFrom(yaml.text.data, yaml.problems, yaml.text);
}

/** Reads a site from data that was no text: a form, or the body of a request. Problems have no lines. */
export function siteFromData(data: unknown): SiteRead {
  return readFrom(data, [], undefined);
}

function readFrom(data: unknown, before: readonly Problem[], text: YamlText | undefined): SiteRead {
  const notAMap = notAMapOfFields(data);
  if (notAMap) {
    const place = text ? { line: 1, column: 1 } : {};
    return {
      ok: false,
      problems: [{ kind: 'wrongFormat', field: '', ...place, message: notAMap }],
    };
  }
  const overlong = overlongList(data);
  if (overlong) return { ok: false, problems: [placed(overlong, data, text)] };
  const result = siteSchema.safeParse(data);
  const fromSchema = result.success ? [] : schemaProblems(result.error.issues, data, KNOWN);
  const otherFormat = fromSchema.find((problem) => isOtherFormat(problem, data));
  if (otherFormat) return { ok: false, problems: [placed(otherFormat, data, text)] };

  const found = [...fromSchema, ...checkSite(result.success ? result.data : readableParts(data))];
  const all = [...before, ...found.map((problem) => placed(problem, data, text))];
  const problems = all.filter(({ kind }) => kind !== 'unusual').sort(byPlace);
  if (problems.length > 0 || !result.success) return { ok: false, problems };
  const ofLines = checkLines(result.data).map((problem) => placed(problem, data, text));
  const warnings = [...all.filter(({ kind }) => kind === 'unusual'), ...ofLines].sort(byPlace);
  return { ok: true, site: result.data, warnings };
}

const KNOWN = {
  at: (path: readonly (string | number)[]) => fieldsAt(siteSchema, path),
  hints: HINTS,
};

function notAMapOfFields(data: unknown): string | undefined {
  const begins = 'A site file has fields, one to a line, and begins with: fallwright: site@1';
  if (data === null || data === undefined) return `This file holds no fields. ${begins}`;
  if (Array.isArray(data)) return `This file is a list. ${begins}`;
  if (typeof data !== 'object') return `This is a text but not a site file. ${begins}`;
  return undefined;
}

/** Judgement: a line of more pipes, a profile of more points, a map of more fields is a slip or an attack. */
const LONGEST_LIST = 500;

/** Entries are counted before they are read, because each wrong one costs a search for what it may have meant. */
function overlongList(data: unknown, path: Path = []): PathProblem | undefined {
  if (typeof data !== 'object' || data === null) return undefined;
  const entries = Object.entries(data);
  if (entries.length > LONGEST_LIST) {
    const message = `There are ${entries.length} entries here; at most ${LONGEST_LIST} can be read. Leave some out.`;
    return { kind: 'outOfRange', field: fieldName(path), path, message };
  }
  for (const [key, value] of entries) {
    const found = overlongList(value, [...path, Array.isArray(data) ? Number(key) : key]);
    if (found) return found;
  }
  return undefined;
}

/** A file of another format or version: its fields mean other things, so only this is said. */
function isOtherFormat(problem: PathProblem, data: unknown): boolean {
  if (problem.field !== 'fallwright') return false;
  const written = valueAt(data, ['fallwright']);
  return typeof written === 'string' && /^[\w-]+@\d+$/.test(written) && written !== SITE_FORMAT;
}

/** The top-level fields that can be read on their own, so that one slip does not hide another. */
function readableParts(data: unknown): PartialSite {
  const parts: Record<string, unknown> = {};
  for (const [name, schema] of Object.entries(siteSchema.shape)) {
    const value = valueAt(data, [name]);
    if (value === undefined) continue;
    const part = schema.safeParse(value);
    if (part.success) parts[name] = part.data;
  }
  // Each part has been read by the schema of its own field.
  return parts as PartialSite;
}

function placed({ path, isKey, ...problem }: PathProblem, data: unknown, text?: YamlText): Problem {
  const named = { ...problem, field: fieldName(asWritten(path, data)) };
  if (!text) return named;
  return { ...named, ...(isKey ? text.placeOfKey(path) : text.placeOf(path)) };
}

/** The path without the index of a list that the person wrote as a single thing. */
function asWritten(path: Path, data: unknown): Path {
  return path.filter(
    (step, depth) => typeof step === 'string' || Array.isArray(valueAt(data, path.slice(0, depth))),
  );
}

function byPlace(a: Problem, b: Problem): number {
  return (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0);
}
