/** A quantity as it stands in a site document: its text, or its text with where it comes from. */
import type { Plain } from './site-document.ts';
import { isRecord } from './site-document.ts';

export type Origin = 'measured' | 'stated' | 'table' | 'assumed';
export const ORIGINS: readonly Origin[] = ['measured', 'stated', 'table', 'assumed'];

/** A file that names no origin states its value. */
const USUAL_ORIGIN: Origin = 'stated';

/** What was written; empty when nothing was. */
export function textOf(entry: Plain | undefined): string {
  if (typeof entry === 'string' || typeof entry === 'number') return String(entry);
  return isRecord(entry) ? textOf(entry.value) : '';
}

export function originOf(entry: Plain | undefined): Origin {
  const named = isRecord(entry) ? entry.origin : undefined;
  return ORIGINS.find((origin) => origin === named) ?? USUAL_ORIGIN;
}

/** The shortest way to write it: the text alone when its origin is the usual one. */
export function entryOf(text: string, origin: Origin): Plain {
  return origin === USUAL_ORIGIN ? text : { value: text, origin };
}
