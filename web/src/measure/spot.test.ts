import { expect, test } from 'vitest';
import { withWrittenHeight, writtenHeight } from '../state/measured-entry.ts';
import { keepUnread, openPlace, undo } from '../state/place.ts';
import { putAway } from './height-panel.tsx';
import { gaugingSpot, heightSpot, withReadingAdded, withReadingTakenOut, writeAt } from './spot.ts';
import { gaugingNeeds, heightNeeds } from './still-needed.ts';

test('readings of a height stand beside what was written, and neither is lost', () => {
  const fall = heightSpot('fall');
  const measured = writeAt(fall, ['hops'])({ fall: { value: '2 m', origin: 'measured' } }, ['1 m']);
  expect(measured).toEqual({
    fall: { value: { value: '2 m', origin: 'measured' }, hops: ['1 m'] },
  });
  expect(writtenHeight(measured, 'fall')).toEqual({ value: '2 m', origin: 'measured' });
  const retyped = withWrittenHeight(measured, 'fall', '2.1 m');
  expect(retyped).toEqual({ fall: { value: '2.1 m', hops: ['1 m'] } });
  expect(withWrittenHeight(retyped, 'fall', undefined)).toEqual({ fall: { hops: ['1 m'] } });
  expect(writeAt(fall, ['hops'])(retyped, undefined)).toEqual({ fall: '2.1 m' });
  expect(writeAt(fall, ['hops'])({ fall: { hops: ['1 m'] } }, undefined)).toEqual({});
});

test('each reading from the watch is a step of its own, and a single one becomes a list', () => {
  const spot = gaugingSpot(0);
  const begun = openPlace({ source: { gauging: { method: 'drop', time: '60 s' } } });
  const one = withReadingAdded(begun, spot, 'times', '61 s');
  const two = withReadingAdded(one, spot, 'times', '62.5 s');
  expect(two.document).toEqual({
    source: { gauging: [{ method: 'drop', times: ['60 s', '61 s', '62.5 s'] }] },
  });
  expect(undo(two).document).toEqual(one.document);
});

test('a reading that is half typed stays when the watch adds one before it', () => {
  const spot = gaugingSpot(0);
  const begun = openPlace({ source: { gauging: [{ method: 'bucket', times: ['42 s'] }] } });
  const half = keepUnread(begun, ['source', 'gauging', 0, 'times', 1], '44.');
  const more = withReadingAdded(half, spot, 'times', '43.1 s');
  expect(more.document).toEqual({
    source: { gauging: [{ method: 'bucket', times: ['42 s', '43.1 s'] }] },
  });
  expect(more.unread).toEqual({ 'source.gauging[0].times[2]': { text: '44.' } });
  expect(undo(more).unread).toEqual(half.unread);
});

test('text that waits moves up when a reading before it is taken out', () => {
  const spot = gaugingSpot(0);
  const begun = openPlace({
    source: { gauging: [{ method: 'bucket', times: ['42 s', '43 s', '44 s'] }] },
  });
  const waiting = keepUnread(begun, ['source', 'gauging', 0, 'times', 2], '44 x');
  const less = withReadingTakenOut(waiting, spot, 'times', 0);
  expect(less.document).toEqual({
    source: { gauging: [{ method: 'bucket', times: ['43 s', '44 s'] }] },
  });
  expect(less.unread).toEqual({ 'source.gauging[0].times[1]': { text: '44 x' } });
});

test('readings of one way go into the note when another is begun', () => {
  expect(putAway({ hops: ['1.2 m', '0.7 m'], date: '2026-08-19' }, 'hops', '1.9\u00a0m')).toEqual({
    date: '2026-08-19',
    note: 'hops, 1.9 m: hops 1.2 m; 0.7 m',
  });
});

test('what lacks is told by the names over the boxes', () => {
  expect(gaugingNeeds({ method: 'float', area: '0.1 m2', times: ['30 s'] })).toBe(
    'Still needed: length between the strings.',
  );
  expect(gaugingNeeds({ method: 'drop', area: '1 m2', drop: '0.1 m', time: '5 min' })).toBe(
    undefined,
  );
  expect(heightNeeds({ satellite: ['', '288 m'] }, 'lift')).toBe(
    'Still needed: the height at the tank.',
  );
  expect(heightNeeds({ gauge: '1 bar', class: '1 %' }, 'fall')).toBe(
    'Still needed: range of the dial.',
  );
});
