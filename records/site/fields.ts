/**
 * The building blocks of a record's schema: quantities, words, names and plain numbers, each with a sentence for the
 * person when what stands there is something else. Built on zod's small core, so that the browser carries little.
 */
import {
  bareNumberMessage,
  type Purpose,
  purposeRow,
  quoted,
  readQuantity,
} from '@fallwright/units';
import * as z from 'zod/mini';
import { type Given, ORIGINS } from '../given.ts';
import type { Path, ProblemKind } from '../problem.ts';

/** What a field is, in the words of its messages and of the JSON Schema. */
export interface About {
  /** `the fall`. */
  readonly called: string;
  /** What it is and why it is needed, after "The fall is missing: …". */
  readonly is: string;
}

type Issues = { readonly issues: { push(issue: never): unknown } };

/** Adds a problem to a zod transform's issues. */
export function addProblem(
  payload: Issues,
  kind: ProblemKind,
  message: string,
  input: unknown,
  path?: Path,
): void {
  (payload.issues as { push(issue: unknown): unknown }).push({
    code: 'custom',
    message,
    input,
    params: { kind },
    ...(path && { path: [...path] }),
  });
}

/** A quantity as text, or as `{ value, origin }`. */
export function quantity(purpose: Purpose, about: About) {
  const row = purposeRow(purpose);
  const string = z.string({ error: ({ input }) => notAQuantity(input, purpose, about) });
  // YAML makes a number of 0.6; where a bare number is allowed it says as much as the text.
  const scalar: z.ZodMiniType<string | number> = row.isBareAllowed
    ? z.union([string, z.number()])
    : string;
  const text = z.pipe(
    scalar,
    z.transform((given, payload): Given => {
      const written = String(given);
      const read = readQuantity(written, purpose, about.called);
      if (read.ok) return { ...read.value, origin: 'stated' };
      for (const problem of read.problems) {
        addProblem(payload, kindOf(problem.kind), problem.message, written);
      }
      return z.NEVER;
    }),
  );
  const map = z.pipe(
    z.strictObject({
      value: text,
      origin: z.enum(ORIGINS, { error: oneOf(ORIGINS, 'the origin') }),
    }),
    z.transform(({ value, origin }): Given => ({ ...value, origin })),
  );
  return z
    .union([text, map], { error: ({ input }) => notAQuantity(input, purpose, about) })
    .register(z.globalRegistry, {
      description: `${startOfSentence(about.is)}. Write it like ${row.examples.join(' or ')}.`,
    });
}

function kindOf(fault: string): ProblemKind {
  if (fault === 'empty') return 'missing';
  if (fault === 'range') return 'badSpread';
  if (fault === 'tooLarge') return 'outOfRange';
  return fault as ProblemKind;
}

function notAQuantity(input: unknown, purpose: Purpose, about: About): string {
  const row = purposeRow(purpose);
  const write = `Write it like ${row.examples.join(' or ')}`;
  if (input === undefined)
    return `${startOfSentence(about.called)} is missing: ${about.is}. ${write}.`;
  if (input === null) return `Nothing is written for ${about.called}: ${about.is}. ${write}.`;
  if (typeof input === 'number' && Number.isFinite(input)) {
    return bareNumberMessage(String(input), input, row);
  }
  if (Array.isArray(input))
    return `${startOfSentence(about.called)} is a list here, and must be one quantity. ${write}.`;
  return `${startOfSentence(about.called)} must be a quantity. ${write}, or as { value: ${row.examples[0]}, origin: measured }.`;
}

/** A name or a note. */
export function words(about: About) {
  return z
    .string({ error: ({ input }) => notWords(input, about) })
    .register(z.globalRegistry, { description: `${startOfSentence(about.is)}.` });
}

