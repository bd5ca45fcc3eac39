import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { allRows, knownMisses, rowsOfSubject, SUBJECTS } from './all-rows.ts';
import { compare } from './check-row.ts';
import { expectWithin } from './expect-within.ts';
import { LOG_ABSENT, pressureLog } from './pressure-log.ts';
import { readTable, tableNames } from './read-table.ts';
import { isMended, judged } from './report/judged.ts';
import { validationPage } from './report/page.ts';

const ROWS = allRows();
const TABLES = [...new Set(ROWS.map(({ table }) => table))];

for (const table of TABLES) {
  describe(table, () => {
    for (const row of ROWS.filter((one) => one.table === table)) {
      const name = `${row.id}: ${row.quantity} [${row.source}, ${row.knownBy}]`;
      if (row.skip) {
        test.skip(`${name} (skipped: ${row.skip})`, () => {});
      } else if (row.miss) {
        test(`${name} (a known miss: ${row.miss})`, () => {
          const comparison = compare(row.published, row.ours(), row);
          expect(comparison.got, 'a miss is a number too').not.toBeNaN();
          const message = 'it agrees now: take it out of data/known-misses.csv';
          expect(isMended(row, comparison), message).toBe(false);
        });
      } else {
        test(name, () => {
          expectWithin(row.ours(), row.published, row, row.note ?? `tolerance of ${row.table}`);
        });
      }
    }
  });
}

describe('the tables themselves', () => {
  const dataTables = SUBJECTS.flatMap((subject) =>
    tableNames(subject)
      .filter((name) => name !== 'sources')
      .map((name) => [name, subject] as const),
  );

  test.each(dataTables)('every row of %s is checked, or skipped in sight', (table, subject) => {
    const ids = ROWS.filter((row) => row.table === table).map(({ id }) => id);
    const missing = readTable(`${subject}/${table}`)
      .map((row) => row.text('id'))
      .filter((id) => !ids.some((ours) => ours === id || ours.startsWith(`${id}/`)));
    expect(missing).toEqual([]);
  });

  test('no two rows of a table share an id', () => {
    const keys = ROWS.map(({ table, id }) => `${table} ${id}`);
    expect(keys.filter((key, i) => keys.indexOf(key) !== i)).toEqual([]);
  });

  test('every row names a source that is listed', () => {
    const listed = new Set(
      SUBJECTS.flatMap((subject) =>
        readTable(`${subject}/sources`).map((row) => row.text('source_id')),
      ),
    );
    const unlisted = ROWS.filter(({ source }) => !listed.has(source)).map(({ id }) => id);
    expect(unlisted).toEqual([]);
  });

  test('every row that runs has a published number and a tolerance', () => {
    const bare = ROWS.filter((row) => {
      const limits =
        'toleranceRelative' in row
          ? [row.toleranceRelative]
          : 'toleranceAbsolute' in row
            ? [row.toleranceAbsolute]
            : [row.low, row.high];
      return !row.skip && ![row.published, ...limits].every(Number.isFinite);
    });
    expect(bare.map(({ id }) => id)).toEqual([]);
  });

  test('every known miss is a row that runs, and is listed once', () => {
    const running = new Set(
      ROWS.filter(({ skip }) => !skip).map(({ table, id }) => `${table} ${id}`),
    );
    const listed = knownMisses().map(({ table, id }) => `${table} ${id}`);
    expect(listed.filter((key) => !running.has(key))).toEqual([]);
    expect(listed.filter((key, i) => listed.indexOf(key) !== i)).toEqual([]);
  });
});

const hasLogs = pressureLog('AC19-R1') !== undefined;
const pageTest = 'docs/validation.md is what `npm run report` writes';
if (hasLogs) {
  test(pageTest, { timeout: 60_000 }, () => {
    const page = new URL('../docs/validation.md', import.meta.url);
    const [hydraulics, rams] = SUBJECTS.map((subject) => rowsOfSubject(subject).map(judged));
    expect(readFileSync(page, 'utf8')).toBe(validationPage(hydraulics ?? [], rams ?? [], true));
  });
} else {
  test.skip(`${pageTest} (skipped: ${LOG_ABSENT})`, () => {});
}
