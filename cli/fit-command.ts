/** Fits a ram of a range to its bench tests, and writes it back as a new revision when asked. */
import { readFile, rename, writeFile } from 'node:fs/promises';
import { styleText } from 'node:util';
import { fitRam, type RamFit } from '@fallwright/engine';
import { benchCautions, fitInWords, fitRecord, fitRows, untoldInWords } from '@fallwright/papers';
import {
  type BenchTest,
  installationOf,
  LONGEST_RANGE,
  LONGEST_TEST,
  type Range,
  type RangeRam,
  readRange,
  readTest,
  referenceTo,
  SITE_FORMAT,
  settingsOfRam,
  siteFromData,
  withFittedRam,
  writeRange,
} from '@fallwright/records';
import type { System } from '@fallwright/units';
import { BadInput } from './bad-input.ts';
import { columns } from './columns.ts';
import { nameOf, textOf } from './read-file.ts';
import { wrapped } from './wrap.ts';

export interface FitCommandOptions {
  readonly ram?: string;
  readonly write?: boolean;
  readonly json?: boolean;
  readonly units?: System;
}

export async function fitCommand(
  rangeFile: string,
  testFiles: readonly string[],
  options: FitCommandOptions,
): Promise<void> {
  const range = await rangeIn(rangeFile);
  const tests: BenchTest[] = [];
  for (const file of testFiles) tests.push(await testIn(file));
  const ram = ramOf(range, rangeFile, options.ram, tests);
  const settings = tests.flatMap((test) => settingsOfRam(test, ram));
  const fit = fitRam(settings, { leaveOneOut: true });
  const system = options.units ?? tests[0]?.units ?? 'metric';
  const written = options.write === true && fit.kind === 'fitted';
  const next = fit.kind === 'fitted' ? revisionOf(range, ram, fit, tests) : undefined;
  if (written && next) await writeBack(rangeFile, next.range);
  const news = !next
    ? []
    : written
      ? [
          `${referenceTo(next.ram)} stands in ${nameOf(rangeFile)}; ${referenceTo(ram)} is kept under it. Notes in the file behind # are not.`,
        ]
      : [`Nothing was written. With --write it becomes ${referenceTo(next.ram)}.`];
  const output = options.json
    ? JSON.stringify(
        {
          ...fitRecord(fit),
          ram: referenceTo(ram),
          written: written ? referenceTo(next?.ram ?? ram) : null,
        },
        null,
        2,
      )
    : page(fit, ram, news, { tests, system });
  process.stdout.write(`${output.replaceAll('\u00a0', ' ')}\n`);
}

function revisionOf(
  range: Range,
  ram: RangeRam,
  fit: Extract<RamFit, { kind: 'fitted' }>,
  tests: readonly BenchTest[],
) {
  const names = tests.map((test, i) => test.name ?? `test ${i + 1}`).join('; ');
  const date = tests
    .flatMap((test) => test.date ?? [])
    .sort()
    .at(-1);
  return withFittedRam(range, {
    id: ram.id,
    before: plainRam(ram),
    fit,
    change: `fitted to ${names}`,
    ...(date !== undefined && { date }),
  });
}

/** The ram as it is built, without any tuning. A ram needs a place to be put together; this one does not show in it. */
function plainRam(ram: RangeRam) {
  const site = siteFromData({
    fallwright: SITE_FORMAT,
    source: { flow: 'plenty' },
    fall: '2 m',
    lift: '10 m',
    drive: { pipe: 'galvanised steel DN25', length: '10 m' },
    ram: 'DN25',
  });
  if (!site.ok) throw new Error('the plain place must be a site');
  const { ram: parts } = ram;
  return installationOf({ ...site.site, ram: parts }).installation.ram;
}

/** A file that is half written is worse than none: the new text takes the old one's place at once. */
async function writeBack(file: string, range: Range): Promise<void> {
  const part = `${file}.part`;
  await writeFile(part, writeRange(range));
  await readFile(part);
  await rename(part, file);
}

async function rangeIn(file: string): Promise<Range> {
  const read = readRange(await textOf(file, { longest: LONGEST_RANGE, called: 'range file' }));
  if (!read.ok) throw new BadInput(nameOf(file), read.problems);
  return read.range;
}

async function testIn(file: string): Promise<BenchTest> {
  const read = readTest(await textOf(file, { longest: LONGEST_TEST, called: 'test file' }));
  if (!read.ok) throw new BadInput(nameOf(file), read.problems);
  return read.test;
}

/** The ram that is named, or that the tests name, or the only one. */
function ramOf(
  range: Range,
  file: string,
  asked: string | undefined,
  tests: readonly BenchTest[],
): RangeRam {
  const named = tests.flatMap(({ ram }) =>
    typeof ram === 'object' && ram.range !== undefined ? [ram.range.replace(/@.*/, '')] : [],
  );
  const id = asked ?? named[0] ?? (range.rams.length === 1 ? range.rams[0]?.id : undefined);
  const found = range.rams.find((one) => one.id === id);
  const other = named.find((one) => one !== id);
  if (found && other !== undefined) {
    throw new BadInput(nameOf(file), [
      {
        field: '',
        message: `One test is of ${other}, and ${found.id} is to be fitted. Leave that test out.`,
      },
    ]);
  }
  if (found) return found;
  const ids = range.rams.map((one) => one.id).join(', ');
  const message =
    id === undefined
      ? `Which ram was tested? Name it with --ram: ${ids}.`
      : `There is no ram ${id} in this range. It has: ${ids}.`;
  throw new BadInput(nameOf(file), [{ field: '', message }]);
}

function page(
  fit: RamFit,
  ram: RangeRam,
  news: readonly string[],
  { tests, system }: { readonly tests: readonly BenchTest[]; readonly system: System },
): string {
  const readings = tests.reduce((sum, test) => sum + test.readings.length, 0);
  const rows = fitRows(fit, system);
  const sections = [
    [
      bold(`${ram.name} (${referenceTo(ram)})`),
      ...wrapped(
        `${tests.length} ${tests.length === 1 ? 'test' : 'tests'}, ${readings} ${readings === 1 ? 'setting' : 'settings'}.`,
      ),
    ],
    section(fit.kind === 'fitted' ? 'Fitted' : 'Not fitted', fitInWords(fit)),
    rows.length === 0
      ? []
      : columns(
          [
            { head: '' },
            { head: 'before', align: 'right' },
            { head: 'fitted', align: 'right' },
            { head: '90 % limits', align: 'right' },
          ],
          rows.map(({ what, before, after, limits }) => [what, before, after, limits]),
          { indent: ' ' },
        ),
    section('Not told by these tests, and left as it is', untoldInWords(fit.untold)),
    section('The range file', news),
    section('Cautions', benchCautions()),
  ];
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function section(title: string, texts: readonly string[]): readonly string[] {
  return texts.length === 0
    ? []
    : [bold(title), ...texts.flatMap((text) => wrapped(text, { first: '  - ', indent: '    ' }))];
}

function bold(text: string): string {
  return styleText('bold', text);
}
