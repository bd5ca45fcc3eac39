/** `npm start`: installs what is missing, builds the web app when it is stale, starts the server. */
import { spawn } from 'node:child_process';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { buildWebIfStale } from './build-web.mjs';
import { defaultDataFolder } from './data-folder.mjs';
import { childEnvironment, installWhatIsMissing, nodeBinary, ROOT, say, stop } from './install.mjs';
import { whenOrphaned } from './when-orphaned.mjs';

const USAGE = `npm start [-- --port N --data FOLDER]

  --port N       the port to listen on (default: 4740, or the next free one)
  --data FOLDER  where records are kept (default: FALLWRIGHT_DATA, or ${defaultDataFolder()})`;

/** @returns {{ port?: string | undefined, data?: string | undefined, help?: boolean | undefined }} */
function readArguments() {
  try {
    return parseArgs({
      options: { port: { type: 'string' }, data: { type: 'string' }, help: { type: 'boolean' } },
    }).values;
  } catch (error) {
    return stop(`${error instanceof Error ? error.message : error}\n\n${USAGE}`);
  }
}

const options = readArguments();
if (options.help) {
  console.log(USAGE);
  process.exit(0);
}

installWhatIsMissing();
if (!buildWebIfStale()) process.exit(1);

say('Starting the server …');
const server = spawn(
  nodeBinary(),
  [
    join(ROOT, 'server', 'main.ts'),
    '--data',
    resolve(options.data || process.env.FALLWRIGHT_DATA || defaultDataFolder()),
    ...(options.port ? ['--port', options.port] : []),
  ],
  { cwd: ROOT, env: childEnvironment(), stdio: ['inherit', 'inherit', 'inherit', 'ipc'] },
);
for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
  process.on(signal, () => server.kill(signal));
}
whenOrphaned(() => server.kill('SIGTERM'));
server.on('error', (error) => stop(`The server did not start: ${error.message}`));
server.on('exit', (code) => process.exit(code ?? 1));
