/** Reads how many tests passed, failed and were skipped from the reports that the runners write. */

/**
 * @typedef {object} Counts
 * @property {number} passed
 * @property {number} failed
 * @property {number} skipped
 */

/** @type {Counts} */
export const NONE = { passed: 0, failed: 0, skipped: 0 };

/**
 * A stage that is not made of tests, or a runner that broke, is one failure.
 * @type {Counts}
 */
export const ONE_FAILED = { ...NONE, failed: 1 };

/**
 * @param {Counts[]} all
 * @returns {Counts}
 */
export function sum(all) {
  return all.reduce(
    (a, b) => ({
      passed: a.passed + b.passed,
      failed: a.failed + b.failed,
      skipped: a.skipped + b.skipped,
    }),
    NONE,
  );
}

/**
 * Counts from Vitest's JSON report.
 * @param {any} report
 * @returns {Counts}
 */
export function vitestCounts(report) {
  // A file that could not even be loaded has failed without a single test in it.
  const unloadable = report.testResults.filter(
    (/** @type {any} */ file) => file.status === 'failed' && file.assertionResults.length === 0,
  );
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + unloadable.length,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}

/**
 * Counts from Playwright's JSON report.
 * @param {any} report
 * @returns {Counts}
 */
export function playwrightCounts({ stats }) {
  return {
    passed: stats.expected,
    // A test that passes only at the second try is not trusted.
    failed: stats.unexpected + stats.flaky,
    skipped: stats.skipped,
  };
}

/**
 * Counts of one runner, given how it ended. A runner that ended badly never counts as all passed, and
 * one that wrote no report ended badly.
 * @param {number | null} exitCode
 * @param {Counts | undefined} counts
 * @returns {Counts}
 */
export function runnerCounts(exitCode, counts) {
  if (counts === undefined) return ONE_FAILED;
  return exitCode !== 0 && counts.failed === 0 ? sum([counts, ONE_FAILED]) : counts;
}
