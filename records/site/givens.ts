import { type System, unitSystemOf } from '@fallwright/units';
import { type Given, isGiven } from '../given.ts';
import type { Path } from '../problem.ts';
import type { Site } from './site-schema.ts';

/** Every quantity that stands in a site, with its path, in the order of the file. */
export function givensOf(
  site: unknown,
  path: Path = [],
): readonly { readonly path: Path; readonly given: Given }[] {
  if (isGiven(site)) return [{ path, given: site }];
  if (Array.isArray(site)) return site.flatMap((item, index) => givensOf(item, [...path, index]));
  if (typeof site !== 'object' || site === null) return [];
  return Object.entries(site).flatMap(([key, value]) => givensOf(value, [...path, key]));
}

/** The system a site is to be answered in: the one it names, or the one most of it is written in. */
export function systemOf(site: Site): System {
  return site.units ?? unitSystemOf(givensOf(site).map(({ given }) => given.text));
}
