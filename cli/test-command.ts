/** What a bench test says: efficiencies, balance, and measured beside predicted. */
import { styleText } from 'node:util';
import { answerReading, isImpossible, type ReadingAnswer } from '@fallwright/engine';
import {
  assumptionsInWords,
  benchCautions,
  doubtInWords,
  findings,
  ratioInFigures,
  residualRows,
  testRecord,
} from '@fallwright/papers';
import {
  type Assumption,
  type BenchSetting,
  type BenchTest,
  givensOf,
  LONGEST_TEST,
  type Problem,
  readTest,
  settingsOf,
} from '@fallwright/records';
import { formatQuantity, type System, unitSystemOf } from '@fallwright/units';
import { BadInput } from './bad-input.ts';
import { columns } from './columns.ts';
import { nameOf, textOf } from './read-file.ts';
import { wrapped } from './wrap.ts';

export async function testCommand(
  file: string,
  options: { readonly json?: boolean; readonly units?: System },
): Promise<void> {
  const read = readTest(await textOf(file, { longest: LONGEST_TEST, called: 'test file' }));
  if (!read.ok) throw new BadInput(nameOf(file), read.problems);
  const { test, warnings } = read;
  const system =
    options.units ?? test.units ?? unitSystemOf(givensOf(test).map(({ given }) => given.text));
  const settings = settingsOf(test);
  const answers = settings.map((setting) => answerReading(setting));
  const output = options.json
    ? JSON.stringify(testRecord(answers, test, system), null, 2)
    : page({ test, settings, answers, warnings, system }).replaceAll('\u00a0', ' ');
  process.stdout.write(`${output}\n`);
}

interface PageOf {
  readonly test: BenchTest;
  readonly settings: readonly BenchSetting[];
  readonly answers: readonly ReadingAnswer[];
  readonly warnings: readonly Problem[];
  readonly system: System;
}

function page({ test, settings, answers, warnings, system }: PageOf): string {
  const ram = settings[0]?.installation.ram.name ?? 'ram';
  const serial = test.serial === undefined ? '' : `, number ${test.serial}`;
  const about = [test.date, test.by, test.place].filter((part) => part !== undefined).join(', ');
  const sections = [
    [
      bold(test.name ?? `Test of the ${ram}`),
      ...wrapped(`${ram}${serial}${about === '' ? '' : `; ${about}`}.`),
    ],
    section(
      'Worth checking first',
      warnings.map(({ field, message }) => `${field}: ${message}`),
    ),
    section('Measured against predicted', findings(answers, system)),
    ...answers.map((answer, index) => readingLines(answer, index, test, system)),
    section(
      'Assumed, because the file does not say',
      assumptionsInWords(assumedIn(settings), system),
    ),
    section('Cautions', benchCautions()),
  ];
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n');
}

function readingLines(
  answer: ReadingAnswer,
  index: number,
  test: BenchTest,
  system: System,
): readonly string[] {
  const { reading, efficiencies, doubts } = answer;
  const form = test.readings[index];
  const head = formatQuantity(reading.lift.value, 'height', system);
  const against = form?.backPressure
    ? `against a back pressure of ${form.backPressure.text} (${head})`
    : `to a lift of ${head}`;
  const strokes =
    reading.handStrokes === undefined
      ? []
      : [`Went on alone after ${reading.handStrokes} hand strokes.`];
  const remarks = form?.remarks === undefined ? [] : [`Remarks: ${form.remarks}`];
  const rates = efficiencies
    ? [
        `Efficiency: ${ratioInFigures(efficiencies.rankine)} by Rankine, q (h − H)/(Q H); ${ratioInFigures(efficiencies.daubuisson)} by D’Aubuisson, q h/((Q + q) H).`,
      ]
    : ['Efficiency: two of the three flows are needed for it.'];
  return [
    bold(`Reading ${index + 1}, ${against}`),
    ...residualTable(answer, system),
    ...[...rates, ...strokes, ...remarks].flatMap(item),
    ...doubts.flatMap((doubt) =>
      item(`${isImpossible(doubt) ? 'Cannot be: ' : ''}${doubtInWords(doubt, system)}`),
    ),
  ];
}

function residualTable(answer: ReadingAnswer, system: System): readonly string[] {
  const rows = residualRows(answer, system);
  if (rows.length === 0) return [];
  return columns(
    [
      { head: '' },
      { head: 'measured', align: 'right' },
      { head: 'predicted', align: 'right' },
      { head: 'gap', align: 'right' },
      { head: 'good to', align: 'right' },
      { head: '' },
    ],
    rows.map(({ what, measured, predicted, gap, goodTo, agrees }) => [
      what,
      measured,
      predicted,
      gap,
      goodTo,
      agrees ? '' : 'off',
    ]),
  );
}

/** What was assumed of rig and ram is the same at every reading, and told once. */
function assumedIn(settings: readonly BenchSetting[]): readonly Assumption[] {
  const byField = new Map<string, Assumption>();
  for (const { assumptions } of settings) {
    for (const assumption of assumptions) byField.set(assumption.field, assumption);
  }
  return [...byField.values()];
}

function section(title: string, texts: readonly string[]): readonly string[] {
  return texts.length === 0 ? [] : [bold(title), ...texts.flatMap(item)];
}

function item(text: string): readonly string[] {
  return wrapped(text, { first: '  - ', indent: '    ' });
}

function bold(text: string): string {
  return styleText('bold', text);
}
