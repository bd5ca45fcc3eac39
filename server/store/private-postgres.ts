/** A PostgreSQL server of the tests' own: in a private folder, on a free port of this machine, gone afterwards. */
import { execFileSync } from 'node:child_process';
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';

const INSTALLED = '/usr/lib/postgresql';

export interface PrivatePostgres {
  /** A new, empty database of this server. */
  readonly newDatabase: () => Promise<string>;
  readonly stop: () => void;
}

/** The folder of the newest server's programs; undefined where there is none. `psql` alone is no server. */
export function postgresPrograms(): string | undefined {
  if (!existsSync(INSTALLED)) return undefined;
  return readdirSync(INSTALLED)
    .sort((a, b) => Number(b) - Number(a))
    .map((version) => join(INSTALLED, version, 'bin'))
    .find((folder) => existsSync(join(folder, 'postgres')));
}

export async function startPostgres(programs: string): Promise<PrivatePostgres> {
  const folder = mkdtempSync(join(tmpdir(), 'fallwright-postgres-'));
  const port = await freePort();
  const data = join(folder, 'data');
  const isRoot = process.getuid?.() === 0;
  // The server refuses to run as root.
  const as = isRoot ? accountOf('postgres') : undefined;
  if (as !== undefined) chownSync(folder, as.uid, as.gid);
  const run = (program: string, ...args: string[]): void => {
    execFileSync(join(programs, program), args, { ...as, stdio: 'ignore', cwd: folder });
  };
  run('initdb', '-D', data, '-U', 'fallwright', '--auth=trust', '--no-sync', '-E', 'UTF8');
  const settings = `-p ${port} -c listen_addresses=127.0.0.1 -c unix_socket_directories= -c max_connections=60`;
  run('pg_ctl', '-D', data, '-w', '-l', join(folder, 'log'), '-o', settings, 'start');

  const base = `postgres://fallwright@127.0.0.1:${port}`;
  let made = 0;
  return {
    newDatabase: async () => {
      const client = new pg.Client({ connectionString: `${base}/postgres` });
      await client.connect();
      made += 1;
      await client.query(`create database workshop_${made}`);
      await client.end();
      return `${base}/workshop_${made}`;
    },
    stop: () => {
      run('pg_ctl', '-D', data, '-m', 'immediate', '-w', 'stop');
      rmSync(folder, { recursive: true });
    },
  };
}

function accountOf(name: string): { readonly uid: number; readonly gid: number } {
  const id = (flag: string) => Number(execFileSync('id', [flag, name], { encoding: 'utf8' }));
  return { uid: id('-u'), gid: id('-g') };
}

function freePort(): Promise<number> {
  return new Promise((resolve, reject) => {
    const probe = createServer().on('error', reject);
    probe.listen(0, '127.0.0.1', () => {
      const address = probe.address();
      probe.close(() => resolve(typeof address === 'object' ? (address?.port ?? 0) : 0));
    });
  });
}
