import { expect, test } from 'vitest';
import { findPipe, PIPES, pipeNames } from './find-pipe.ts';

const found = (name: string): string => {
  const result = findPipe(name);
  return result.ok ? result.pipe.name : `not found; ${result.suggestions.join(' | ')}`;
};

test('every pipe has a name of its own, and is found by it', () => {
  expect(new Set(pipeNames()).size).toBe(PIPES.length);
  for (const name of pipeNames()) expect(found(name)).toBe(name);
});

test('the names that people write are read', () => {
  const written: readonly (readonly [string, string])[] = [
    ['PE100 SDR11 25', 'PE100 SDR11 25'],
    ['pe 100, sdr 11, 25 mm', 'PE100 SDR11 25'],
    ['25mm PE100 SDR-11', 'PE100 SDR11 25'],
    ['PE100 PN16 25 mm', 'PE100 SDR11 25'],
    ['PE100,SDR11,25', 'PE100 SDR11 25'],
    ['ISO 4427-2 PE100 SDR17 32', 'PE100 SDR17 32'],
    ['MDPE SDR11 32', 'PE80 SDR11 32'],
    ['PE SIDR 7 1/2 in', 'PE SIDR 7 1/2 in'],
    ['PE SIDR-11.5 1¼"', 'PE SIDR 11.5 1-1/4 in'],
    ['PE3408 sidr 15 1 1/2 inch', 'PE SIDR 15 1-1/2 in'],
    ['PE4710 SIDR7 3/4', 'PE4710 SIDR 7 3/4 in'],
    ['PVC-U PN10 32', 'PVC-U PN10 32'],
    ['uPVC pn 16 20mm', 'PVC-U PN16 20'],
    ['PVC sch 40 1/2 in', 'PVC sch 40 1/2 in'],
    ['PVC schedule 80 1 in', 'PVC sch 80 1 in'],
    ['1-1/4" pvc SCH40 pipe', 'PVC sch 40 1-1/4 in'],
    ['steel sch 40 1 in', 'steel sch 40 1 in'],
    ['steel schedule 40 1 1/2', 'steel sch 40 1-1/2 in'],
    ['steel EN 10255 DN25', 'steel EN 10255 DN25'],
    ['steel DN 25', 'steel EN 10255 DN25'],
    ['galvanised steel DN20', 'galvanised steel DN20'],
    ['Galvanized DN 20', 'galvanised steel DN20'],
    ['copper L 3/4 in', 'copper L 3/4 in'],
    ['copper type L 1', 'copper L 1 in'],
    ['garden hose 1/2 in', 'garden hose 1/2 in'],
    ['1/2" hose', 'garden hose 1/2 in'],
    ['5/8 hosepipe', 'garden hose 5/8 in'],
    ['PVC hose 12.5', 'PVC hose 12.5 mm'],
    ['PVC hose, 12,5 mm', 'PVC hose 12.5 mm'],
    ['rubber hose 19 mm', 'rubber hose 19 mm'],
  ];
  expect(written.map(([name]) => found(name))).toEqual(written.map(([, name]) => name));
});

test('a wrong unit or a size that is not made is not taken for something near it', () => {
  for (const name of [
    'PVC sch 40 1 mm',
    'rubber hose 19 in',
    'PE100 SDR11 26',
    'PE100 SDR17 25',
    '',
  ]) {
    expect(findPipe(name).ok, name).toBe(false);
  }
});

test('what is not found comes with the nearest names', () => {
  const suggestionsFor = (name: string) => {
    const result = findPipe(name);
    return result.ok ? [] : result.suggestions;
  };
  expect(suggestionsFor('PE100 SDR11 26')[0]).toBe('PE100 SDR11 25');
  expect(suggestionsFor('coper L 1 in')[0]).toBe('copper L 1 in');
  expect(suggestionsFor('steel 1 in')).toContain('steel sch 40 1 in');
  expect(suggestionsFor('garden hose 12 mm')).toContain('garden hose 1/2 in');
  expect(suggestionsFor('zzz')).toEqual([]);
});

test('every pipe has a wall, and its outside is the bore and two walls', () => {
  for (const pipe of PIPES) {
    expect(pipe.wallThickness, pipe.name).toBeGreaterThan(0);
    // Inch tables print each of the three rounded by itself.
    const outside = pipe.innerDiameter + 2 * pipe.wallThickness;
    expect(Math.abs(outside - pipe.outerDiameter), pipe.name).toBeLessThan(0.05e-3);
    expect(pipe.rating === undefined).toBe(pipe.ratingTemperature === undefined);
  }
});
