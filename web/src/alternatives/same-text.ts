/** Plain data as text in which the order of fields plays no part: two parts of a site file that say the same are the same. */
import type { Plain } from '../state/site-document.ts';
import { isList, isRecord } from '../state/site-document.ts';

export function sameText(value: Plain | undefined): string {
  return JSON.stringify(inOrder(value)) ?? '';
}

function inOrder(value: Plain | undefined): Plain | undefined {
  if (isList(value)) return value.map((item) => inOrder(item) ?? null);
  if (!isRecord(value)) return value;
  return Object.fromEntries(
    Object.keys(value)
      .sort()
      .map((key) => [key, inOrder(value[key])]),
  );
}
