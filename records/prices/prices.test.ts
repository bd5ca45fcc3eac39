import { readFileSync } from 'node:fs';
import { ITEM_UNITS } from '@fallwright/engine';
import * as fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { minorDigits, moneyDigits, moneyOf, readPrice } from './money.ts';
import {
  KIND_WORDS,
  PRICE_COLUMNS,
  type PriceKind,
  type PriceList,
  unitsOf,
} from './price-list.ts';
import { partSize, pipeOfSize } from './price-size.ts';
import { readPrices } from './read-prices.ts';
import { writePrices } from './write-prices.ts';

const example = readFileSync(
  new URL('../../examples/workshop/prices.csv', import.meta.url),
  'utf8',
);

function listIn(text: string): PriceList {
  const read = readPrices(text);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(read.warnings).toEqual([]);
  return read.list;
}

/** The money of a few rows under one head. */
function pricesOf(cells: readonly string[], currency = 'EUR'): readonly (number | undefined)[] {
  const rows = cells.map((cell) => `union;${cell}`).join('\n');
  return listIn(`kind;price (${currency})\n${rows}\n`).rows.map(({ price }) => price);
}

describe('money', () => {
  test('points and commas of every country', () => {
    const written = [
      '12.5',
      '12,50',
      '1,250.00',
      '1.250,00',
      '1 250,00',
      '1’250.-',
      '1,250',
      '1.250',
      '1,250,000',
      '0.5',
      '0',
      '',
    ];
    expect(pricesOf(written)).toEqual([
      1250,
      1250,
      125_000,
      125_000,
      125_000,
      125_000,
      125_000,
      125_000,
      125_000_000,
      50,
      0,
      undefined,
    ]);
  });

  test('currencies have their own smallest unit', () => {
    expect(pricesOf(['1,250', '12'], 'JPY')).toEqual([1250, 12]);
    expect(pricesOf(['1.250', '12'], 'KWD')).toEqual([1250, 12_000]);
    expect(moneyDigits(1250, 'JPY')).toBe('1250');
    expect(moneyDigits(5, 'EUR')).toBe('0.05');
  });

  test('a sum goes out as it came in', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 1e11 }),
        fc.constantFrom('EUR', 'JPY', 'KWD'),
        (money, currency) => {
          const amount = Number(moneyDigits(money, currency));
          expect(moneyOf(amount, currency)).toEqual({ ok: true, money });
          expect(minorDigits(currency)).toBeLessThan(4);
        },
      ),
      { seed: 1 },
    );
  });

  test('a price says its currency on either side', () => {
    for (const text of ['320 GBP', 'GBP 320', '£320', '320.00 gbp', '£ 320']) {
      expect(readPrice(text)).toEqual({
        ok: true,
        price: { money: 32_000, currency: 'GBP', text },
      });
    }
    for (const text of ['320', '-3 EUR', 'EUR', '3 EUR 4', '$5', '1e15 EUR', '1.005 EUR']) {
      expect(readPrice(text)).toMatchObject({ ok: false });
    }
  });
});

describe('the example', () => {
  test('has a price for every kind', () => {
    const kinds = new Set(listIn(example).rows.map(({ kind }) => kind));
    expect([...kinds].sort()).toEqual(Object.keys(KIND_WORDS).sort());
  });

  test('written and read again it is the same list', () => {
    const list = listIn(example);
    expect(listIn(writePrices(list))).toEqual(list);
    expect(writePrices(listIn(writePrices(list)))).toBe(writePrices(list));
  });
});

