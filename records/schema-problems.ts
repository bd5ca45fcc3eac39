/**
 * What the schema found wrong, as problems: one for each field, in words, with its path.
 *
 * Where a field may be written in several ways, the schema reports every way that failed. The person meant one of them:
 * the way whose outer form fits what stands there.
 */
import type * as z from 'zod/mini';
import { didYouMean } from './did-you-mean.ts';
import { fieldName, type Path, type Problem, type ProblemKind } from './problem.ts';

type Issue = z.core.$ZodIssue;

/** zod says this when a schema has no words of its own. */
const NO_WORDS = 'Invalid input';

export interface PathProblem extends Problem {
  readonly path: Path;
  /** The key itself is at fault, and not what stands behind it. */
  readonly isKey?: boolean;
}

export interface KnownFields {
  /** Names that a map at this path may hold. */
  readonly at: (path: Path) => readonly string[];
  /** What to say of a word that people use for another field. */
  readonly hints: Readonly<Record<string, string>>;
}

export function schemaProblems(
  issues: readonly Issue[],
  data: unknown,
  known: KnownFields,
  below: Path = [],
): readonly PathProblem[] {
  return issues.flatMap((issue) => problemsOf(issue, data, known, below));
}

function problemsOf(
  issue: Issue,
  data: unknown,
  known: KnownFields,
  below: Path,
): readonly PathProblem[] {
  const path = [...below, ...(issue.path as Path)];
  if (issue.code === 'unrecognized_keys') {
    return issue.keys.map((key) => unknownField([...path, key], key, known));
  }
  if (issue.code === 'invalid_union') {
    const meant = branchMeant(issue);
    if (meant) return schemaProblems(meant, data, known, path);
  }
  const kind = kindOf(issue, valueAt(data, path));
  return [
    { kind, field: fieldName(path), path, message: wordsOf(issue) ?? 'This cannot be read.' },
  ];
}

/** The way of writing whose outer form fits; undefined when none does. */
function branchMeant(issue: z.core.$ZodIssueInvalidUnion): readonly Issue[] | undefined {
  const fitting = issue.errors.filter((branch) => branch.length > 0 && !branch.some(isOtherForm));
  return fitting.sort((a, b) => strangers(a) - strangers(b) || told(a).length - told(b).length)[0];
}

/** Keys that a way of writing does not know: a map that knows more of them was meant. */
function strangers(branch: readonly Issue[]): number {
  return told(branch).reduce(
    (sum, issue) =>
      sum + (issue.code === 'unrecognized_keys' && issue.path.length === 0 ? issue.keys.length : 0),
    0,
  );
}

/** The issues of a way of writing, with those of the meant one in place of a choice between ways. */
function told(branch: readonly Issue[]): readonly Issue[] {
  return branch.flatMap((issue) =>
    issue.code === 'invalid_union' && issue.path.length === 0
      ? (branchMeant(issue) ?? [issue])
      : [issue],
  );
}

function isOtherForm(issue: Issue): boolean {
  if (issue.path.length > 0) return false;
  if (issue.code === 'invalid_type' || issue.code === 'invalid_value') return true;
  return issue.code === 'invalid_union' && branchMeant(issue) === undefined;
}

/** The words of the outermost schema that has some. */
function wordsOf(issue: Issue): string | undefined {
  if (issue.message !== NO_WORDS) return issue.message;
  if (issue.code !== 'invalid_union') return undefined;
  for (const inner of issue.errors.flat()) {
    const found = inner.path.length === 0 ? wordsOf(inner) : undefined;
    if (found !== undefined) return found;
  }
  return undefined;
}

function kindOf(issue: Issue, value: unknown): ProblemKind {
  if (issue.code === 'custom')
    return (issue.params?.kind as ProblemKind | undefined) ?? 'wrongForm';
  if (value === undefined || value === null) return 'missing';
  if (Array.isArray(value) && value.length === 0) return 'missing';
  if (issue.code === 'too_small' || issue.code === 'too_big') return 'outOfRange';
  if (issue.path.at(-1) === 'fallwright') return 'wrongFormat';
  if (Number.isFinite(value) && standsForQuantity(issue)) return 'noUnit';
  if (typeof value === 'string' && issue.code === 'invalid_value') return 'unknownWord';
  return 'wrongForm';
}

/** A number where an issue expected the text of a quantity, plain or in its longer form. */
function standsForQuantity(issue: Issue): boolean {
  return issue.code === 'invalid_union' || issue.path.at(-1) === 'value';
}

function unknownField(path: Path, key: string, known: KnownFields): PathProblem {
  const allowed = known.at(path.slice(0, -1));
  const suggestion = didYouMean(key, allowed);
  const word = key.toLowerCase();
  const hint = Object.hasOwn(known.hints, word) ? known.hints[word] : undefined;
  const advice = /^\d/.test(key)
    ? 'A comma inside { } separates fields. Write 12.5 L/min with a point, or put the quantity in quotes.'
    : suggestion !== undefined
      ? `Did you mean ${suggestion}?`
      : (hint ?? `Known here: ${allowed.join(', ')}.`);
  const shown = key.length > 40 ? `${key.slice(0, 39)}…` : key;
  return {
    kind: 'unknownField',
    field: fieldName(path.map((step) => (step === key ? shown : step))),
    path,
    isKey: true,
    message: `There is no field called ${shown} here. ${advice}`,
  };
}

export function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const step of path) {
    if (typeof value !== 'object' || value === null) return undefined;
    // A single map may stand where a list of one is meant.
    if (typeof step === 'number' && !Array.isArray(value)) continue;
    value = Object.hasOwn(value, step) ? (value as Record<string, unknown>)[step] : undefined;
  }
  return value;
}
