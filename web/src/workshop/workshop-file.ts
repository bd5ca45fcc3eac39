/**
 * The whole workshop as one file, `fallwright: workshop@1`: every place and test with its history, as JSON.
 *
 * A place in it may be unfinished, as on the page, so its fields are not judged here: the sheet does that when it is
 * opened. The frame is: what is not whole, is newer or carries keys that programs trip over is refused with every reason.
 */
import * as z from 'zod/mini';
import { withListedTest } from '../bench/test-document.ts';
import { withListedLines } from '../state/lines.ts';
import { FORMATS, isSharedKind, kindOf, SHARED_KINDS } from '../state/record-kind.ts';
import type { Plain, SiteDocument } from '../state/site-document.ts';
import { isRecord } from '../state/site-document.ts';
import type { Revision, SiteRecord } from '../state/site-record.ts';
import { readUnread } from '../state/unread-text.ts';
import type { BroughtSite } from '../state/workshop.ts';

export const WORKSHOP_FORMAT = 'workshop@1';

/** Judgement: a thousand places with long histories stay below this; a phone can still read it. */
export const LARGEST_WORKSHOP = 64 * 1024 * 1024;
/** Judgement: more reasons than these help nobody; the count of the others is told. */
const MOST_REASONS = 20;
/** Judgement: a site file is four deep; beyond this it is a slip or an attack. */
const DEEPEST = 30;

export type WorkshopRead =
  | { readonly ok: true; readonly sites: readonly BroughtSite[] }
  | { readonly ok: false; readonly reasons: readonly string[] };

export function workshopText(sites: readonly BroughtSite[], savedAt: number): string {
  const file = {
    fallwright: WORKSHOP_FORMAT,
    savedAt: new Date(savedAt).toISOString(),
    sites: sites.map(({ site, revisions }) => ({
      ...site,
      savedAt: new Date(site.savedAt).toISOString(),
      ...(site.deletedAt === undefined
        ? {}
        : { deletedAt: new Date(site.deletedAt).toISOString() }),
      revisions: revisions
        .filter(({ revision }) => revision < site.revision)
        .map(({ siteId: _id, ...revision }) => ({
          ...revision,
          savedAt: new Date(revision.savedAt).toISOString(),
        })),
    })),
  };
  return `${JSON.stringify(file, undefined, 1)}\n`;
}

