import { describe, expect, test } from 'vitest';
import { ONE_FAILED, playwrightCounts, runnerCounts, sum, vitestCounts } from './test-counts.mjs';

test('a file that could not be loaded counts as failed', () => {
  const report = {
    numPassedTests: 4,
    numFailedTests: 1,
    numPendingTests: 2,
    numTodoTests: 1,
    testResults: [
      { status: 'failed', assertionResults: [] },
      { status: 'failed', assertionResults: [{ status: 'failed' }] },
      { status: 'passed', assertionResults: [{ status: 'passed' }] },
    ],
  };
  expect(vitestCounts(report)).toEqual({ passed: 4, failed: 2, skipped: 3 });
});

test('a browser test that passed only at the second try counts as failed', () => {
  const report = { stats: { expected: 5, unexpected: 1, flaky: 1, skipped: 2 } };
  expect(playwrightCounts(report)).toEqual({ passed: 5, failed: 2, skipped: 2 });
});

describe('a runner that ended badly is never all passed', () => {
  test('without a report', () => {
    expect(runnerCounts(0, undefined)).toEqual(ONE_FAILED);
  });

  test('with a report in which nothing failed', () => {
    const counts = { passed: 3, failed: 0, skipped: 0 };
    expect(runnerCounts(1, counts)).toEqual({ passed: 3, failed: 1, skipped: 0 });
    expect(runnerCounts(null, counts)).toEqual({ passed: 3, failed: 1, skipped: 0 });
    expect(runnerCounts(0, counts)).toEqual(counts);
  });

  test('and a failure in the report is not counted twice', () => {
    const counts = { passed: 3, failed: 2, skipped: 0 };
    expect(runnerCounts(1, counts)).toEqual(counts);
  });
});

test('stages add up', () => {
  expect(sum([{ passed: 1, failed: 2, skipped: 3 }, ONE_FAILED])).toEqual({
    passed: 1,
    failed: 3,
    skipped: 3,
  });
});
