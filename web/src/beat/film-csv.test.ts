import { expect, test } from 'vitest';
import { filmCsv } from './film-csv.ts';
import { madeFilm } from './fixtures/made-film.ts';

test('each head has its unit and each row a cell for every head', () => {
  const text = filmCsv(
    madeFilm({
      opening: [0, 0.003],
      driveFlow: [1.23456789e-4, -2e-5],
      bodyHead: [12.3, -0.5],
      lineHead: [
        [1.9, 5, 12.3],
        [1.9, 1, -0.5],
      ],
    }),
  );
  const [heads, ...rows] = text.trimEnd().split('\r\n');
  const columns = heads?.split(',') ?? [];
  expect(columns).toHaveLength(6 + 3 + 3);
  for (const column of columns) expect(column).toMatch(/ \[(s|m|m3\/s)\]$/);
  expect(columns[7]).toBe('head at 1 m [m]');
  expect(rows).toHaveLength(2);
  expect(rows[0]?.split(',')).toEqual([
    ...['0', '0', '12.3', '0.000123457', '0', '0'],
    ...['1.9', '5', '12.3'],
    ...['0', '0', '0'],
  ]);
  expect(rows[1]?.split(',')[0]).toBe('0.01');
});