test('a list of anything goes out and comes in exactly', () => {
  const word = fc.string({ unit: 'grapheme', minLength: 1, maxLength: 12 }).filter(
    // biome-ignore lint/suspicious/noControlCharactersInRegex: they are how a binary file shows
    (text) => text.trim() !== '' && !/[\u0000-\u0008\u000b-\u001f\ufeff\ufffd]/.test(text),
  );
  const tricky = fc.constantFrom(
    '=1+1',
    '+44',
    "'=x",
    '@cmd',
    '-',
    '"',
    'a;b',
    ' spaced ',
    '#1',
    'ä\nb',
    "'",
  );
  const kind = fc.constantFrom(...(Object.keys(ITEM_UNITS) as PriceKind[]));
  const row = fc.record(
    {
      kind,
      name: fc.oneof(word, tricky),
      price: fc.integer({ min: 0, max: 1e9 }),
      note: fc.oneof(word, tricky),
    },
    { requiredKeys: ['kind', 'name'] },
  );
  fc.assert(
    fc.property(fc.array(row, { minLength: 1, maxLength: 6 }), (made) => {
      const rows = made.map((one, index) => ({
        code: `=${index}`,
        ...one,
        unit: unitsOf(one.kind)[0] ?? 'each',
      }));
      const list: PriceList = { currency: 'EUR', rows };
      expect(listIn(writePrices(list))).toEqual(list);
    }),
    { seed: 2, numRuns: 200 },
  );
});

