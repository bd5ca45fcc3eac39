/** Finds the Chromium that browser tests drive, and on Debian installs it when there is none. */
import { spawnSync } from 'node:child_process';
import { accessSync, constants, existsSync } from 'node:fs';
import { delimiter, join } from 'node:path';
import { say } from './install.mjs';

const COMMANDS = ['chromium', 'chromium-browser', 'google-chrome', 'google-chrome-stable'];

/** What to tell a person who has none. */
export const CHROMIUM_HELP =
  'Install Chromium (on Debian: `apt-get install chromium`), or put the path of one in FALLWRIGHT_CHROMIUM.';

/** Starts without a sandbox, a graphics card or talk to the network of its own. */
export const CHROMIUM_FLAGS = [
  '--no-sandbox',
  '--disable-gpu',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
  '--no-first-run',
];

/** @param {string} path */
function isExecutable(path) {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * Path of a Chromium, or undefined. A path named in FALLWRIGHT_CHROMIUM is taken or refused, never
 * replaced by another one.
 * @param {NodeJS.ProcessEnv} environment
 * @returns {string | undefined}
 */
export function findChromium(environment = process.env) {
  const named = environment.FALLWRIGHT_CHROMIUM;
  if (named) {
    if (isExecutable(named)) return named;
    throw new Error(`FALLWRIGHT_CHROMIUM is ${named}, which is not a program that can be run.`);
  }
  const folders = (environment.PATH ?? '').split(delimiter).filter((folder) => folder !== '');
  return [...folders, '/usr/bin']
    .flatMap((folder) => COMMANDS.map((command) => join(folder, command)))
    .find(isExecutable);
}

/**
 * As findChromium, but as root on Debian it installs what is not there.
 * @returns {string | undefined}
 */
export function findOrInstallChromium() {
  const found = findChromium();
  if (found) return found;
  const isDebian = existsSync('/etc/debian_version') && existsSync('/usr/bin/apt-get');
  if (process.getuid?.() !== 0 || !isDebian) return undefined;
  say('Installing Chromium for the browser tests (apt-get install chromium) …');
  const env = { ...process.env, DEBIAN_FRONTEND: 'noninteractive' };
  for (const args of [['update'], ['install', '-y', 'chromium', 'fonts-dejavu-core']]) {
    // Its hundreds of lines are shown only when they are needed.
    const run = spawnSync('apt-get', args, { env, stdio: ['ignore', 'pipe', 'pipe'] });
    if (run.status !== 0) {
      console.error(`apt-get ${args.join(' ')} failed:\n${run.stdout}${run.stderr}`);
      return undefined;
    }
  }
  return findChromium();
}
