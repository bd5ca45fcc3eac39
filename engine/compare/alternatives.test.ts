import { expect, test } from 'vitest';
import type { Installation } from '../cycle/installation.ts';
import { typicalRam } from '../machine/typical-ram.ts';
import { findPipe } from '../pipes/find-pipe.ts';
import type { PipeSegment } from '../pipes/pipe.ts';
import { answerFor } from '../site/answer-for.ts';
import { waterAt } from '../water/water.ts';
import { alternatives, type DriveChoice } from './alternatives.ts';

function segment(name: string, length: number): PipeSegment {
  const found = findPipe(name);
  if (!found.ok) throw new Error(`no pipe called ${name}`);
  return {
    pipe: found.pipe,
    length,
    fittingsLoss: 0,
    restraint: 'anchoredThroughout',
    freeAirFraction: 0,
  };
}

const choice = (name: string): DriveChoice => ({
  name,
  driveLine: { segments: [segment(name, 14)], entranceLoss: 1.5, pockets: [] },
});
const HOSE = choice('garden hose 1/2 in');
const STEEL = choice('steel EN 10255 DN20');

const place: Installation = {
  water: waterAt({ temperature: 10, altitude: 0 }),
  source: { kind: 'steady' },
  fall: 1.9,
  driveLine: HOSE.driveLine,
  ram: typicalRam('DN20'),
  lift: 12,
  deliveryLine: { segments: [segment('PE100 SDR11 20', 160)] },
};
const rams = [typicalRam('DN15'), typicalRam('DN20')];

test('every ram is tried on every drive line, line by line', () => {
  const tried = [...alternatives(place, [HOSE, STEEL], rams)];
  expect(tried.map((a) => [a.driveIndex, a.ramIndex])).toEqual([
    [0, 0],
    [0, 1],
    [1, 0],
    [1, 1],
  ]);
});

test('a pair gives what the same installation gives by itself', () => {
  const [, , , pair] = [...alternatives(place, [HOSE, STEEL], rams)];
  const alone = answerFor({ ...place, driveLine: STEEL.driveLine }, { changes: false });
  expect(pair?.operatingPoint).toEqual(alone.operatingPoint);
  expect(pair?.verdict).toEqual(alone.verdict);
  expect(pair?.startUp).toEqual(alone.startUp);
  expect(pair?.closingFlow).toBe(alone.closingFlow);
  expect(pair?.terminalFlow).toBe(alone.terminalFlow);
});

test('a store counts at its brim, as it does on the sheet of the place', () => {
  const bucket: Installation = {
    ...place,
    source: { kind: 'store', surfaceArea: 0.05, inflow: 1e-4, depthOverIntake: 0.2 },
  };
  const [pair] = [...alternatives(bucket, [STEEL], [typicalRam('DN20')])];
  const alone = answerFor({ ...bucket, driveLine: STEEL.driveLine }, { changes: false });
  expect(pair?.verdict.kind).toBe(alone.verdict.kind);
  expect(pair?.operatingPoint?.deliveryFlow).toBe(alone.operatingPoint?.deliveryFlow);
});

test('a soft half-inch hose cannot lift where steel can', () => {
  const tried = [...alternatives(place, [HOSE, STEEL], rams)];
  expect(tried.map((a) => a.verdict.kind)).toEqual(['doesNotLift', 'staysOpen', 'runs', 'runs']);
});

test('stopping half way keeps what is done', () => {
  const running = alternatives(place, [HOSE, STEEL], rams);
  expect(running.next().value?.driveName).toBe(HOSE.name);
  expect(running.return().done).toBe(true);
});
