/**
 * A record of ours from data: the record, or every problem with it.
 *
 * Each kind of record brings its schema and what its fields say together; how problems get their lines is the same for all.
 * Nothing here knows YAML, whose reader is large: a page that only has data does without it.
 */
import * as z from 'zod/mini';
import { fieldName, type Path, type Problem } from './problem.ts';
import { fieldsAt } from './schema-fields.ts';
import { type PathProblem, schemaProblems, valueAt } from './schema-problems.ts';
import type { TextKind, YamlText } from './yaml-text.ts';

type Shape = Readonly<Record<string, z.core.$ZodType>>;

/** The schema of a whole record: a map of fields. */
type RecordSchema<Value> = z.ZodMiniType<Value> & { readonly shape: Shape };

export interface RecordKind<Value> extends TextKind {
  readonly schema: RecordSchema<Value>;
  /** What people call our fields elsewhere. */
  readonly hints: Readonly<Record<string, string>>;
  /** What the fields say together; fields that could not be read are absent, so that the rest is still checked. */
  readonly check: (
    parts: { readonly [Field in keyof Value]?: Value[Field] },
  ) => readonly PathProblem[];
  /** Lists whose items stand alone: `check` is handed those that can be read, with holes in place of the others. */
  readonly looseLists?: readonly string[];
  /** What only a whole record can tell: worth a second look, and never in the way. */
  readonly secondLook?: (value: Value) => readonly PathProblem[];
}

export type RecordRead<Value> =
  | {
      readonly ok: true;
      readonly value: Value;
      /** Can be used, but worth a second look. */
      readonly warnings: readonly Problem[];
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Reads a record from data that was no text: a form, or the body of a request. Problems have no lines. */
export function recordFromData<Value>(data: unknown, kind: RecordKind<Value>): RecordRead<Value> {
  return readFrom(data, [], undefined, kind);
}

/** The same, with problems found before and the text in which each one has its line. */
export function readFrom<Value>(
  data: unknown,
  before: readonly Problem[],
  text: YamlText | undefined,
  kind: RecordKind<Value>,
): RecordRead<Value> {
  const { schema, hints } = kind;
  const known = { at: (path: Path) => fieldsAt(schema, path), hints };
  const notAMap = notAMapOfFields(data, kind);
  if (notAMap) {
    const place = text ? { line: 1, column: 1 } : {};
    return {
      ok: false,
      problems: [{ kind: 'wrongFormat', field: '', ...place, message: notAMap }],
    };
  }
  const overlong = overlongList(data);
  if (overlong) return { ok: false, problems: [placed(overlong, data, text)] };
  const result = schema.safeParse(data);
  const fromSchema = result.success ? [] : schemaProblems(result.error.issues, data, known);
  const otherFormat = fromSchema.find((problem) => isOtherFormat(problem, data, kind));
  if (otherFormat) return { ok: false, problems: [placed(otherFormat, data, text)] };

  const found = [
    ...fromSchema,
    ...kind.check(result.success ? result.data : readableParts(data, kind)),
  ];
  const all = [...before, ...found.map((problem) => placed(problem, data, text))];
  const problems = all.filter((problem) => problem.kind !== 'unusual').sort(byPlace);
  if (problems.length > 0 || !result.success) return { ok: false, problems };
  const late = (kind.secondLook?.(result.data) ?? []).map((problem) => placed(problem, data, text));
  const warnings = [...all.filter((problem) => problem.kind === 'unusual'), ...late].sort(byPlace);
  return { ok: true, value: result.data, warnings };
}

function notAMapOfFields(data: unknown, { called, format }: TextKind): string | undefined {
  const begins = `A ${called} file has fields, one to a line, and begins with: fallwright: ${format}`;
  if (data === null || data === undefined) return `This file holds no fields. ${begins}`;
  if (Array.isArray(data)) return `This file is a list. ${begins}`;
  if (typeof data !== 'object') return `This is a text but not a ${called} file. ${begins}`;
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
function isOtherFormat(problem: PathProblem, data: unknown, { format }: TextKind): boolean {
  if (problem.field !== 'fallwright') return false;
  const written = valueAt(data, ['fallwright']);
  return typeof written === 'string' && /^[\w-]+@\d+$/.test(written) && written !== format;
}

/** The top-level fields that can be read on their own, so that one slip does not hide another. */
function readableParts<Value>(
  data: unknown,
  { schema, looseLists = [] }: RecordKind<Value>,
): { readonly [Field in keyof Value]?: Value[Field] } {
  const parts: Record<string, unknown> = {};
  for (const [name, field] of Object.entries(schema.shape)) {
    const value = valueAt(data, [name]);
    if (value === undefined) continue;
    const part = z.safeParse(field, value);
    if (part.success) parts[name] = part.data;
    else if (looseLists.includes(name) && Array.isArray(value)) {
      parts[name] = value.map((item) => {
        const one = z.safeParse(field, [item]);
        return one.success && Array.isArray(one.data) ? one.data[0] : undefined;
      });
    }
  }
  // Each part has been read by the schema of its own field.
  return parts as { readonly [Field in keyof Value]?: Value[Field] };
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
