/**
 * `npm run dev`: the web app from its sources, changing as they change, with the service behind it.
 * Both run on ports of their own, so `npm start` can run beside them.
 */
import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { childEnvironment, installWhatIsMissing, nodeBinary, ROOT, say } from './install.mjs';
import { whenOrphaned } from './when-orphaned.mjs';

const API_PORT = '4760';

installWhatIsMissing();
const env = { ...childEnvironment(), FALLWRIGHT_API: `http://127.0.0.1:${API_PORT}` };
say(`Starting the service on port ${API_PORT}, and Vite …`);
const children = [
  spawn(
    nodeBinary(),
    ['--watch-preserve-output', '--watch', 'server/main.ts', '--api-only', '--port', API_PORT],
    { cwd: ROOT, env, stdio: ['ignore', 'inherit', 'inherit'] },
  ),
  spawn(nodeBinary(), [join(ROOT, 'node_modules', 'vite', 'bin', 'vite.js')], {
    cwd: join(ROOT, 'web'),
    env,
    stdio: 'inherit',
  }),
];

/** @param {NodeJS.Signals} signal */
function endAll(signal) {
  for (const child of children) child.kill(signal);
}
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
  process.on(signal, () => endAll(signal));
}
whenOrphaned(() => endAll('SIGTERM'));
// When one of the two ends, the other is of no use.
for (const child of children) {
  child.on('exit', (code) => {
    if (code) process.exitCode = code;
    endAll('SIGTERM');
  });
}
