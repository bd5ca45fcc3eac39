/** Starts the real service on a free port and asks it over HTTP, as a browser would. */
import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { networkInterfaces, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PortTakenError, type RunningServer, startServer } from './index.ts';

let webFolder: string;
let server: RunningServer;

beforeAll(async () => {
  webFolder = mkdtempSync(join(tmpdir(), 'fallwright-web-'));
  mkdirSync(join(webFolder, 'assets'));
  writeFileSync(join(webFolder, 'index.html'), '<!doctype html><title>Page</title>');
  writeFileSync(join(webFolder, 'assets', 'app-3f2a.js'), 'export {};');
  writeFileSync(join(webFolder, 'assets', 'app-3f2a.css'), 'body{}');
  writeFileSync(join(webFolder, 'assets', 'face-11aa.woff2'), 'not really a font');
  writeFileSync(join(webFolder, 'app.webmanifest'), '{}');
  writeFileSync(join(webFolder, 'sw.js'), 'self.skipWaiting;');
  writeFileSync(join(webFolder, '.built-from'), 'a note of the build');
  server = await startServer({ port: 0, webFolder });
});

afterAll(async () => {
  await server.stop();
  rmSync(webFolder, { recursive: true });
});

function get(path: string, init?: RequestInit): Promise<Response> {
  return fetch(new URL(path, server.address), init);
}

describe('the web app', () => {
  test('the front page is the built page and is asked for anew each time', async () => {
    const response = await get('/');
    expect(response.status).toBe(200);
    expect(response.headers.get('content-type')).toMatch(/^text\/html/);
    expect(response.headers.get('cache-control')).toBe('no-cache');
    expect(await response.text()).toContain('<title>Page</title>');
  });

  test.each(['/sites/larkrise-spring', '/rams'])(
    '%s, an address of the app itself, is the same page',
    async (path) => {
      const response = await get(path);
      expect(response.status).toBe(200);
      expect(response.headers.get('content-type')).toMatch(/^text\/html/);
      expect(response.headers.get('cache-control')).toBe('no-cache');
      expect(await response.text()).toContain('<title>Page</title>');
    },
  );

  test.each([
    ['/assets/app-3f2a.js', /^text\/javascript/],
    ['/assets/app-3f2a.css', /^text\/css/],
    ['/assets/face-11aa.woff2', /^font\/woff2/],
  ])('%s has its content type and is kept for good', async (path, type) => {
    const response = await get(path);
    expect(response.status).toBe(200);
    expect(response.headers.get('content-type')).toMatch(type);
    expect(response.headers.get('cache-control')).toContain('immutable');
  });

  test.each([
    ['/app.webmanifest', /^application\/manifest\+json/],
    ['/sw.js', /^text\/javascript/],
  ])('%s, whose name has no hash, is asked for anew', async (path, type) => {
    const response = await get(path);
    expect(response.status).toBe(200);
    expect(response.headers.get('content-type')).toMatch(type);
    expect(response.headers.get('cache-control')).toBe('no-cache');
  });

  test('an asset that is not there is not answered with a page, nor kept', async () => {
    const response = await get('/assets/app-0000.js');
    expect(response.status).toBe(404);
    expect(response.headers.get('cache-control')).toBeNull();
  });

  test.each(['/.built-from', '/..%2f..%2fetc%2fpasswd', '/assets/..%2f.built-from'])(
    '%s is not given out',
    async (path) => {
      const response = await get(path);
      expect(await response.text()).not.toMatch(/a note of the build|root:/);
    },
  );
});

describe('safety', () => {
  test.each(['/', '/api/health', '/nothing.png'])('%s carries the strict headers', async (path) => {
    const { headers } = await get(path);
    const policy = headers.get('content-security-policy');
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("worker-src 'self'");
    expect(policy).not.toContain('unsafe');
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('referrer-policy')).toBe('no-referrer');
  });

  test('only this machine can reach it', async () => {
    const outside = Object.values(networkInterfaces())
      .flatMap((addresses) => addresses ?? [])
      .filter((address) => address.family === 'IPv4' && !address.internal);
    for (const { address } of outside) {
      await expect(fetch(`http://${address}:${server.port}/api/health`)).rejects.toThrow();
    }
    expect(server.address).toBe(`http://127.0.0.1:${server.port}/`);
  });
});

describe('/api', () => {
  test('health says that it runs', async () => {
    const response = await get('/api/health');
    expect(response.headers.get('cache-control')).toBe('no-store');
    expect(await response.json()).toMatchObject({ name: 'fallwright', status: 'ok' });
  });

  test('an unknown address is a problem in JSON, not a page', async () => {
    const response = await get('/api/no-such-thing', { method: 'POST' });
    expect(response.status).toBe(404);
    expect(await response.json()).toEqual({
      problem: 'There is nothing at POST /api/no-such-thing.',
    });
  });
});

