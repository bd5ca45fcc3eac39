/**
 * `npm test`: everything that must hold, from the type check to the browser tests.
 *
 * Each stage runs even when one before it failed, so that one run shows all there is to mend. A stage
 * that is not made of tests counts as one failure when it fails.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { buildWebIfStale } from './build-web.mjs';
import { check } from './check.mjs';
import { CHROMIUM_HELP, findOrInstallChromium } from './find-chromium.mjs';
import { childEnvironment, installWhatIsMissing, nodeBinary, ROOT, say } from './install.mjs';
import {
  NONE,
  ONE_FAILED,
  playwrightCounts,
  runnerCounts,
  sum,
  vitestCounts,
} from './test-counts.mjs';

const isCI = process.env.CI === 'true';

/**
 * @param {string} file
 * @param {(report: any) => import('./test-counts.mjs').Counts} count
 */
function readReport(file, count) {
  return existsSync(file) ? count(JSON.parse(readFileSync(file, 'utf8'))) : undefined;
}

/**
 * @param {string} script
 * @param {string[]} args
 * @param {NodeJS.ProcessEnv} environment
 */
function runNode(script, args, environment) {
  return spawnSync(nodeBinary(), [join(ROOT, 'node_modules', script), ...args], {
    cwd: ROOT,
    env: { ...childEnvironment(), ...environment },
    stdio: ['ignore', 'inherit', 'inherit'],
  }).status;
}

/** @param {NodeJS.ProcessEnv} environment */
function unitTests(environment) {
  say('Running the tests of all packages, and the checks against published sources …');
  const report = join(reports, 'vitest.json');
  const exitCode = runNode(
    'vitest/vitest.mjs',
    ['run', '--reporter=default', '--reporter=json', `--outputFile.json=${report}`],
    environment,
  );
  return runnerCounts(exitCode, readReport(report, vitestCounts));
}

function chromiumOrUndefined() {
  try {
    return findOrInstallChromium();
  } catch (error) {
    console.error(error instanceof Error ? error.message : error);
    return undefined;
  }
}

/** @param {string | undefined} chromium */
function browserTests(chromium) {
  const folder = join(ROOT, 'web', 'tests');
  if (!existsSync(folder) || !readdirSync(folder).some((file) => file.endsWith('.spec.ts'))) {
    say('There are no browser tests yet (web/tests/*.spec.ts).');
    return NONE;
  }
  if (chromium === undefined) {
    console.error(
      `\n!! BROWSER TESTS ${isCI ? 'FAILED' : 'SKIPPED'}: no Chromium. ${CHROMIUM_HELP}\n`,
    );
    return isCI ? ONE_FAILED : { ...NONE, skipped: 1 };
  }
  say(`Running the browser tests with ${chromium} …`);
  const report = join(reports, 'playwright.json');
  const exitCode = runNode(
    '@playwright/test/cli.js',
    ['test', '--config', 'web/playwright.config.ts', '--reporter=list,json'],
    { FALLWRIGHT_CHROMIUM: chromium, PLAYWRIGHT_JSON_OUTPUT_FILE: report },
  );
  return runnerCounts(exitCode, readReport(report, playwrightCounts));
}

const started = Date.now();
installWhatIsMissing();
const reports = mkdtempSync(join(tmpdir(), 'fallwright-reports-'));
const stages = [check() ? NONE : ONE_FAILED];
const chromium = chromiumOrUndefined();
stages.push(unitTests(chromium ? { FALLWRIGHT_CHROMIUM: chromium } : {}));
stages.push(buildWebIfStale() ? browserTests(chromium) : ONE_FAILED);
rmSync(reports, { recursive: true });

const { passed, failed, skipped } = sum(stages);
if (stages[0] === ONE_FAILED) console.error('\nThe type check, lint or walls failed; see the top.');
say(`Took ${Math.round((Date.now() - started) / 1000)} s.`);
console.log(`\n${passed} passed, ${failed} failed, ${skipped} skipped`);
process.exitCode = failed === 0 ? 0 : 1;
