/** What the profiles of a whole site say, once every field has been read: worth a second look, and never in the way. */
import { formatQuantity } from '@fallwright/units';
import { fieldName } from '../problem.ts';
import type { PathProblem } from '../schema-problems.ts';
import { systemOf } from './givens.ts';
import { siteLines } from './line-survey.ts';
import type { Site } from './site-schema.ts';

export function checkLines(site: Site): readonly PathProblem[] {
  const hasMore = [...site.drive, ...(site.delivery ?? [])].some(
    ({ profile, vents }) => profile ?? vents,
  );
  if (!hasMore) return [];
  const system = systemOf(site);
  const show = (value: number): string => formatQuantity(value, 'pipeLength', system);
  const problems: PathProblem[] = [];
  const report = (path: readonly (string | number)[], message: string): void => {
    problems.push({ kind: 'unusual', field: fieldName(path), path, message });
  };
  for (const { line, isSurveyed, reading } of siteLines(site)) {
    let start = 0;
    for (const [index, pipe] of (site[line] ?? []).entries()) {
      const before = start;
      const end = before + pipe.length.value;
      start = end;
      for (const [place, vent] of (pipe.vents ?? []).entries()) {
        if (!isSurveyed || !reading.idleVents.includes(before + vent.value)) continue;
        report(
          [line, index, 'vents', place],
          `The vent at ${vent.text} lets no air out: the profile has no crest there. A vent stands at the crest, no more than a bore below its top.`,
        );
      }
      for (const crest of reading.crests) {
        if (!(crest.distance >= before && crest.distance < end) || crest.pressureHead > 0) continue;
        const water = line === 'drive' ? 'the source’s surface' : 'the outlet at the tank';
        report(
          [line, index, 'profile'],
          `The pipe rises ${show(-crest.pressureHead)} above ${water} at ${show(crest.distance - before)}. Check the heights: all count from the waste valve’s outlet.`,
        );
      }
    }
  }
  return problems;
}
