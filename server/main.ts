/** The program that `npm start` runs: reads its arguments, opens the service, says where it is. */
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import {
  PortTakenError,
  type RunningServer,
  type StartOptions,
  startServer,
} from './start-server.ts';
import type { Store } from './store/open-store.ts';

const DEFAULT_PORT = 4740;
/** How many ports after the default one are tried when it is taken. */
const PORTS_TRIED = 20;
const BUILT_WEB = join(import.meta.dirname, '..', 'web', 'dist');

const USAGE = `node server/main.ts [--port N] [--web FOLDER] [--data FOLDER] [--api-only]

  --port N      the port to listen on (default: ${DEFAULT_PORT}, or the next free one; 0: any free one)
  --web FOLDER  the built web app to give out (default: web/dist)
  --data FOLDER keep and share records in this folder (or FALLWRIGHT_DATA); none are kept when left out.
                With FALLWRIGHT_DATABASE=postgres://… they are kept there, and only attachments in the folder
  --api-only    answer /api alone, for work on the web app with npm run dev`;

interface Arguments {
  readonly port: number | undefined;
  readonly web: string;
  readonly apiOnly: boolean;
  readonly data: string | undefined;
}

function stop(message: string): never {
  console.error(message);
  process.exit(1);
}

function readArguments(): Arguments {
  const { values } = parseArgs({
    options: {
      port: { type: 'string' },
      web: { type: 'string', default: BUILT_WEB },
      'api-only': { type: 'boolean', default: false },
      data: { type: 'string', default: process.env.FALLWRIGHT_DATA ?? '' },
    },
  });
  return {
    port: values.port === undefined ? undefined : readPort(values.port),
    web: resolve(values.web),
    apiOnly: values['api-only'],
    data: values.data === '' ? undefined : resolve(values.data),
  };
}

function readPort(text: string): number {
  const port = Number(text);
  if (!/^\d+$/.test(text) || port > 65_535) {
    throw new RangeError(`--port must be a whole number from 0 to 65535, got "${text}".`);
  }
  return port;
}

/** The default port, or the next free one after it. */
async function startOnFreePort(options: Omit<StartOptions, 'port'>): Promise<RunningServer> {
  for (let port = DEFAULT_PORT; port < DEFAULT_PORT + PORTS_TRIED; port++) {
    try {
      return await startServer({ port, ...options });
    } catch (error) {
      if (!(error instanceof PortTakenError)) throw error;
      console.log(`· ${error.message} Trying the next one.`);
    }
  }
  throw new Error(
    `Ports ${DEFAULT_PORT} to ${DEFAULT_PORT + PORTS_TRIED - 1} are all taken by other programs. Name a free one: --port N.`,
  );
}

/** The connection string may hold a password, so it comes by the environment and is never said. */
async function openStoreIn(folder: string): Promise<Store> {
  const connection = process.env.FALLWRIGHT_DATABASE ?? '';
  const { openStore } = await import('./store/open-store.ts');
  const store = await openStore({ folder, ...(connection === '' ? {} : { connection }) });
  console.log(
    connection === ''
      ? `· Records are kept in ${folder}`
      : `· Records are kept in the database of FALLWRIGHT_DATABASE, attachments in ${folder}`,
  );
  if (store.swept > 0) console.log(`· ${store.swept} half uploads were swept up.`);
  return store;
}

async function run({ port, web, apiOnly, data }: Arguments): Promise<void> {
  if (!apiOnly && !existsSync(join(web, 'index.html'))) {
    stop(
      web === BUILT_WEB
        ? 'The web app is not built yet. Run `npm start`, which builds it first.'
        : `There is no built web app in ${web}: it has no index.html.`,
    );
  }
  const store = data === undefined ? undefined : await openStoreIn(data);
  const options = {
    ...(apiOnly ? {} : { webFolder: web }),
    ...(store === undefined ? {} : { store }),
  };
  let server: RunningServer;
  try {
    server = await (port === undefined
      ? startOnFreePort(options)
      : startServer({ port, ...options }));
  } catch (error) {
    await store?.close();
    throw error;
  }

  console.log(`\nFallwright is running at ${server.address}  (Ctrl-C ends it)`);
  let isStopping = false;
  const stopServer = async (): Promise<void> => {
    if (isStopping) return;
    isStopping = true;
    await server.stop();
    await store?.close();
    console.log('\nFallwright has stopped.');
    process.exit(0);
  };
  for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.on(signal, stopServer);
  // A launcher that keeps a channel open ends its server with itself, however it ends.
  if (process.channel) {
    process.on('disconnect', stopServer);
  }
}

let args: Arguments;
try {
  args = readArguments();
} catch (error) {
  stop(`${error instanceof Error ? error.message : error}\n\n${USAGE}`);
}
try {
  await run(args);
} catch (error) {
  if (error instanceof PortTakenError) {
    stop(`${error.message} End that program, or name another port: --port N.`);
  }
  stop(error instanceof Error ? error.message : String(error));
}