/** Whether a text wants to be a workshop, whole or broken; anything else is read as a site file. */
export function claimsToBeWorkshop(text: string): boolean {
  return /^\s*\{[^{}]{0,200}"fallwright"\s*:\s*"workshop@/.test(text);
}

const time = z.string({ error: 'a time is missing: write it as 2026-05-01T08:00:00.000Z' }).check(
  z.refine((text) => !Number.isNaN(Date.parse(text)), {
    error: 'this is no time: write it as 2026-05-01T08:00:00.000Z',
  }),
);
const count = z
  .int({ error: 'a whole number from 1 up must stand here' })
  .check(z.gte(1, { error: 'a whole number from 1 up must stand here' }));
const text = z.string({ error: 'a text must stand here' });
const yesOrNo = z.boolean({ error: 'true or false must stand here' });

const KNOWN_FORMATS = Object.values(FORMATS);

/** The document of one record: a tree of plain values that names its own format. */
const document = z
  .custom<SiteDocument>(isRecord, { error: 'a record must be a map of fields' })
  .check(
    z.refine((value) => KNOWN_FORMATS.includes(String(value.fallwright)), {
      error: ({ input }) => formatReason(isRecord(input) ? input.fallwright : undefined),
    }),
  );

function formatReason(written: Plain | undefined): string {
  const [, version] = /^[a-z]+@(\d+)$/.exec(String(written)) ?? [];
  return Number(version) > 1
    ? `${written}: this was written by a newer Fallwright. Use that one to open the file`
    : `a place must say fallwright: ${FORMATS.site}, a test ${FORMATS.test}, a range ${FORMATS.range}, a price list ${FORMATS.prices}`;
}

const unread = z.optional(
  z.record(
    z.string(),
    z.strictObject({ text, fault: z.optional(text) }, { error: 'text and fault must stand here' }),
    { error: 'a map of texts must stand here' },
  ),
);

const revision = z.strictObject(
  { revision: count, savedAt: time, changed: text, document, unread },
  { error: unknownKeys },
);

const site = z.strictObject(
  {
    id: z.string({ error: 'the id of the place is missing' }).check(
      z.regex(/^[a-z0-9-]{1,40}$/, {
        error: 'an id has small letters, figures and -, at most 40',
      }),
    ),
    document,
    unread,
    order: z.optional(
      z.enum(['answerFirst', 'fieldsFirst'], { error: 'answerFirst or fieldsFirst' }),
    ),
    isDemo: z.optional(yesOrNo),
    revision: count,
    savedAt: time,
    changed: text,
    deletedAt: z.optional(time),
    revisions: z.optional(z.array(revision, { error: 'a list of revisions must stand here' })),
  },
  { error: unknownKeys },
);

const workshop = z.strictObject(
  {
    fallwright: z.literal(WORKSHOP_FORMAT),
    savedAt: time,
    sites: z.array(site, { error: 'the list of places is missing' }),
  },
  { error: unknownKeys },
);

function unknownKeys(issue: { readonly code?: string; readonly keys?: unknown }): string {
  return issue.code === 'unrecognized_keys' && Array.isArray(issue.keys)
    ? `these fields are not known here: ${issue.keys.join(', ')}`
    : 'a map of fields must stand here';
}

/** Reads a workshop file. Nothing is taken from one that has any fault. */
export function readWorkshop(fileText: string): WorkshopRead {
  let data: unknown;
  try {
    data = JSON.parse(fileText);
  } catch (error) {
    const why = error instanceof Error ? error.message : String(error);
    return refused([`The file is not whole: ${why}. Take another copy of it`]);
  }
  const format = isRecord(data) ? data.fallwright : undefined;
  if (format !== WORKSHOP_FORMAT) {
    const [, version] = /^workshop@(\d+)$/.exec(String(format)) ?? [];
    return refused([
      Number(version) > 1
        ? `workshop@${version}: this file was written by a newer Fallwright. Use that one to open it`
        : `A workshop file begins with "fallwright": "${WORKSHOP_FORMAT}"`,
    ]);
  }
  const forbidden = forbiddenKeys(data, []);
  const read = workshop.safeParse(data);
  const faults = read.success
    ? []
    : read.error.issues.map((issue) => `${placeInFile(issue.path)}${issue.message}`);
  const named = read.success ? [...twiceNamed(read.data.sites), ...misnamed(read.data.sites)] : [];
  const reasons = [...forbidden, ...faults, ...named];
  if (!read.success || reasons.length > 0) return refused(reasons);
  return { ok: true, sites: read.data.sites.map(broughtFrom) };
}

function broughtFrom(read: z.infer<typeof site>): BroughtSite {
  const { revisions = [], order, isDemo, unread: texts, deletedAt, ...rest } = read;
  const record: SiteRecord = {
    ...rest,
    document: asEdited(rest.document),
    unread: readUnread(texts),
    order: order ?? 'answerFirst',
    isDemo: isDemo ?? false,
    savedAt: Date.parse(read.savedAt),
    ...(deletedAt === undefined ? {} : { deletedAt: Date.parse(deletedAt) }),
  };
  return {
    site: record,
    revisions: revisions.map(
      (entry): Revision => ({
        ...entry,
        siteId: read.id,
        unread: readUnread(entry.unread),
        savedAt: Date.parse(entry.savedAt),
      }),
    ),
  };
}

function asEdited(document: SiteDocument): SiteDocument {
  const kind = kindOf(document);
  if (kind === 'site') return withListedLines(document);
  return kind === 'test' ? withListedTest(document) : document;
}

function refused(all: readonly string[]): WorkshopRead {
  const reasons = all.slice(0, MOST_REASONS).map((reason) => `${reason}.`);
  const more = all.length - reasons.length;
  return { ok: false, reasons: more > 0 ? [...reasons, `And ${more} more.`] : reasons };
}

/** Keys that would change the very objects of a program that copies them. */
const FORBIDDEN = new Set(['__proto__', 'constructor', 'prototype']);

function forbiddenKeys(data: unknown, path: readonly PropertyKey[]): string[] {
  if (typeof data !== 'object' || data === null) return [];
  if (path.length > DEEPEST) return [`${placeInFile(path)}there are maps in maps without end`];
  return Object.entries(data).flatMap(([key, value]) => {
    const here = [...path, Array.isArray(data) ? Number(key) : key];
    return FORBIDDEN.has(key)
      ? [`${placeInFile(path)}a field may not be called ${key}`]
      : forbiddenKeys(value, here);
  });
}

function twiceNamed(sites: readonly { readonly id: string }[]): string[] {
  const seen = new Set<string>();
  return sites.flatMap(({ id }, index) => {
    const isTwice = seen.has(id);
    seen.add(id);
    return isTwice ? [`${placeInFile(['sites', index])}the id ${id} stands in the file twice`] : [];
  });
}

/** A workshop has one range and one price list; they are found by their ids. */
function misnamed(
  sites: readonly { readonly id: string; readonly document: SiteDocument }[],
): string[] {
  return sites.flatMap(({ id, document }, index) => {
    const kind = kindOf(document);
    const isFixed = SHARED_KINDS.some((shared) => shared === id);
    return (!isSharedKind(kind) && !isFixed) || kind === id
      ? []
      : [
          `${placeInFile(['sites', index])}the id ${id} does not go with fallwright: ${document.fallwright}`,
        ];
  });
}

/** `sites[2].document` is told as: Place 3, document. */
function placeInFile(path: readonly PropertyKey[]): string {
  const [first, index, ...rest] = path;
  if (first === 'sites' && typeof index === 'number') {
    return [
      `Place ${index + 1}`,
      ...rest.map((step) => (typeof step === 'number' ? step + 1 : String(step))),
    ]
      .join(', ')
      .concat(': ');
  }
  return path.length === 0 ? '' : `${path.map(String).join(', ')}: `;
}
