/** What is told apart, in a few words on the fold over it: `4 people, 44 animals, garden`. */
import { plainFigures } from '@fallwright/units';
import { textOf } from '../state/entry.ts';
import type { SiteDocument } from '../state/site-document.ts';
import { isRecord } from '../state/site-document.ts';
import { animalsAt, isToldApart, needPart } from './need-entry.ts';

export function needSummary(document: SiteDocument): string {
  if (!isToldApart(document.demand)) return '';
  const has = (name: string): boolean => needPart(document, [name]) !== undefined;
  const people = Number(textOf(needPart(document, ['people'])));
  const animals = needPart(document, ['animals']);
  const count = Object.keys(isRecord(animals) ? animals : {}).reduce(
    (sum, name) => sum + (Number(textOf(animalsAt(document, name).count)) || 0),
    0,
  );
  return [
    ...(people > 0 ? [people === 1 ? '1 person' : `${plainFigures(people, 6)} people`] : []),
    ...(count > 0 ? [count === 1 ? '1 animal' : `${plainFigures(count, 6)} animals`] : []),
    ...(has('garden') ? ['garden'] : []),
    ...(has('drip') ? ['drip line'] : []),
    ...(has('other') ? ['other uses'] : []),
  ].join(', ');
}