function notWords(input: unknown, about: About): string {
  if (input === undefined) return `${startOfSentence(about.called)} is missing: ${about.is}.`;
  if (input === null)
    return `Nothing is written for ${about.called}. Write it, or take the line out.`;
  if (typeof input === 'number' || typeof input === 'boolean') {
    return `${startOfSentence(about.called)} must be words. Put it in quotes: "${String(input)}".`;
  }
  return `${startOfSentence(about.called)} must be words, and here it is a ${Array.isArray(input) ? 'list' : 'map'}.`;
}

/** One of a few words. */
export function choice<const Words extends readonly string[]>(list: Words, about: About) {
  return z
    .enum(list, { error: oneOf(list, about.called) })
    .register(z.globalRegistry, { description: `${startOfSentence(about.is)}.` });
}

function oneOf(list: readonly string[], called = 'this') {
  return ({ input }: { readonly input?: unknown }): string => {
    const choices = orList(list);
    if (input === undefined) return `${startOfSentence(called)} is missing. Write ${choices}.`;
    const written = typeof input === 'string' ? quoted(input) : 'What stands here';
    return `${written} is no choice for ${called}. Write ${choices}.`;
  };
}

/** A plain number above nought: a coefficient. */
export function coefficient(about: About, { least = 0 }: { readonly least?: number } = {}) {
  return z
    .number({ error: ({ input }) => notACoefficient(input, about) })
    .check(
      z.gte(least, {
        error: () => `${startOfSentence(about.called)} must be a number of at least ${least}.`,
      }),
      z.lte(1e6, { error: () => `${startOfSentence(about.called)} is far too large. Check it.` }),
    )
    .register(z.globalRegistry, { description: `${startOfSentence(about.is)}.` });
}

function notACoefficient(input: unknown, about: About): string {
  if (input === undefined) return `${startOfSentence(about.called)} is missing: ${about.is}.`;
  return `${startOfSentence(about.called)} is a plain number without a unit, like 1.5.`;
}

/** One thing, or a list of them; always a list once it is read. */
export function oneOrMore<Schema extends z.core.$ZodType>(
  item: Schema,
  about: About,
  /** What the quantities in it are for: then a bare number is told that it lacks its unit. */
  purpose?: Purpose,
) {
  type Item = z.core.output<Schema>;
  const list = z.array(item).check(
    z.minLength(1, {
      error: () => `${startOfSentence(about.called)} is an empty list: ${about.is}.`,
    }),
  );
  const one = z.pipe(
    item,
    z.transform((only): Item[] => [only as Item]),
  );
  const either = z.union([one, list], {
    error: ({ input }) => notOneOrMore(input, about, purpose),
  });
  z.globalRegistry.add(either, { description: `${startOfSentence(about.is)}.` });
  return either;
}

function notOneOrMore(input: unknown, about: About, purpose: Purpose | undefined): string {
  const called = startOfSentence(about.called);
  if (typeof input === 'number' && purpose !== undefined) {
    return bareNumberMessage(String(input), input, purposeRow(purpose));
  }
  if (input === undefined) return `${called} is missing: ${about.is}.`;
  if (input === null) return `Nothing is written for ${about.called}: ${about.is}.`;
  return `${called} cannot be read: ${about.is}.`;
}

/** A map of fields. Unknown fields are problems, found and worded in one place for all maps. */
export function fields<const Shape extends z.core.$ZodLooseShape>(shape: Shape, about: About) {
  return z
    .strictObject(shape, {
      error: ({ input, code }) =>
        code === 'unrecognized_keys' ? undefined : notAMap(input, about),
    })
    .register(z.globalRegistry, { description: `${startOfSentence(about.is)}.` });
}

function notAMap(input: unknown, about: About): string {
  if (input === undefined) return `${startOfSentence(about.called)} is missing: ${about.is}.`;
  if (input === null) return `Nothing is written for ${about.called}: ${about.is}.`;
  return `${startOfSentence(about.called)} must have fields: ${about.is}.`;
}

export function orList(list: readonly string[]): string {
  return list.length < 2 ? (list[0] ?? '') : `${list.slice(0, -1).join(', ')} or ${list.at(-1)}`;
}

export function startOfSentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
