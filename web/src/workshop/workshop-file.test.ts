import { siteFromData } from '@fallwright/records';
import { expect, test } from 'vitest';
import { historyWith } from '../state/shelf.ts';
import type { SiteRecord } from '../state/site-record.ts';
import { DEMO_PLACES } from './demo.ts';
import { claimsToBeWorkshop, readWorkshop, workshopText } from './workshop-file.ts';

const SITE: SiteRecord = {
  id: 'larkrise',
  document: { fallwright: 'site@1', name: 'Larkrise spring', fall: '1.9 m' },
  unread: { lift: { text: '12', fault: '12 what?' } },
  order: 'answerFirst',
  isDemo: true,
  revision: 2,
  savedAt: Date.UTC(2026, 4, 1),
  changed: 'the fall',
};
const BEFORE = {
  siteId: 'larkrise',
  revision: 1,
  savedAt: Date.UTC(2026, 3, 1),
  changed: 'begun',
  document: { fallwright: 'site@1' },
  unread: {},
};
const TEXT = workshopText([{ site: SITE, revisions: historyWith(SITE, [BEFORE]) }], 0);

function reasonsFor(change: (file: ReturnType<typeof JSON.parse>) => void): readonly string[] {
  const file = JSON.parse(TEXT);
  change(file);
  const read = readWorkshop(JSON.stringify(file));
  return read.ok ? [] : read.reasons;
}

test('a workshop comes back from its file as it was, history and half-typed boxes too', () => {
  expect(claimsToBeWorkshop(TEXT)).toBe(true);
  const read = readWorkshop(TEXT);
  expect(read).toEqual({ ok: true, sites: [{ site: SITE, revisions: [BEFORE] }] });
});

test('a deleted place comes back as a deleted one', () => {
  const site = { ...SITE, deletedAt: Date.UTC(2026, 5, 1) };
  expect(readWorkshop(workshopText([{ site, revisions: [] }], 0))).toEqual({
    ok: true,
    sites: [{ site, revisions: [] }],
  });
});

test('a file cut short is refused as such', () => {
  const cut = TEXT.slice(0, -40);
  expect(claimsToBeWorkshop(cut)).toBe(true);
  expect(readWorkshop(cut)).toMatchObject({ ok: false, reasons: [/not whole/] });
});

test('a newer file, or a newer place in it, is refused as newer', () => {
  expect(reasonsFor((file) => (file.fallwright = 'workshop@2'))[0]).toMatch(/newer Fallwright/);
  expect(reasonsFor((file) => (file.sites[0].document.fallwright = 'site@3'))).toEqual([
    expect.stringMatching(/^Place 1, document: site@3: .*newer/),
  ]);
});

test('every fault is told with its place', () => {
  const reasons = reasonsFor((file) => {
    file.sites[0].revision = 0;
    file.sites[0].savedAt = 'yesterday';
    file.sites[0].colour = 'red';
    delete file.sites[0].revisions[0].changed;
  });
  expect(reasons).toHaveLength(4);
  for (const told of [
    /Place 1, revision: a whole/,
    /Place 1, savedAt: .*no time/,
    /colour/,
    /revisions, 1, changed/,
  ]) {
    expect(reasons).toContainEqual(expect.stringMatching(told));
  }
});

test('keys that programs trip over are refused, however deep', () => {
  const poisoned = TEXT.replace('"fall": "1.9 m"', '"ram": {"__proto__": {"isDemo": true}}');
  expect(poisoned).not.toBe(TEXT);
  expect(readWorkshop(poisoned)).toMatchObject({ ok: false, reasons: [/__proto__/] });
  expect(reasonsFor((file) => (file.sites[0].document.constructor = 'x'))[0]).toMatch(
    /constructor/,
  );
});

test('two places of one id are refused', () => {
  expect(reasonsFor((file) => file.sites.push(file.sites[0]))).toEqual([
    expect.stringMatching(/Place 2: the id larkrise stands in the file twice/),
  ]);
});

test('a site file is not taken for a workshop', () => {
  expect(claimsToBeWorkshop('fallwright: site@1\nname: A workshop@1\n')).toBe(false);
  expect(claimsToBeWorkshop('{"fallwright": "site@1"}')).toBe(false);
});

test('every demo place can be read; one of them still lacks its fall', () => {
  const unread = DEMO_PLACES.flatMap((document) => {
    const read = siteFromData(document);
    return read.ok ? [] : [[document.name, read.problems.map(({ field }) => field)]];
  });
  expect(unread).toEqual([['High Fold', ['fall']]]);
});

test('the range goes with the workshop, under the one name it has', () => {
  const site: SiteRecord = {
    ...SITE,
    id: 'range',
    document: { fallwright: 'range@1', rams: [{ id: 'swallow-25' }] },
    order: 'answerFirst',
    isDemo: false,
  };
  expect(readWorkshop(workshopText([{ site, revisions: [] }], 0))).toEqual({
    ok: true,
    sites: [{ site, revisions: [] }],
  });
  expect(reasonsFor((file) => (file.sites[0].id = 'prices'))).toEqual([
    expect.stringMatching(/the id prices does not go with fallwright: site@1/),
  ]);
});
