/** `npm run check`: type check of every package, lint and format, and the walls. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { childEnvironment, installWhatIsMissing, nodeBinary, ROOT, say } from './install.mjs';

/**
 * Where a package has two, the first holds its sources, which see neither Node.js nor a browser that
 * they may not touch, and the second its tests.
 */
const PROJECTS = [
  'engine/tsconfig.json',
  'engine/tsconfig.test.json',
  'units/tsconfig.json',
  'units/tsconfig.test.json',
  'records/tsconfig.json',
  'records/tsconfig.test.json',
  'papers/tsconfig.json',
  'papers/tsconfig.test.json',
  'cli/tsconfig.json',
  'server/tsconfig.json',
  'web/tsconfig.json',
  'web/tsconfig.test.json',
  'checks/tsconfig.json',
  'examples/tsconfig.json',
  'scripts/tsconfig.json',
];

/**
 * @param {string} script path of a JavaScript or TypeScript file from the root of the clone
 * @param {string[]} args
 * @returns {boolean} whether it ended well
 */
function run(script, ...args) {
  const { status } = spawnSync(nodeBinary(), [join(ROOT, script), ...args], {
    cwd: ROOT,
    env: childEnvironment(),
    stdio: ['ignore', 'inherit', 'inherit'],
  });
  return status === 0;
}

/** @returns {boolean} whether everything holds; each part is run even when one before it failed */
export function check() {
  say('Checking types …');
  const types = PROJECTS.filter((project) => {
    const ok = run('node_modules/typescript/bin/tsc', '-p', project);
    if (!ok) console.error(`  ↑ ${project}`);
    return !ok;
  });
  say('Checking lint and format …');
  const lint = run(
    'node_modules/@biomejs/biome/bin/biome',
    'check',
    '--error-on-warnings',
    '--max-diagnostics=200',
  );
  if (!lint) console.error('  ↑ `npm run format` mends the format and the order of imports');
  say('Checking the walls between packages …');
  const walls = run('scripts/walls.ts');
  return types.length === 0 && lint && walls;
}

if (process.argv[1] && import.meta.url === pathToFileURL(process.argv[1]).href) {
  installWhatIsMissing();
  const ok = check();
  say(ok ? 'All checks hold.' : 'Some checks do not hold; they stand above.');
  process.exitCode = ok ? 0 : 1;
}
