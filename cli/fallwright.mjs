#!/usr/bin/env node
/**
 * Starts the command line program, main.ts, on a Node.js that runs TypeScript as it is.
 *
 * On an older Node.js it runs itself again with the one that npm brought into node_modules. So this
 * file is plain JavaScript for Node 18 and later, and stands alone.
 */
import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import * as nodeModule from 'node:module';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

const [major = 0, minor = 0] = process.versions.node.split('.').map(Number);

if (major > 22 || (major === 22 && minor >= 18)) {
  // What was compiled once is kept in the clone: each later start takes half as long. Where nothing can be kept it only takes longer.
  nodeModule.enableCompileCache?.(
    join(import.meta.dirname, '..', 'node_modules', '.cache', 'fallwright'),
  );
  await import('./main.ts');
} else {
  const node = broughtNode();
  if (node === undefined) {
    console.error(
      `fallwright needs Node.js 24 (22.18 at the oldest); this is ${process.versions.node}.\n` +
        'On 64-bit Linux npm brings its own copy: run `npm ci --include=optional` in the clone.\n' +
        'Elsewhere install Node.js 24, then try again.',
    );
    process.exitCode = 1;
  } else {
    runAgainWith(node);
  }
}

/**
 * The copy of Node.js in the nearest node_modules above this file.
 * @returns {string | undefined}
 */
function broughtNode() {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (true) {
    const node = join(folder, 'node_modules', '.bin', 'node');
    if (existsSync(node)) return node;
    const parent = dirname(folder);
    if (parent === folder) return undefined;
    folder = parent;
  }
}

/** @param {string} node */
function runAgainWith(node) {
  const child = spawn(node, [fileURLToPath(import.meta.url), ...process.argv.slice(2)], {
    stdio: 'inherit',
  });
  for (const signal of /** @type {const} */ (['SIGINT', 'SIGTERM', 'SIGHUP'])) {
    process.on(signal, () => {
      // At a terminal Ctrl-C reaches the child by itself; sent twice it could cut a clean ending short.
      if (signal !== 'SIGINT' || !process.stdin.isTTY) child.kill(signal);
    });
  }
  child.on('error', (error) => {
    console.error(`fallwright could not start ${node}: ${error.message}`);
    process.exitCode = 1;
  });
  child.on('exit', (code, signal) => {
    if (signal === null) {
      process.exitCode = code ?? 1;
      return;
    }
    // End the same way as the child, so that the shell sees which signal it was.
    process.removeAllListeners(signal);
    process.kill(process.pid, signal);
  });
}
