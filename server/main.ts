/** The program that `npm start` runs: reads its arguments, opens the service, says where it is. */
import { existsSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { parseArgs } from 'node:util';
import { PortTakenError, type RunningServer, startServer } from './start-server.ts';

const DEFAULT_PORT = 4740;
/** How many ports after the default one are tried when it is taken. */
const PORTS_TRIED = 20;
const BUILT_WEB = join(import.meta.dirname, '..', 'web', 'dist');

const USAGE = `node server/main.ts [--port N] [--web FOLDER] [--api-only]

  --port N      the port to listen on (default: ${DEFAULT_PORT}, or the next free one; 0: any free one)
  --web FOLDER  the built web app to give out (default: web/dist)
  --api-only    answer /api alone, for work on the web app with npm run dev`;

interface Arguments {
  readonly port: number | undefined;
  readonly web: string;
  readonly apiOnly: boolean;
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
    },
  });
  return {
    port: values.port === undefined ? undefined : readPort(values.port),
    web: resolve(values.web),
    apiOnly: values['api-only'],
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
async function startOnFreePort(webFolder: { readonly webFolder?: string }): Promise<RunningServer> {
  for (let port = DEFAULT_PORT; port < DEFAULT_PORT + PORTS_TRIED; port++) {
    try {
      return await startServer({ port, ...webFolder });
    } catch (error) {
      if (!(error instanceof PortTakenError)) throw error;
      console.log(`· ${error.message} Trying the next one.`);
    }
  }
  throw new Error(
    `Ports ${DEFAULT_PORT} to ${DEFAULT_PORT + PORTS_TRIED - 1} are all taken by other programs. Name a free one: --port N.`,
  );
}

async function run({ port, web, apiOnly }: Arguments): Promise<void> {
  if (!apiOnly && !existsSync(join(web, 'index.html'))) {
    stop(
      web === BUILT_WEB
        ? 'The web app is not built yet. Run `npm start`, which builds it first.'
        : `There is no built web app in ${web}: it has no index.html.`,
    );
  }
  const webFolder = apiOnly ? {} : { webFolder: web };
  const server = await (port === undefined
    ? startOnFreePort(webFolder)
    : startServer({ port, ...webFolder }));

  console.log(`\nFallwright is running at ${server.address}  (Ctrl-C ends it)`);
  let isStopping = false;
  const stopServer = async (): Promise<void> => {
    if (isStopping) return;
    isStopping = true;
    await server.stop();
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
