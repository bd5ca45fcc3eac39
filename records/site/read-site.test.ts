import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { LARKRISE } from '../fixtures/larkrise.ts';
import type { Problem } from '../problem.ts';
import { readSite } from './read-site.ts';
import { siteFromData } from './site-from-data.ts';

function problemsIn(text: string): readonly Problem[] {
  const read = readSite(text);
  return read.ok ? [] : read.problems;
}

/** The short example with one thing changed. */
function changed(from: string, to: string): string {
  if (!LARKRISE.includes(from)) throw new Error(`the example has no “${from}”`);
  return LARKRISE.replace(from, to);
}

describe('the short example', () => {
  test('reads, in SI, with what was written', () => {
    const read = readSite(LARKRISE);
    if (!read.ok) throw new Error(read.problems[0]?.message);
    expect(read.warnings).toEqual([]);
    expect(read.site.fall).toEqual({ value: 1.9, text: '1.9 m', origin: 'stated' });
    expect(read.site.drive[0]?.length).toEqual({ value: 14, text: '14 m', origin: 'stated' });
    expect(read.site.delivery).toHaveLength(1);
    expect(read.site.ram).toBe('DN20');
  });

  test('reads as JSON too', () => {
    const read = readSite(
      '{"fallwright":"site@1","source":{"flow":"14 L/min"},"fall":"1.9 m","lift":"12 m","drive":[{"pipe":"PE100 SDR11 25","length":"14 m"}]}',
    );
    expect(read.ok).toBe(true);
  });

  test('reads with Windows line ends and a byte order mark', () => {
    expect(readSite(`\ufeff${LARKRISE.replaceAll('\n', '\r\n')}`).ok).toBe(true);
  });

  test('keeps how firm a number is', () => {
    const read = readSite(
      changed('fall: 1.9 m', 'fall: { value: 1.9 m ± 0.1 m, origin: measured }'),
    );
    if (!read.ok) throw new Error(read.problems[0]?.message);
    expect(read.site.fall).toEqual({
      value: 1.9,
      spread: 0.1,
      text: '1.9 m ± 0.1 m',
      origin: 'measured',
    });
  });

  test('takes a source that no ram can empty', () => {
    expect(readSite(changed('14 L/min', 'plenty')).ok).toBe(true);
  });
});

