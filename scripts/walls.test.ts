import { describe, expect, test } from 'vitest';
import { breaches } from './walls.ts';

function messages(file: string, source: string): string {
  return breaches(file, source)
    .map(({ message }) => message)
    .join('; ');
}

describe('between the packages', () => {
  test.each([
    ['engine/site/a.ts', `import { x } from '@fallwright/units';`, 'engine may not import units'],
    ['units/a.ts', `import { x } from '@fallwright/engine';`, 'write `import type`'],
    ['units/a.ts', `import { type X } from '@fallwright/engine';`, 'write `import type`'],
    ['records/a.ts', `import { x } from '@fallwright/web';`, 'records may not import web'],
    ['web/src/a.tsx', `import { x } from '@fallwright/server';`, 'web may not import server'],
    ['server/a.ts', `import 'fallwright';`, 'server may not import cli'],
    ['cli/a.ts', `export { x } from '@fallwright/server';`, 'cli may not import server'],
    ['cli/a.ts', `const x = await import('@fallwright/web');`, 'cli may not import web'],
    ['records/a.ts', `type X = import('@fallwright/web').X;`, 'records may not import web'],
    ['cli/a.ts', `import { x } from '@fallwright/checks';`, 'cli may not import checks'],
    ['cli/a.ts', `import { x } from '@fallwright/engine/site/a.ts';`, 'from the entry'],
    ['cli/a.ts', `import { x } from '../engine/index.ts';`, 'leaves cli'],
    ['surprise/a.ts', `import { x } from './b.ts';`, 'not in the table of packages'],
  ])('%s: %s', (file, source, message) => {
    expect(messages(file, source)).toContain(message);
  });

  test.each([
    ['units/a.ts', `import type { Metre } from '@fallwright/engine';`],
    [
      'records/a.ts',
      `import { x } from '@fallwright/engine'; import { y } from '@fallwright/units';`,
    ],
    ['cli/a.ts', `import { x } from '@fallwright/records'; import { join } from 'node:path';`],
    ['checks/a.ts', `import { x } from '@fallwright/engine'; import { test } from 'vitest';`],
    ['web/playwright.config.ts', `import { findChromium } from '../scripts/find-chromium.mjs';`],
  ])('%s may: %s', (file, source) => {
    expect(breaches(file, source)).toEqual([]);
  });
});

describe('what touches a file, socket, screen or clock', () => {
  test.each([
    ['engine/pipes/a.ts', `import { readFileSync } from 'node:fs';`, 'may not import node:fs'],
    ['records/a.ts', `import { readFileSync } from 'fs';`, 'may not import fs'],
    ['engine/pipes/a.ts', `import { z } from 'zod';`, 'may not import zod'],
    ['papers/a.ts', `import React from 'react';`, 'may not import react'],
    ['web/src/state/a.ts', `import { useState } from 'react';`, 'without a screen'],
    ['web/src/a.ts', `import { join } from 'node:path';`, 'may not import node:path'],
    ['engine/pipes/a.ts', `import { test } from 'vitest';`, 'only a test may import vitest'],
    ['engine/cycle/a.ts', 'const now = Date.now();', 'Date.now'],
    ['engine/cycle/a.ts', `const now = Date['now']();`, 'Date.now'],
    ['engine/cycle/a.ts', 'const now = new Date();', 'new Date()'],
    ['engine/cycle/a.ts', 'const now = Date();', 'Date()'],
    ['engine/cycle/a.ts', 'const dice = Math.random();', 'Math.random'],
  ])('%s: %s', (file, source, message) => {
    expect(messages(file, source)).toContain(message);
  });

  test('a test beside the engine may use test tools and read its fixtures', () => {
    const source = `import { readFileSync } from 'node:fs'; import { test } from 'vitest'; Math.random();`;
    expect(breaches('engine/pipes/a.test.ts', source)).toEqual([]);
  });

  test('words in comments and strings are only words', () => {
    const source = `// import x from 'zod'; Math.random()\nexport const a = "Date.now() in litresPerDay";`;
    expect(breaches('engine/pipes/a.ts', source)).toEqual([]);
  });
});

describe('inside the engine', () => {
  test.each([
    ['engine/water/a.ts', '../pipes/b.ts', 'water may not import pipes, which stands below it'],
    ['engine/cycle/a.ts', '../site/b.ts', 'cycle may not import site'],
    ['engine/numerics/a.ts', '../index.ts', 'not in the order of folders'],
    ['engine/bench/a.ts', '../site/b.ts', 'bench may not import site'],
    ['engine/bench/a.ts', '../compare/b.ts', 'bench may not import compare'],
    ['engine/weather/a.ts', '../water/b.ts', 'not in the order of folders'],
    ['engine/quantities.ts', './numerics/b.ts', 'quantities may not import numerics'],
    ['engine/water/a.test.ts', '../pipes/b.ts', 'water may not import pipes'],
  ])('%s importing %s', (file, target, message) => {
    expect(messages(file, `import { x } from '${target}';`)).toContain(message);
  });

  test.each([
    ['engine/water/a.ts', '../quantities.ts'],
    ['engine/water/a.ts', './b.ts'],
    ['engine/bench/a.ts', '../cycle/b.ts'],
    ['engine/diagnose/a.ts', '../bench/b.ts'],
    ['engine/index.ts', './diagnose/b.ts'],
  ])('%s may import %s', (file, target) => {
    expect(breaches(file, `import { x } from '${target}';`)).toEqual([]);
  });
});

describe('names in the engine', () => {
  test.each([
    'boreMillimetres',
    'litresPerDay',
    'LIFT_FEET',
    'gaugePsi',
    'ratingBar',
    'boreMm',
    'minutesToSettle',
    'beatsPerMinute',
  ])('%s carries a unit', (name) => {
    const message = messages(
      'engine/pipes/a.ts',
      `export interface A { readonly ${name}: number }`,
    );
    expect(message).toContain(`${name} carries a unit`);
    expect(breaches('units/a.ts', `export const ${name} = 1;`)).toEqual([]);
  });

  test.each(['innerDiameter', 'footValve', 'barrel', 'daubuissonEfficiency', 'Metre', 'Second'])(
    '%s does not',
    (name) => {
      expect(breaches('engine/pipes/a.ts', `export const ${name} = 1;`)).toEqual([]);
    },
  );
});

test('a published table in the engine keeps the unit that its source prints', () => {
  const source = 'export const POUND_PER_SQUARE_INCH = 6894.757;';
  expect(breaches('engine/pipes/tables/a.ts', source)).toEqual([]);
  expect(messages('engine/pipes/a.ts', source)).toContain('carries a unit');
});

test('export * is a breach anywhere', () => {
  expect(messages('cli/a.ts', `export * from './b.ts';`)).toContain('list the names');
});

test('a breach says file and line', () => {
  const [breach] = breaches('engine/water/a.ts', `\n\nimport { x } from '../pipes/b.ts';`);
  expect(breach).toMatchObject({ file: 'engine/water/a.ts', line: 3 });
});

test('a file that cannot be parsed is reported, not passed over', () => {
  expect(messages('cli/a.ts', 'const = ;')).toContain('cannot be parsed');
});
