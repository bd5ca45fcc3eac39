/** Builds the web app into web/dist when its sources have changed since the last build. */
import { spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, relative } from 'node:path';
import { pathToFileURL } from 'node:url';
import { childEnvironment, installWhatIsMissing, nodeBinary, ROOT, say } from './install.mjs';

/** Everything that can end up in the built app. */
const SOURCES = ['web', 'engine', 'units', 'records', 'papers', 'package-lock.json'];
const NOT_SOURCES =
  /^(node_modules|dist|tests|gallery|test-results|playwright-report|\..*|.*\.test\.tsx?)$/;
/** Figures of speed, at the top of web; the bench of the app is called so too, and is part of it. */
const FIGURES = join('web', 'bench');

/**
 * Paths of all files under a folder that can end up in the built app, in a fixed order.
 * @param {string} path
 * @returns {string[]}
 */
function sourceFiles(path) {
  return readdirSync(path, { withFileTypes: true })
    .filter((entry) => !NOT_SOURCES.test(entry.name) && !join(path, entry.name).endsWith(FIGURES))
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => {
      const file = join(path, entry.name);
      if (entry.isDirectory()) return sourceFiles(file);
      return entry.isFile() ? [file] : [];
    });
}

/**
 * A hash over names and contents. Times of change would not do: a fresh clone has new ones.
 * @param {string} root
 * @returns {string}
 */
export function hashOfSources(root) {
  const hash = createHash('sha256');
  for (const name of SOURCES) {
    const path = join(root, name);
    if (!existsSync(path)) continue;
    const files = name.includes('.') ? [path] : sourceFiles(path);
    for (const file of files) {
      hash.update(`${relative(root, file)}\0`);
      hash.update(readFileSync(file));
      hash.update('\0');
    }
  }
  return hash.digest('hex');
}

/**
 * Builds web/dist unless the one that stands there was built from these very sources.
 * @returns {boolean} whether web/dist is now what the sources say
 */
export function buildWebIfStale() {
  const stamp = join(ROOT, 'web', 'dist', '.built-from');
  const hash = hashOfSources(ROOT);
  if (existsSync(stamp) && readFileSync(stamp, 'utf8') === hash) {
    say('The web app is up to date.');
    return true;
  }
  say('Building the web app …');
  const vite = join(ROOT, 'node_modules', 'vite', 'bin', 'vite.js');
  const run = spawnSync(nodeBinary(), [vite, 'build', '--logLevel', 'warn'], {
    cwd: join(ROOT, 'web'),
    env: childEnvironment(),
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  if (run.status !== 0) {
    console.error('\nThe web app could not be built; the message stands above.');
    return false;
  }
  writeFileSync(stamp, hash);
  return true;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  installWhatIsMissing();
  if (!buildWebIfStale()) process.exitCode = 1;
}