/** What is changed, and the one problem that must come of it: kind, field, line, words. */
const ONE_FAULT: readonly (readonly [string, string, Partial<Problem>, string])[] = [
  [
    'fall: 1.9 m',
    'fall: 1.9',
    { kind: 'noUnit', field: 'fall', line: 4, column: 7 },
    '1.9 what? Write the unit',
  ],
  [
    'fall: 1.9 m',
    'fall: 12 L/min',
    { kind: 'wrongKind', field: 'fall', line: 4 },
    'is a flow; the fall is a height',
  ],
  ['fall: 1.9 m', 'fall: -1.9 m', { kind: 'negative', field: 'fall' }, 'below nought'],
  ['fall: 1.9 m', 'fall: 0 m', { kind: 'outOfRange', field: 'fall' }, 'is nought'],
  ['fall: 1.9 m', 'fall: .nan', { kind: 'wrongForm', field: 'fall' }, 'must be a quantity'],
  [
    'fall: 1.9 m',
    'fall: tall',
    { kind: 'notANumber', field: 'fall' },
    'Write the fall like 1.9 m or 6 ft',
  ],
  [
    'fall: 1.9 m',
    'fall:',
    { kind: 'missing', field: 'fall', line: 4 },
    'Nothing is written for the fall',
  ],
  [
    'fall: 1.9 m\n',
    '',
    { kind: 'missing', field: 'fall', line: 1 },
    'The fall is missing: the height of the source’s surface',
  ],
  [
    'fall: 1.9 m',
    'fall: { value: 1.9, origin: measured }',
    { kind: 'noUnit', field: 'fall.value' },
    '1.9 what?',
  ],
  [
    'fall: 1.9 m',
    'fall: { value: 1.9 m, origin: guessed }',
    { kind: 'unknownWord', field: 'fall.origin' },
    'Write measured, stated, table or assumed',
  ],
  [
    'lift: 12 m',
    'lift: 1.2 m',
    { kind: 'contradiction', field: 'lift', line: 7 },
    'The lift is 1.2\u00a0m but the fall is 1.9\u00a0m. A ram lifts above its source.',
  ],
  ['lift: 12 m', 'lift: 1.9 m', { kind: 'contradiction', field: 'lift' }, 'and so is the fall'],
  [
    'length: 14 m',
    'lenght: 14 m, length: 14 m',
    { kind: 'unknownField', field: 'drive[0].lenght', line: 5, column: 34 },
    'Did you mean length?',
  ],
  [
    'length: 14 m',
    'length: 1.2 m',
    { kind: 'contradiction', field: 'drive' },
    'It must be at least as long as the fall',
  ],
  [
    'pipe: PE100 SDR11 25',
    'pipe: PE100 SDR11 26',
    { kind: 'unknownWord', field: 'drive[0].pipe' },
    'Did you mean PE100 SDR11',
  ],
  [
    'pipe: PE100 SDR11 25',
    'material: PVC hose, bore: 0 mm',
    { kind: 'outOfRange', field: 'drive[0].bore' },
    'The bore is nought',
  ],
  [
    'pipe: PE100 SDR11 25',
    'material: cheese, bore: 25 mm',
    { kind: 'unknownWord', field: 'drive[0].material' },
    'is no material we know',
  ],
  [
    'pipe: PE100 SDR11 25',
    'material: PVC hose',
    { kind: 'missing', field: 'drive[0]' },
    'The bore of the pipe is missing',
  ],
  [
    'pipe: PE100 SDR11 25, ',
    '',
    { kind: 'missing', field: 'drive[0]' },
    'Which pipe it is is missing',
  ],
  [
    'pipe: PE100 SDR11 25',
    'pipe: PE100 SDR11 25, bore: 20 mm',
    { kind: 'contradiction', field: 'drive[0].bore' },
    'not both',
  ],
  [
    'length: 14 m }',
    'length: 14 m, fittings: [constructor] }',
    { kind: 'unknownWord', field: 'drive[0].fittings[0]' },
    'No fitting is called',
  ],
  [
    'length: 14 m }',
    'length: 14 m, air: 10 mL at 20 m }',
    { kind: 'contradiction', field: 'drive[0].air' },
    'Count from the upper end',
  ],
  [
    'drive: [ { pipe: PE100 SDR11 25, length: 14 m } ]',
    'drive: []',
    { kind: 'missing', field: 'drive' },
    'empty list',
  ],
  [
    'ram: DN20',
    'ram: 20',
    { kind: 'noUnit', field: 'ram', line: 6 },
    'Write the nominal size of the ram as DN20',
  ],
  ['ram: DN20', 'ram: DN21', { kind: 'unknownWord', field: 'ram' }, 'Write DN15, DN20'],
  [
    'ram: DN20',
    'ram: { typical: DN20, wieght: 90 g }',
    { kind: 'unknownField', field: 'ram.wieght' },
    'Did you mean weight?',
  ],
  [
    'ram: DN20',
    'ram: { bore: 20 mm, stroke: 3 mm, weight: 90 g }',
    { kind: 'missing', field: 'ram' },
    'The seat of the waste valve is missing',
  ],
  [
    'ram: DN20',
    'ram: { typical: DN20, weight: 90 g, wasteValve: { weight: 80 g } }',
    { kind: 'contradiction', field: 'ram.weight' },
    'written twice',
  ],
  [
    'ram: DN20',
    'ram: { typical: DN20, wasteValve: { kind: sprung } }',
    { kind: 'missing', field: 'ram.wasteValve' },
    'forceOpen',
  ],
  [
    'source: { flow: 14 L/min }',
    'source: {}',
    { kind: 'missing', field: 'source' },
    'What the source gives is missing',
  ],
  [
    'source: { flow: 14 L/min }',
    'source: { store: pool, volume: 3 m3 }',
    { kind: 'missing', field: 'source' },
    'The inflow of the pool is missing',
  ],
  [
    'source: { flow: 14 L/min }',
    'source: 14 L/min',
    { kind: 'wrongForm', field: 'source' },
    'such as { flow: 14 L/min }',
  ],
  [
    'source: { flow: 14 L/min }',
    'source: { flow: 14 L/min, store: tank, volume: 1 m3 }',
    { kind: 'contradiction', field: 'source.flow' },
    'Write inflow',
  ],
  [
    'name: Larkrise spring',
    'name: 12',
    { kind: 'wrongForm', field: 'name', line: 2 },
    'Put it in quotes: "12"',
  ],
  [
    'name: Larkrise spring',
    'head: 1.9 m',
    { kind: 'unknownField', field: 'head' },
    'is the fall: fall: 1.9 m',
  ],
  [
    'name: Larkrise spring',
    '__proto__: { polluted: yes }',
    { kind: 'unknownField', field: '__proto__' },
    'no field called __proto__',
  ],
  [
    'name: Larkrise spring',
    'constructor: 3',
    { kind: 'unknownField', field: 'constructor' },
    'no field called constructor',
  ],
  [
    'name: Larkrise spring',
    'fall: 2 m',
    { kind: 'duplicateField', field: 'fall', line: 4 },
    'written twice',
  ],
  [
    'fallwright: site@1',
    'fallwright: site@2',
    { kind: 'wrongFormat', field: 'fallwright', line: 1 },
    'site@2: this file was written by a newer Fallwright',
  ],
  [
    'fallwright: site@1',
    'fallwright: ram@1',
    { kind: 'wrongFormat', field: 'fallwright' },
    'is a ram and not a site',
  ],
  [
    'fallwright: site@1\n',
    '',
    { kind: 'missing', field: 'fallwright', line: 1 },
    'fallwright: site@1',
  ],
  [
    'demand: 900 L/day',
    'demand: 900 L',
    { kind: 'wrongKind', field: 'demand' },
    'is a volume; the demand is an amount for each day',
  ],
  [
    'demand: 900 L/day',
    'temperature: 80 °C',
    { kind: 'outOfRange', field: 'temperature' },
    'outside 0',
  ],
];

