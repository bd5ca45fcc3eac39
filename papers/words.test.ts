import { installationOf } from '@fallwright/records';
import { describe, expect, test } from 'vitest';
import { alongTheLinesInWords } from './along-the-lines.ts';
import { duration, perCent } from './answered.ts';
import { assumptionsInWords } from './assumption-words.ts';
import { cautions } from './cautions.ts';
import { changeRows, changesInWords } from './changes.ts';
import { answerOf, POINT, siteWith, VERDICTS } from './fixtures/answers.ts';
import { pressureRows } from './pressures.ts';
import { reasonsInWords } from './reasons.ts';
import { startUpInWords } from './start-up-words.ts';
import { verdictSentence } from './verdict-words.ts';

const site = siteWith();

function plain(texts: readonly string[]): string {
  return texts.join(' ').replaceAll('\u00a0', ' ');
}

describe('why', () => {
  test('a ram that runs: both flows and the beats come first', () => {
    expect(plain(reasonsInWords(answerOf('runs'), site, 'metric').slice(0, 1))).toBe(
      'With the valve open, 1.9 m of fall can drive 23.3 L/min through this line. The waste valve shuts at 9.4 L/min, so it shuts every time, 62 times a minute.',
    );
  });

  test('every verdict has its own reason, with numbers and no loose ends', () => {
    const firsts = VERDICTS.map((kind) =>
      plain(reasonsInWords(answerOf(kind), site, 'metric').slice(0, 1)),
    );
    for (const first of firsts) {
      expect(first).toMatch(/\d/);
      expect(first).not.toMatch(/undefined|NaN|\.\.|,\./);
    }
    // The two that run share their cause.
    expect(new Set(firsts).size).toBe(VERDICTS.length - 1);
  });

  test('stays open names the flow that is missing', () => {
    const answer = answerOf('staysOpen', { terminalFlow: 8e-5, closingFlow: 1e-4 });
    expect(plain(reasonsInWords(answer, site, 'metric'))).toContain(
      'would have to run 25 % faster',
    );
  });

  test('starves says what is taken and what is given', () => {
    expect(plain(reasonsInWords(answerOf('starves'), site, 'metric'))).toContain(
      'The ram takes 11.1 L/min and the source gives 14 L/min.',
    );
  });

  test('a tank that drains says how long it lasts', () => {
    const tank = siteWith(
      '{ flow: 14 L/min }',
      '{ store: tank, volume: 1200 L, inflow: 1.1 L/min }',
    );
    const words = plain(reasonsInWords(answerOf('starves', { drainTime: 7200 }), tank, 'metric'));
    expect(words).toContain('From full, the store lasts about 2 hours');
    expect(plain(reasonsInWords(answerOf('runs'), tank, 'metric'))).toContain('which keeps up');
  });

  test('a valve that dances says how fast, and on what', () => {
    const beat = { kind: 'beat', has: 0.12, needs: 0.4, margin: -0.7 } as const;
    const answer = answerOf('flutters', {
      verdict: { kind: 'flutters', decidedBy: beat, limits: [beat] },
    });
    const airy = siteWith('length: 14 m }', 'length: 14 m, air: 20 mL }');
    expect(plain(reasonsInWords(answer, airy, 'metric'))).toContain(
      'beats every 0.12 s, and the water of the whole line needs 0.4 s to gather speed: the valve only dances on the air caught in the line',
    );
  });

  test('no reason contradicts the verdict', () => {
    // The plain rules for recoil and hammer are met here, and the simulation still says no.
    expect(plain(reasonsInWords(answerOf('staysShut'), site, 'metric'))).toContain('too weak');
    expect(plain(reasonsInWords(answerOf('doesNotLift'), site, 'metric'))).toContain('falls short');
    expect(plain(reasonsInWords(answerOf('staysOpen'), site, 'metric'))).toContain('hangs open');
  });

  test('US units turn every number', () => {
    const words = plain(reasonsInWords(answerOf('runs'), site, 'us'));
    expect(words).toContain('6.23 ft of fall can drive 6.16 gpm');
    expect(words).not.toMatch(/\d (m|L|bar)\b/);
  });

  test('demand that is not met says so', () => {
    const answer = answerOf('runs', { demand: { needed: 2e-5, isMet: false } });
    expect(plain(reasonsInWords(answer, site, 'metric'))).toContain(
      '1,730 L a day are needed, and only 1,060 L a day come: 62 % of the need.',
    );
  });

  test('beats that never agree are owned up to', () => {
    const point = {
      ...POINT,
      beatSpread: 0.08,
      end: { ...POINT.end, outcome: 'irregular' as const },
    };
    expect(
      plain(reasonsInWords(answerOf('runs', { operatingPoint: point }), site, 'metric')),
    ).toContain('Its beats never agreed (they differ by 8 %)');
  });

  test('a close thing is called close', () => {
    const decidedBy = { kind: 'source', has: 1.04e-4, needs: 1e-4, margin: 0.04 } as const;
    const answer = answerOf('runs', { verdict: { kind: 'runs', decidedBy, limits: [decidedBy] } });
    expect(plain(reasonsInWords(answer, site, 'metric'))).toContain(
      'It is close: only 4 % away from what the source gives',
    );
  });
});

test('the start is told as a thing to do', () => {
  expect(plain(startUpInWords(answerOf('runs'), site, 'metric'))).toContain('starts by itself');
  const byHand = plain(startUpInWords(answerOf('runsAfterHandStart'), site, 'metric'));
  expect(byHand).toContain('push the waste valve open by hand about 14 times.');
  expect(byHand).toContain('Keep the stop valve on the delivery line shut');
});