test('no cell that goes out can be taken for a formula', () => {
  const rows = ['=HYPERLINK("x")', '+1', '-1', '@x', "'=1"].map((name, index) => ({
    code: `${index}`,
    kind: 'union' as const,
    name,
    unit: 'each' as const,
    note: name,
  }));
  for (const line of writePrices({ currency: 'EUR', rows }).split('\r\n')) {
    expect(line).not.toMatch(/(^|,|")[=+@-]/);
  }
});

test('heads in other words, other orders and with units', () => {
  const list = listIn('Type\tCost EUR\tDescription\tcapacity (L)\nAir vessel\t64\tvessel\t3\n');
  expect(list.rows).toMatchObject([
    { kind: 'vessel', name: 'vessel', price: 6400, volume: { value: 0.003 }, code: 'row 2' },
  ]);
});

test('what is left out has no price and is told so', () => {
  const [row] = listIn('kind,price (EUR)\nunion,left out\n').rows;
  expect(row).toEqual({
    code: 'row 2',
    kind: 'union',
    name: 'union',
    unit: 'each',
    isLeftOut: true,
  });
});

describe('sizes', () => {
  test('a pipe by its name in the tables or by material, bore and wall', () => {
    expect(pipeOfSize('PE100 SDR11 25')).toMatchObject({ ok: true, pipe: { material: 'pe100' } });
    for (const text of ['PVC hose 25 x 4 mm', 'PVC hose 25 mm x 4 mm', 'PVC hose 25mm × 4 mm']) {
      const read = pipeOfSize(text);
      if (!read.ok) throw new Error(read.message);
      expect(read.pipe.innerDiameter).toBeCloseTo(0.025, 9);
      expect(read.pipe.wallThickness).toBeCloseTo(0.004, 9);
      expect(read.pipe.material).toBe('pvcHose');
    }
    const inches = pipeOfSize('steel 1 x 1/8 in');
    expect(inches.ok && inches.pipe.innerDiameter).toBeCloseTo(0.0254, 6);
    const noWall = pipeOfSize('rubber hose 25 mm');
    expect(noWall.ok && noWall.pipe.wallThickness).toBeGreaterThan(0.001);
  });

  test('a part by nominal size or bore', () => {
    expect(['DN25', '1 in', '1 1/4 in', '1½ in', '25 mm'].map(partSize)).toEqual([
      0.025, 0.025, 0.032, 0.04, 0.025,
    ]);
    expect(partSize('large')).toBeUndefined();
  });
});

describe('mistakes', () => {
  const head = 'code,kind,name,size,unit,price (EUR),sold length,use,volume,rating,made of';
  test.each([
    ['no such kind', 'a,hoze,,,each,1', 'kind', 'no kind of thing'],
    ['near a kind', 'a,gate valv,,,each,1', 'kind', 'Did you mean gate valve?'],
    ['a ram', 'a,ram,Swallow,,each,1', 'kind', 'in the range file'],
    ['no kind', 'a,,x,,each,1', 'kind', 'is missing'],
    ['no such pipe', 'a,pipe,,PE100 SDR11 26,m,1', 'size', 'Did you mean'],
    ['wall and bore swapped', 'a,pipe,,PVC hose 4 x 25 mm,m,1', 'size', 'wider than its bore'],
    ['no unit of a pipe', 'a,pipe,,PE100 SDR11 25,,1', 'unit', 'Write m, ft or length'],
    ['wrong unit', 'a,union,,,m,1', 'unit', 'Write each'],
    ['no length of a bar', 'a,pipe,,PE100 SDR11 25,length,1', 'sold length', 'Write 6 m'],
    ['length without unit', 'a,pipe,,PE100 SDR11 25,length,1,6', 'sold length', '6 what?'],
    ['no price', 'a,union,,,each,ask', 'price (EUR)', 'is no price'],
    ['below nought', 'a,union,,,each,-3', 'price (EUR)', 'never below nought'],
    ['half a cent', 'a,union,,,each,1.2345', 'price (EUR)', '2 digits at most'],
    ['nonsense of signs', 'a,union,,,each,"1.2,3.4"', 'price (EUR)', 'is no price'],
    ['use', 'a,pipe,,PE100 SDR11 25,m,1,,roof', 'use', 'Write drive, feeder, delivery'],
    ['no volume', 'a,tank,,,each,1', 'volume', 'Write 1000 L'],
    ['nought volume', 'a,tank,,,each,1,,,0 L', 'volume', 'above nought'],
    ['wrong quantity', 'a,tank,,,each,1,,,3 bar', 'volume', 'L'],
    ['material', 'a,union,,,each,1,,,,,wood', 'made of', 'is no material'],
    ['size of a part', 'a,union,,large,each,1', 'size', 'Write DN25'],
  ])('%s', (_what, row, field, says) => {
    const read = readPrices(`${head}\nok,union,,,each,1\n${row}\n`);
    if (read.ok) throw new Error('this should not read');
    expect(read.problems).toHaveLength(1);
    expect(read.problems[0]).toMatchObject({ line: 3, field });
    expect(read.problems[0]?.message).toContain(says);
    // The good row is handed over beside the problem.
    expect(read.good?.rows.map(({ code }) => code)).toEqual(['ok']);
  });

  test('a code that stands twice', () => {
    const read = readPrices(`${head}\na,union,,,each,1\na,tee,,,each,1\n`);
    expect(read).toMatchObject({ ok: false, problems: [{ line: 3, field: 'code' }] });
  });

  test.each([
    ['nothing', '', 'empty'],
    ['a picture', 'PNG\u0000\u0001', 'not a text file'],
    ['no currency', 'kind,price\nunion,1\n', 'price (EUR)'],
    ['no such currency', 'kind,price (EURO)\nunion,1\n', 'is no currency'],
    ['dollars', 'kind,price ($)\nunion,1\n', 'USD, CAD'],
    ['no kinds', 'name,price (EUR)\nunion,1\n', 'the kind is missing'],
    ['two prices', 'kind,price (EUR),cost (EUR)\nunion,1,2\n', 'Keep one'],
    ['no rows', 'kind,price (EUR)\n', 'no rows'],
    ['an open quote', 'kind,price (EUR)\n"union,1\n', 'never closed'],
  ])('the whole file: %s', (_what, text, says) => {
    const read = readPrices(text);
    if (read.ok) throw new Error('this should not read');
    expect(read.good).toBeUndefined();
    expect(read.problems[0]?.message).toContain(says);
  });

  test('a column of no use is told and does not stop', () => {
    const read = readPrices('kind,price (EUR),colour,volme\nunion,1,red,\n');
    if (!read.ok) throw new Error('this should read');
    expect(read.warnings.map(({ message }) => message)).toEqual([
      expect.stringContaining('“colour”'),
      expect.stringContaining('Did you mean volume?'),
    ]);
  });
});

describe('docs/price-list.md', () => {
  const page = readFileSync(new URL('../../docs/price-list.md', import.meta.url), 'utf8');

  test('names every column and every kind', () => {
    for (const name of PRICE_COLUMNS) expect(page).toContain(`\`${name}\``);
    for (const words of Object.values(KIND_WORDS)) expect(page).toContain(words);
  });

  test.each([...page.matchAll(/```csv\n([\s\S]*?)```/g)].map(([, block = '']) => block))(
    'a block reads: %#',
    (block) => {
      expect(listIn(block).rows.length).toBeGreaterThan(0);
    },
  );
});
