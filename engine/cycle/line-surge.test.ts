import { expect, test } from 'vitest';
import type { PipeSegment } from '../pipes/pipe.ts';
import { waterAt } from '../water/water.ts';
import { lengthOf, plainPlace } from './fixtures/made-installation.ts';
import { LineSurge, type LineSurgeSetup } from './line-surge.ts';
import { startedKernel } from './operating-point.ts';

/** Water that never boils, so that linear theory holds at any head. */
const WATER = { ...waterAt({ temperature: 12, altitude: 0 }), vapourHead: -Infinity };
const STEEL = lengthOf('steel sch 40 1 in', 20);
const FLOW = 5e-4;

function stoppedLine(
  segments: readonly PipeSegment[],
  changes: Partial<LineSurgeSetup> = {},
): LineSurge {
  return new LineSurge({
    driveLine: { segments, entranceLoss: 0, pockets: [] },
    water: WATER,
    fall: 3,
    end: { kind: 'flow', flowAt: () => 0 },
    initialFlow: FLOW,
    reaches: 8,
    friction: () => 0,
    ...changes,
  });
}

test('a frictionless line that is stopped at once rings at 4L/a for ever without change', () => {
  const line = stoppedLine([STEEL]);
  const period = 4 * line.grid.reaches;
  const first: number[] = [];
  for (let i = 0; i < period; i++) {
    line.advance();
    first.push(line.headAtEnd);
  }
  for (let i = 0; i < 500 * period; i++) line.advance();
  const late: number[] = [];
  for (let i = 0; i < period; i++) {
    line.advance();
    late.push(line.headAtEnd);
  }
  late.forEach((head, i) => {
    expect(head).toBeCloseTo(first[i] as number, 8);
  });
  expect(Math.max(...first)).toBeGreaterThan(50);
});

test('a line in steady flow stays in steady flow until its end moves', () => {
  const line = stoppedLine([STEEL, lengthOf('PE100 SDR11 32', 15)], {
    end: { kind: 'flow', flowAt: (time) => (time < 0.5 ? FLOW : 0) },
    friction: () => 0.025,
    driveLine: {
      segments: [STEEL, lengthOf('PE100 SDR11 32', 15)],
      entranceLoss: 1.5,
      pockets: [],
    },
  });
  const before = line.headAtEnd;
  while (line.time < 0.49) {
    line.advance();
    expect(line.headAtEnd).toBeCloseTo(before, 9);
    expect(line.flowAtSource).toBeCloseTo(FLOW, 12);
  }
});

test('what runs in and does not run out stands in the stretched line, over joints and friction', () => {
  const segments = [STEEL, lengthOf('PE100 SDR11 25', 9), lengthOf('PVC hose 19 mm', 4)];
  const line = stoppedLine(segments, { friction: () => 0.03 });
  const atStart = line.storedVolume;
  let kept = 0;
  for (let i = 0; i < 5000; i++) {
    line.advance();
    kept += line.grid.timeStep * (line.flowAtSource - line.flowAtEnd);
  }
  expect(line.storedVolume - atStart).toBeCloseTo(kept, 12);
  expect(Math.abs(kept)).toBeGreaterThan(1e-9);
});

test('a finer grid converges, and each doubling halves the gap', () => {
  const headAfter = (reaches: number): number => {
    const line = stoppedLine([lengthOf('steel sch 40 1 in', 60)], {
      reaches,
      friction: () => 0.03,
    });
    // Just before the wave of a fifth return comes in: 9 L/a.
    for (let i = 0; i < 9 * reaches; i++) line.advance();
    return line.headAtEnd;
  };
  const heads = [16, 32, 64, 128].map(headAfter) as [number, number, number, number];
  const gaps = [heads[0] - heads[1], heads[1] - heads[2], heads[2] - heads[3]].map(Math.abs);
  for (const [i, gap] of gaps.slice(1).entries()) {
    expect(gap).toBeLessThan(0.6 * (gaps[i] as number));
  }
  expect(gaps[2]).toBeLessThan(0.002 * heads[3]);
});

test('an end that is opened lets the flow grow to what the losses allow, and no farther', () => {
  const line = stoppedLine([STEEL], {
    end: { kind: 'head', head: 0 },
    initialFlow: 0,
    friction: () => 0.03,
    driveLine: { segments: [STEEL], entranceLoss: 1.5, pockets: [] },
  });
  let fastest = 0;
  while (line.time < 30) {
    line.advance();
    fastest = Math.max(fastest, line.meanFlow);
  }
  const { innerDiameter } = STEEL.pipe;
  const final = Math.sqrt((2 * 9.80665 * 3) / (1.5 + (0.03 * 20) / innerDiameter));
  expect(line.meanFlow / ((Math.PI / 4) * innerDiameter ** 2)).toBeCloseTo(final, 4);
  expect(fastest).toBeLessThan(1.001 * line.meanFlow);
});

test('the plain loop and the nodes that can hold air and vapour give a ram the same beats', () => {
  const place = plainPlace({ lift: 6 });
  const plain = startedKernel(place, 6, {});
  const detailed = startedKernel(place, 6, { envelope: true });
  // Ringing beats double a difference every beat or so: five of them leave rounding far below a part in a million.
  for (let beat = 0; beat < 5; beat++) {
    plain.run(100_000);
    detailed.run(100_000);
    expect(detailed.lastBeat.time / plain.lastBeat.time).toBeCloseTo(1, 8);
    expect(detailed.lastBeat.wasted / plain.lastBeat.wasted).toBeCloseTo(1, 8);
    expect(detailed.extremes.peak / plain.extremes.peak).toBeCloseTo(1, 8);
  }
});