describe('what would change it', () => {
  test('each thing says where it turns and what it does there', () => {
    const rows = changeRows(answerOf('runs'), 'metric').map((row) =>
      plain([row.what, row.now, row.from, row.below, row.to, row.above]),
    );
    expect(rows[0]).toBe('fall 1.9 m 1.31 m stays open 4.2 m stays shut');
    expect(rows).toHaveLength(2);
  });

  test('and the same in sentences, materials at the end', () => {
    const words = changesInWords(answerOf('runs'), 'metric').map((text) => plain([text]));
    expect(words[0]).toBe(
      'Fall: below 1.31 m it stays open, above 4.2 m it stays shut (now 1.9 m).',
    );
    expect(words[2]).toBe(
      'Changing the air in the line alone, from 0 mL to 1 L, does not make it run (now 0 mL).',
    );
    expect(words.at(-2)).toBe(
      'With galvanised steel DN20 as the drive line it runs by itself and delivers 1,200 L a day.',
    );
    expect(words.at(-1)).toBe('With PVC hose 19 mm as the drive line it does not lift.');
  });
});

test('assumptions say what, why and on what ground', () => {
  const lines = assumptionsInWords(installationOf(site).assumptions, 'us').map((text) =>
    plain([text]),
  );
  expect(lines).toContain(
    'Temperature of the water: 50 °F (usual for springs and shaded streams; common practice).',
  );
});

test('pressures stand beside ratings', () => {
  const rows = pressureRows(answerOf('runs'), site, 'us');
  expect(plain([rows[0]?.bound ?? '', rows[0]?.outcomeWords ?? ''])).toBe('45 psi within');
  expect(rows[1]).toMatchObject({
    part: 'ram body: DN20',
    bound: '',
    rating: '',
    outcomeWords: 'no rating known',
  });
});

describe('cautions', () => {
  test('prediction and local codes come first, and always', () => {
    for (const kind of VERDICTS) {
      expect(cautions(answerOf(kind), site)[0]).toBe(
        'This is a prediction, not a promise. Local codes and licensed practice come first.',
      );
    }
  });

  test('only those that matter here', () => {
    const stream = plain(cautions(answerOf('runs'), site));
    expect(stream).toContain('permit');
    expect(stream).toContain('PE100 tires');
    expect(stream).toContain('No rating is known for ram body: DN20');
    expect(stream).not.toContain('slings');
    const tank = siteWith('{ flow: 14 L/min }', '{ store: tank, volume: 1 m3 }');
    expect(plain(cautions(answerOf('runs'), tank))).not.toContain('permit');
    const large = siteWith('ram: DN20', 'ram: DN80');
    expect(plain(cautions(answerOf('runs'), large))).toContain('slings');
    const warm = siteWith('demand:', 'temperature: 24 °C\ndemand:');
    expect(plain(cautions(answerOf('runs'), warm))).not.toContain('freezes');
  });

  test('a part over its rating is named', () => {
    const check = answerOf('runs').pressureCheck;
    if (!check) throw new Error('no check');
    const rows = check.rows.map((row) => ({ ...row, outcome: 'over' as const }));
    expect(
      plain(cautions(answerOf('runs', { pressureCheck: { ...check, rows } }), site)),
    ).toContain('The blow goes over the rating of drive: PE100 SDR11 25. Do not build it so');
  });
});

test('small words', () => {
  expect(verdictSentence('runsAfterHandStart', 'DN20')).toBe('The DN20 runs once started.');
  expect(duration(90)).toBe('90\u00a0seconds');
  expect(duration(7200)).toBe('2\u00a0hours');
  expect(duration(400_000)).toBe('4.6\u00a0days');
  expect(perCent(0.256)).toBe('26\u00a0%');
});

describe('along the lines', () => {
  const HUMP = 'length: 14 m, profile: [{ at: 3 m, height: 1 m }, { at: 6 m, height: 1.3 m }]';
  const wordsOf = (from: string, to: string): string =>
    plain(alongTheLinesInWords(answerOf('runs'), siteWith(from, to), 'metric'));

  test('a crest has its place, its air and what would help', () => {
    const words = wordsOf('length: 14 m', HUMP);
    expect(words).toContain('Drive line: a crest 6 m along, 1.3 m up, rises 0.3 m. It may hold');
    expect(words).toMatch(
      /A vent at 6 m .*, or laying the pipe straight from 3 m to .*would keep the air out\./,
    );
    expect(words).toContain('a sag, where silt settles, 3 m along');
    expect(words).toContain('highest at the ram, 1.9 m (0.19 bar)');
  });

  test('a vent is told, and a crest above the source gets no vent', () => {
    expect(wordsOf('length: 14 m', `${HUMP}, vents: 6 m`)).toContain(
      'The vent at 6 m lets its air out.',
    );
    const high = wordsOf('length: 14 m', HUMP.replace('1.3 m', '2.1 m'));
    expect(high).toContain('It lies 0.2 m above the source, so the line does not fill by itself');
    expect(high).not.toContain('A vent at');
  });

  test('the delivery’s flow is held against what sweeps air out', () => {
    const words = wordsOf(
      'length: 160 m',
      'length: 160 m, profile: [{ at: 50 m, height: 9 m }, { at: 90 m, height: 7 m }]',
    );
    expect(words).toMatch(
      /Delivery line: a crest 50 m along.*The flow of .* does not sweep it out: that takes/,
    );
  });

  test('a line with no profile is said to be taken as straight', () => {
    expect(plain(alongTheLinesInWords(answerOf('staysOpen'), site, 'us'))).toMatch(
      /Drive line at rest, taken as straight because it has no profile.*6\.23 ft/,
    );
  });
});
