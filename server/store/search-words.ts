/** The words by which a record is found. */
import type { PlainRecord } from '@fallwright/records';

/** The fields of each kind in which people look for a record, its name first. */
const SEARCHED = ['name', 'owner', 'maker', 'place', 'by', 'serial', 'notes'];

/** Judgement: notes of more than some pages are not searched to their end. */
const LONGEST_WORDS = 4000;
const LONGEST_NAME = 200;

export function nameIn(document: PlainRecord): string {
  return clean(textOf(document.name)).slice(0, LONGEST_NAME);
}

export function wordsIn(document: PlainRecord): string {
  return folded(SEARCHED.map((field) => textOf(document[field])).join(' ')).slice(0, LONGEST_WORDS);
}

/** Case and accents play no part when one searches. */
export function folded(text: string): string {
  return clean(text.normalize('NFKD').replace(/\p{M}/gu, '').toLowerCase()).trim();
}

/** PostgreSQL stores no NUL, and no half of a letter that is written as two. */
export function clean(text: string): string {
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what is taken out
  return text.toWellFormed().replace(/[\u0000-\u001f\u007f]+/g, ' ');
}

function textOf(value: unknown): string {
  return typeof value === 'string' || typeof value === 'number' ? String(value) : '';
}
