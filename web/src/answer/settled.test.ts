import { expect, test } from 'vitest';
import type { SiteDocument } from '../state/site-document.ts';
import { readSettled, settled } from './settled.ts';

const PLACE: SiteDocument = {
  fallwright: 'site@1',
  source: { flow: '14 L/min' },
  fall: '1.9 m',
  drive: [{ pipe: 'PE100 SDR11 25', length: '14 m' }],
  lift: '12 m',
};
const BUCKET = { method: 'bucket', volume: '10 L', times: ['42 s', '44 s'] };

test('a measurement that lacks something waits, and the answer stands on the rest', () => {
  const source = { gauging: [{ method: 'v-notch', angle: '90°' }, BUCKET, { method: 'bucket' }] };
  const { data, read, waiting } = settled({ ...PLACE, source });
  expect(data).toEqual({ ...PLACE, source: { gauging: [BUCKET] } });
  expect(read.ok).toBe(true);
  expect(waiting.map(({ field }) => field)).toEqual(['source.gauging[0]', 'source.gauging[2]']);
  const told = readSettled({ ...PLACE, source });
  expect(told.ok && told.warnings.map(({ message }) => message)).toContainEqual(
    expect.stringMatching(/^Not used yet: A measurement by bucket needs volume and times/),
  );
});

test('a level book that is not finished leaves the height that was written', () => {
  const fall = { value: '1.9 m', levels: [{ back: '0.4 m' }, { fore: '1.6 m', back: '0.6 m' }] };
  const { data, read } = settled({ ...PLACE, fall });
  expect(data).toEqual(PLACE);
  expect(read.ok && read.site.fall.value).toBe(1.9);
});

test('without a written height an unfinished book leaves the fall to be asked for', () => {
  const { read, waiting } = settled({ ...PLACE, fall: { levels: [{ back: '0.4 m' }] } });
  expect(waiting).toHaveLength(1);
  expect(read.ok ? [] : read.problems.map(({ field }) => field)).toEqual(['fall']);
});

test('what is wrong elsewhere is still refused', () => {
  const read = readSettled({ ...PLACE, lift: '1 m' });
  expect(read.ok).toBe(false);
});
