/** Opens the service on a port of this machine, and closes it again. */
import type { AddressInfo } from 'node:net';
import { createAdaptorServer } from '@hono/node-server';
import { type AppOptions, createApp } from './app.ts';
import type { Store } from './store/open-store.ts';

/** Only this machine can reach the service; whoever wants it on a network puts a proxy in front. */
const HOST = '127.0.0.1';

export interface StartOptions {
  /** Port to listen on; 0 takes any free one. */
  readonly port: number;
  readonly webFolder?: string;
  /** It stays the caller's to close, after the server has stopped. */
  readonly store?: Store;
}

export interface RunningServer {
  readonly address: string;
  readonly port: number;
  /** Ends open connections too; resolves when the port is free again. */
  stop(): Promise<void>;
}

export class PortTakenError extends Error {
  readonly port: number;

  constructor(port: number) {
    super(`Port ${port} is taken by another program.`);
    this.name = 'PortTakenError';
    this.port = port;
  }
}

/** @throws PortTakenError when another program listens on the port. */
export async function startServer({
  port,
  store,
  ...appOptions
}: StartOptions): Promise<RunningServer> {
  const options =
    store === undefined ? appOptions : { ...appOptions, ...(await withRecords(store)) };
  const server = createAdaptorServer({ fetch: createApp(options).fetch });
  return new Promise((resolve, reject) => {
    server.once('error', (error: NodeJS.ErrnoException) => {
      reject(error.code === 'EADDRINUSE' ? new PortTakenError(port) : error);
    });
    server.listen(port, HOST, () => {
      const { port: openPort } = server.address() as AddressInfo;
      resolve({
        address: `http://${HOST}:${openPort}/`,
        port: openPort,
        stop: () =>
          new Promise((stopped) => {
            server.close(() => stopped());
            if ('closeAllConnections' in server) server.closeAllConnections();
          }),
      });
    });
  });
}

/** Loaded only for a server that has a store: what describes and checks records is a second's work to load. */
async function withRecords(store: Store): Promise<Pick<AppOptions, 'addRecords'>> {
  const { recordRoutes } = await import('./api/record-routes.ts');
  return { addRecords: (app) => app.route('/', recordRoutes(store)) };
}