describe('the port', () => {
  test('one that is taken is named in the error', async () => {
    await expect(startServer({ port: server.port })).rejects.toThrow(PortTakenError);
    await expect(startServer({ port: server.port })).rejects.toThrow(String(server.port));
  });

  test('it is free again after stop, even with a connection held open', async () => {
    const first = await startServer({ port: 0 });
    await fetch(`${first.address}api/health`, { headers: { connection: 'keep-alive' } });
    await first.stop();
    const second = await startServer({ port: first.port });
    expect(second.port).toBe(first.port);
    await second.stop();
  });
});

describe('the program', () => {
  function run(...args: string[]): ChildProcess {
    return spawn(process.execPath, [join(import.meta.dirname, 'main.ts'), ...args], {
      stdio: ['ignore', 'pipe', 'pipe'],
    });
  }

  async function outcome(program: ChildProcess): Promise<{ code: number | null; errors: string }> {
    let errors = '';
    program.stderr?.on('data', (text) => {
      errors += text;
    });
    const [code] = await once(program, 'close');
    return { code, errors };
  }

  test.each(['SIGINT', 'SIGTERM'] as const)(
    'it says where it is, and ends cleanly on %s',
    async (signal) => {
      const program = run('--port', '0', '--api-only');
      const [output] = await once(program.stdout as NodeJS.ReadableStream, 'data');
      const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(String(output))?.[0];
      expect((await fetch(`${address}api/health`)).status).toBe(200);
      program.kill(signal);
      expect(await outcome(program)).toEqual({ code: 0, errors: '' });
      await expect(fetch(`${address}api/health`)).rejects.toThrow();
    },
  );

  test('it keeps records over a stop, and a second one on the same data is refused', async () => {
    const data = join(webFolder, 'data');
    const start = async (): Promise<{ program: ChildProcess; address: string }> => {
      const program = run('--port', '0', '--api-only', '--data', data);
      let said = '';
      for await (const text of program.stdout ?? []) {
        said += text;
        const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(said)?.[0];
        if (address !== undefined) return { program, address };
      }
      throw new Error(`it did not start: ${said}`);
    };
    const first = await start();
    const save = await fetch(`${first.address}api/records/site/larkrise`, {
      method: 'PUT',
      headers: { 'Content-Type': 'application/json', 'If-None-Match': '*' },
      body: JSON.stringify({
        document: { fallwright: 'site@1', name: 'Larkrise spring' },
        changed: 'begun',
        author: 'Ann',
        device: 'desk',
        operation: '1',
      }),
    });
    expect(save.status).toBe(200);
    const refused = await outcome(run('--port', '0', '--api-only', '--data', data));
    expect(refused.code).toBe(1);
    expect(refused.errors).toMatch(/are open in another Fallwright\. Use that one/);
    first.program.kill('SIGTERM');
    expect(await once(first.program, 'exit')).toEqual([0, null]);

    const second = await start();
    const read = await fetch(`${second.address}api/records/site/larkrise`);
    expect(await read.json()).toMatchObject({ revision: 1, document: { name: 'Larkrise spring' } });
    second.program.kill('SIGTERM');
    expect(await once(second.program, 'exit')).toEqual([0, null]);
  });

  test('it ends with the launcher that started it', async () => {
    const program = spawn(
      process.execPath,
      [join(import.meta.dirname, 'main.ts'), '--port=0', '--api-only'],
      {
        stdio: ['ignore', 'pipe', 'pipe', 'ipc'],
      },
    );
    await once(program.stdout as NodeJS.ReadableStream, 'data');
    program.disconnect();
    expect(await once(program, 'exit')).toEqual([0, null]);
  });

  test('a port that is taken is a clear error', async () => {
    const other = createServer().listen(0, '127.0.0.1');
    await once(other, 'listening');
    const address = other.address();
    const port = typeof address === 'object' ? String(address?.port) : '';
    const { code, errors } = await outcome(run('--port', port, '--api-only'));
    other.close();
    expect(code).toBe(1);
    expect(errors).toBe(
      `Port ${port} is taken by another program. End that program, or name another port: --port N.\n`,
    );
  });

  test('a folder named with --web is given out', async () => {
    const program = run('--port', '0', '--web', webFolder);
    const [output] = await once(program.stdout as NodeJS.ReadableStream, 'data');
    const address = /http:\/\/127\.0\.0\.1:\d+\//.exec(String(output))?.[0];
    expect(await (await fetch(String(address))).text()).toContain('<title>Page</title>');
    program.kill('SIGTERM');
    expect(await outcome(program)).toEqual({ code: 0, errors: '' });
  });

  test('a folder without a web app is a clear error', async () => {
    const folder = join(webFolder, 'assets');
    const { code, errors } = await outcome(run('--port', '0', '--web', folder));
    expect(code).toBe(1);
    expect(errors).toBe(`There is no built web app in ${folder}: it has no index.html.\n`);
  });

  test.each(['eighty', '70000', '-1', ''])('--port %j is refused with the rule', async (port) => {
    const { code, errors } = await outcome(run(`--port=${port}`, '--api-only'));
    expect(code).toBe(1);
    expect(errors).toContain('--port must be a whole number from 0 to 65535');
  });
});