describe('one fault gives one problem, with its place and what to write', () => {
  for (const [from, to, problem, words] of ONE_FAULT) {
    test(`${to.trim() || `no ${from.trim()}`}`, () => {
      const problems = problemsIn(changed(from, to));
      expect(problems).toHaveLength(1);
      expect(problems[0]).toMatchObject(problem);
      expect(problems[0]?.message).toContain(words);
      expect(problems[0]?.line).toBeGreaterThan(0);
    });
  }
});

test('every problem is listed, in the order of the lines', () => {
  const problems = problemsIn(`fallwright: site@1
source: { flow: 14 }
fall: 4 m
drive: [ { pipe: no such, lenght: 14 m } ]
lift: 3.2 m
demand: 900 L
`);
  expect(problems.map(({ line, field, kind }) => [line, field, kind])).toEqual([
    [2, 'source.flow', 'noUnit'],
    [4, 'drive[0].length', 'missing'],
    [4, 'drive[0].pipe', 'unknownWord'],
    [4, 'drive[0].lenght', 'unknownField'],
    [5, 'lift', 'contradiction'],
    [6, 'demand', 'wrongKind'],
  ]);
});

test('a decimal comma inside braces is explained', () => {
  const messages = problemsIn(changed('14 L/min', '14,5 L/min')).map(({ message }) => message);
  expect(messages.join(' ')).toContain('A comma inside { } separates fields');
});

