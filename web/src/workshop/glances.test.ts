import { expect, test } from 'vitest';
import type { Glance } from '../answer/glance.ts';
import type { SiteDocument } from '../state/site-document.ts';
import type { SiteRecord } from '../state/site-record.ts';
import { askedText, createGlances } from './glances.ts';

const NOT_YET: Glance = { kind: 'notEnoughYet', first: 'fall' };

function siteOf(document: SiteDocument): SiteRecord {
  return {
    id: JSON.stringify(document),
    document,
    unread: {},
    order: 'answerFirst',
    isDemo: false,
    revision: 1,
    savedAt: 0,
    changed: 'begun',
  };
}

const settled = (): Promise<unknown> => new Promise((resolve) => setTimeout(resolve, 0));

test('each place is asked about once, whatever it is called', async () => {
  const asked: string[] = [];
  const { workThrough, known } = createGlances(async (text) => {
    asked.push(text);
    return NOT_YET;
  });
  const sites = [
    { name: 'Combe', fall: '2 m' },
    { name: 'Fork', fall: '2 m' },
    { name: 'Larch', fall: '3 m' },
  ].map(siteOf);
  workThrough(sites);
  await settled();
  workThrough(sites);
  await settled();
  expect(asked).toEqual([askedText({ fall: '2 m' }), askedText({ fall: '3 m' })]);
  expect(known.get().get(askedText({ name: 'Combe', fall: '2 m' }))).toEqual(NOT_YET);
});

test('leaving the list ends the work; a place that breaks does not hold up the others', async () => {
  const asked: string[] = [];
  const { workThrough, known } = createGlances(async (text) => {
    asked.push(text);
    if (text === askedText({ fall: '1 m' })) throw new Error('broken');
    return NOT_YET;
  });
  const stop = workThrough([{ fall: '1 m' }, { fall: '2 m' }].map(siteOf));
  await settled();
  expect(known.get().size).toBe(1);
  stop();
  workThrough([{ fall: '3 m' }, { fall: '4 m' }].map(siteOf))();
  await settled();
  expect(asked).toHaveLength(3);
});
