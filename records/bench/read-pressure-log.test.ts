import { seededStream } from '@fallwright/engine';
import { describe, expect, test } from 'vitest';
import { type PressureLogFile, readPressureLog } from './read-pressure-log.ts';

function log(text: string, column?: string): PressureLogFile {
  const read = readPressureLog(text, column === undefined ? {} : { column });
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value;
}

function fault(text: string): { readonly message: string; readonly line?: number } {
  const read = readPressureLog(text);
  const [problem] = read.ok ? [] : read.problems;
  if (!problem) throw new Error('it was read');
  return problem;
}

describe('a pressure log', () => {
  test('in bar and milliseconds is turned into metres of water and seconds', () => {
    const { log: read, column } = log('time (ms), pressure (bar)\n0, 0.98\n5, 1.96133\n');
    expect(read.times).toEqual([0, 0.005]);
    // One bar is 1e5/9806.65 m of water.
    expect(read.heads[1]).toBeCloseTo(20, 9);
    expect(column).toBe('pressure (bar)');
  });

  test.each([
    ['time_s,head_m\n0,1.5\n0.5,-2\n', [0, 0.5], [1.5, -2]],
    ['\ufeffTime [s];Head [m]\r\n0;1,5\r\n0,5;−2\r\n', [0, 0.5], [1.5, -2]],
    ['# logger 3\nseconds\tHead (m)\n\n0\t1.5\n# pause\n0.5\t-2', [0, 0.5], [1.5, -2]],
    ['"t (s)","P (kPa)"\n"0","9.80665"\n1e-1,0\n', [0, 0.1], [1, 0]],
  ])('%j', (text, times, heads) => {
    const { log: read } = log(text);
    expect(read.times).toEqual(times);
    for (const [i, head] of read.heads.entries()) expect(head).toBeCloseTo(heads[i] as number, 9);
  });

  test('with several columns takes that of the ram’s body and says so, or the one that is asked for', () => {
    const text = 'time_s,head_in_air_vessel_m,head_at_waste_valve_m,note_x\n0,6,1,a\n1,6.1,9,b\n';
    const read = log(text);
    expect(read.log.heads).toEqual([1, 9]);
    expect(read.notices[0]?.message).toContain('head_in_air_vessel_m');
    expect(read.otherColumns).toEqual(['head_in_air_vessel_m']);
    expect(log(text, 'air_vessel').log.heads).toEqual([6, 6.1]);
    expect(readPressureLog(text, { column: 'tank' })).toMatchObject({ ok: false });
  });

  test('two readings at one time are both kept', () => {
    expect(log('time_s,head_m\n0,1\n0,2\n1,3').log.times).toEqual([0, 0, 1]);
  });

  test('of absolute pressures is pointed out', () => {
    expect(log('time_s,pressure absolute (bar)\n0,1\n1,2').notices[0]?.message).toContain(
      'absolute',
    );
  });
});

describe('what cannot be read says what to write', () => {
  test.each([
    ['', /empty/],
    ['0,1\n1,2\n', /names the columns/],
    ['time,head (m)\n0,1\n1,2', /no unit.*time \(s\)/],
    ['time (s),pressure\n0,1\n1,2', /no unit.*pressure \(bar\)/],
    ['time (s),pressure (L/min)\n0,1\n1,2', /no unit for/],
    ['time (s),flow (L/min)\n0,1\n1,2', /no column of pressures/],
    ['day,head (m)\n0,1\n1,2', /no column of times/],
    ['time (s),head (m)\n0,1', /fewer than two/],
    ['\u0000\u0001\u0002', /not a text/],
  ])('%j', (text, words) => {
    expect(fault(text).message).toMatch(words);
  });

  test('every wrong line is named, and a list of them ends', () => {
    const read = readPressureLog('time (s),head (m)\n0,1\n1,x\n12:00:01,3\n2,\n1.5,4\n0.5,4\n');
    if (read.ok) throw new Error('it was read');
    expect(read.problems.map(({ line }) => line)).toEqual([3, 4, 5, 7]);
    expect(read.problems[1]?.message).toContain('seconds from the start');
    expect(read.problems[3]?.message).toContain('goes back');
    const long = readPressureLog(`time (s),head (m)\n${'x,y\n'.repeat(5000)}`);
    expect(long.ok ? 0 : long.problems.length).toBeLessThan(60);
  });

  test('letters changed at random give a log or a reason', () => {
    const next = seededStream(2, 'log');
    const whole = 'time (s);head (m)\n0;1,5\n0,25;2\n1;-3\n';
    const signs = [...'0;,.\n\t"#()ms−x\u0000'];
    for (let round = 0; round < 2000; round++) {
      const text = [...whole];
      for (let k = 0; k < 1 + 3 * next(); k++) {
        text[Math.floor(next() * text.length)] = signs[Math.floor(next() * signs.length)] as string;
      }
      const read = readPressureLog(text.join(''));
      if (read.ok) expect(read.value.log.heads.every(Number.isFinite)).toBe(true);
      else expect(read.problems[0]?.message.length).toBeGreaterThan(15);
    }
  });
});