describe('what is no site file', () => {
  const NO_SITE: readonly (readonly [string, string, string])[] = [
    ['an empty file', ' \n', 'This file is empty'],
    ['a text', 'The ram stands below the weir.\nIt beats.', 'not a site file'],
    ['a list', '- fall: 1.9 m', 'This file is a list'],
    ['only a comment', '# nothing yet\n', 'holds no fields'],
    ['a binary file', '\u007fELF\u0002\u0001\u0000\u0000', 'not a text file'],
    ['bytes that are not UTF-8', 'fall: 1.9 \ufffdm', 'not a text file'],
    ['a huge file', `notes: "${'x'.repeat(70_000)}"`, 'Is it the right file?'],
    ['a deep file', '['.repeat(60_000), 'nested or repeated'],
    ['aliases that multiply', aliasBomb(), 'nested or repeated'],
    ['broken YAML', 'fallwright: site@1\ndrive: [ { pipe: x\nfall: 1 m', 'not closed'],
    ['a tab for indent', 'fallwright: site@1\nsource:\n\tflow: 1 L/min', 'Indent with spaces'],
    ['two documents', `${LARKRISE}---\n${LARKRISE}`, 'one site in one file'],
  ];
  for (const [name, text, words] of NO_SITE) {
    test(name, () => {
      const problems = problemsIn(text);
      expect(problems.length).toBeGreaterThan(0);
      expect(problems.length).toBeLessThan(8);
      expect(problems.map(({ message }) => message).join(' ')).toContain(words);
      for (const { line } of problems) expect(line).toBeGreaterThan(0);
    });
  }
});

function aliasBomb(): string {
  const lines = ['a0: &a0 [x, x, x, x, x, x, x, x, x]'];
  for (let level = 1; level < 9; level += 1) {
    lines.push(
      `a${level}: &a${level} [${Array(9)
        .fill(`*a${level - 1}`)
        .join(', ')}]`,
    );
  }
  return lines.join('\n');
}

describe('values that are rare but possible', () => {
  const RARE: readonly (readonly [string, string, string])[] = [
    ['fall: 1.9 m', 'fall: 0.3 m', 'rarely so small'],
    ['fall: 1.9 m', 'fall: 1.9 m ± 1.5 m', 'Measure it again'],
    ['lift: 12 m', 'lift: 80 m', 'over 30 times the fall'],
    ['length: 160 m', 'length: 8 m', 'rises 12'],
  ];
  for (const [from, to, words] of RARE) {
    test(`${to} is read with a warning`, () => {
      const read = readSite(changed(from, to));
      if (!read.ok) throw new Error(read.problems[0]?.message);
      expect(read.warnings.map(({ message }) => message).join(' ')).toContain(words);
    });
  }
});

describe('text that was written to hurt is refused in good time', () => {
  const HURTFUL: readonly (readonly [string, string])[] = [
    ['a long pipe name', changed('PE100 SDR11 25', `"${'PE 100 '.repeat(8000)}"`)],
    ['thousands of pipes', changed('[ {', `[ ${'{ pipe: XX, length: 5 }, '.repeat(2500)}{`)],
    [
      'thousands of fields',
      LARKRISE + Array.from({ length: 6000 }, (_, i) => `k${i}: 1\n`).join(''),
    ],
    ['deep maps', '{a: '.repeat(16_000)],
  ];
  for (const [name, text] of HURTFUL) {
    test(name, () => {
      expect(text.length).toBeLessThan(64 * 1024);
      expect(problemsIn(text).length).toBeGreaterThan(0);
    }, 20_000);
  }
});

test('data from a form reads as the file does, without lines', () => {
  expect(siteFromData({ fallwright: 'site@1', fall: 3 })).toMatchObject({ ok: false });
  const read = siteFromData({
    fallwright: 'site@1',
    source: { flow: 'plenty' },
    fall: '2 m',
    lift: '10 m',
    drive: { pipe: 'PE100 SDR11 25', length: '12 m' },
  });
  expect(read.ok).toBe(true);
});

test('no text makes the reader throw', () => {
  const lines = LARKRISE.split('\n');
  const line = fc.oneof(fc.constantFrom(...lines), fc.string());
  fc.assert(
    fc.property(fc.array(line), (some) => {
      const read = readSite(some.join('\n'));
      if (!read.ok) expect(read.problems.length).toBeGreaterThan(0);
    }),
    { seed: 20260101, numRuns: 500 },
  );
});
