/**
 * What every launcher does first: find the folder of the clone, a fitting Node.js, and the packages.
 *
 * This runs before anything is installed, perhaps on an old Node.js, so it is plain JavaScript for
 * Node 18 and later and imports nothing but Node's own modules.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(fileURLToPath(import.meta.url)));

/** The first Node.js that runs .ts files without a flag. */
export const OLDEST_NODE = '22.18.0';

/** @param {string} message */
export function say(message) {
  console.log(`· ${message}`);
}

/**
 * Says what is wrong and what to do, and ends the launcher.
 * @param {string} message
 * @returns {never}
 */
export function stop(message) {
  console.error(`\n${message}`);
  process.exit(1);
}

/**
 * @param {string} version
 * @returns {boolean}
 */
export function runsTypeScript(version) {
  const [major = 0, minor = 0] = version.split('.').map(Number);
  const [oldestMajor = 0, oldestMinor = 0] = OLDEST_NODE.split('.').map(Number);
  return major > oldestMajor || (major === oldestMajor && minor >= oldestMinor);
}

/**
 * The Node.js that runs everything after the install: the one that npm brought, else the one that
 * runs now. The clone's own comes first so that everybody's results come from the same version.
 * @returns {string}
 */
export function nodeBinary() {
  const brought = join(ROOT, 'node_modules', '.bin', 'node');
  if (existsSync(brought)) return brought;
  if (runsTypeScript(process.versions.node)) return process.execPath;
  return stop(
    `Fallwright needs Node.js 24 (${OLDEST_NODE} at the oldest); this is ${process.versions.node}.\n` +
      'On 64-bit Linux npm brings its own copy: try `npm ci --include=optional`.\n' +
      'Elsewhere install Node.js 24, then start again.',
  );
}

/** Environment for child processes: the packages' own commands and the fitting Node.js come first. */
export function childEnvironment() {
  const separator = process.platform === 'win32' ? ';' : ':';
  const path = [dirname(nodeBinary()), join(ROOT, 'node_modules', '.bin'), process.env.PATH ?? ''];
  return { ...process.env, PATH: path.join(separator) };
}

/**
 * Why the packages in node_modules are not those of the lockfile, or undefined when they are.
 *
 * npm writes down what it has put in node_modules at the very end of an install. Comparing that with
 * the lockfile also holds after `npm install`, and an install that was cut short does not pass.
 *
 * @param {string} root
 * @returns {string | undefined}
 */
export function whatIsMissing(root) {
  const installedList = join(root, 'node_modules', '.package-lock.json');
  if (!existsSync(installedList)) return 'nothing is installed yet';
  const wanted = JSON.parse(readFileSync(join(root, 'package-lock.json'), 'utf8')).packages;
  const installed = JSON.parse(readFileSync(installedList, 'utf8')).packages;
  for (const [path, entry] of Object.entries(wanted)) {
    if (path === '') continue;
    const there = installed[path];
    // npm leaves out an optional package that is made for another kind of machine.
    if (!there && (entry.optional || entry.devOptional)) continue;
    if (!there) return `${path} is missing`;
    if (there.version !== entry.version || there.integrity !== entry.integrity) {
      return `${path} is ${there.version}, the lockfile wants ${entry.version}`;
    }
  }
  return undefined;
}

/** Runs `npm ci` when the packages are not those of the lockfile. */
export function installWhatIsMissing() {
  const reason = whatIsMissing(ROOT);
  if (reason === undefined) return;
  say(`Installing packages (${reason}) …`);
  // Under `npm run` this is the very npm that the person called, with the Node.js that it runs on:
  // `npm ci` deletes node_modules, and with it the copy of Node.js that lies in there.
  const npm = process.env.npm_execpath;
  const npmNode = process.env.npm_node_execpath;
  /** @type {import('node:child_process').SpawnSyncOptions} */
  const options = { cwd: ROOT, stdio: ['ignore', 'inherit', 'inherit'] };
  const quiet = ['ci', '--no-audit', '--no-fund', '--include=dev', '--include=optional'];
  const run =
    npm?.endsWith('npm-cli.js') && npmNode && existsSync(npmNode)
      ? spawnSync(npmNode, [npm, ...quiet], options)
      : spawnSync('npm', quiet, { ...options, shell: process.platform === 'win32' });
  if (run.status !== 0) {
    stop(
      'npm could not install the packages; its message stands above.\n' +
        'Check the connection to the npm registry and the free disk space, then start again.',
    );
  }
}
