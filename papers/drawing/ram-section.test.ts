import {
  type Ram,
  TYPICAL_SIZES,
  type TypicalSize,
  typicalRam,
  type WasteValve,
} from '@fallwright/engine';
import { expect, test } from 'vitest';
import type { Measured } from './ram-geometry.ts';
import { ramGeometry } from './ram-geometry.ts';
import { ramSection, wordsBox } from './ram-section.ts';
import type { Area, Point } from './shapes.ts';

const SHEET = { width: 660, system: 'metric' } as const;
const base = typicalRam('DN20');

function withValve(change: Partial<Ram['wasteValve']>): Ram {
  return { ...base, wasteValve: { ...base.wasteValve, ...change } as WasteValve };
}

const withVessel = (volume: number): Ram => ({
  ...base,
  airVessel: { ...base.airVessel, volume },
});

/** Rams of every size and kind, and two with vessels that are much too large and much too small. */
const RAMS: readonly Ram[] = [
  ...(Object.keys(TYPICAL_SIZES) as TypicalSize[]).map(typicalRam),
  withValve({ kind: 'sprung', forceAtOpen: 1, forceAtShut: 1.2 } as Partial<WasteValve>),
  withValve({ kind: 'swing', forceAtOpen: 1, forceAtShut: 1.2 } as Partial<WasteValve>),
  withVessel(0.02),
  withVessel(0.00002),
];

function partLength(ram: Ram, what: Measured): number {
  switch (what) {
    case 'bore':
      return ram.bore;
    case 'seat':
      return ram.wasteValve.seatDiameter;
    case 'stroke':
      return ram.wasteValve.stroke;
    case 'deliveryBore':
      return Math.sqrt((4 * ram.deliveryValve.area) / Math.PI);
    case 'snifter':
      return ram.snifter?.diameter ?? Number.NaN;
  }
}

test('a drawn length is the length of the part times the scale', () => {
  for (const ram of RAMS) {
    const { dimensions, scale } = ramSection(ram, SHEET);
    expect(dimensions.map(({ what }) => what).sort()).toEqual(
      ['bore', 'deliveryBore', 'seat', 'snifter', 'stroke'].sort(),
    );
    for (const { what, from, to } of dimensions) {
      const drawn = Math.hypot(to.x - from.x, to.y - from.y);
      expect(drawn).toBeCloseTo(partLength(ram, what) * scale, 6);
    }
  }
});

test('the valve hangs open by its stroke, and seats on a circle of its seat', () => {
  const ram = withValve({ stroke: 0.0051, seatDiameter: 0.0234 });
  const { areas } = ramGeometry(ram);
  const disc = areas.find(({ part }) => part === 'disc') as Area;
  const lips = areas.filter(({ part }) => part === 'seat').map(({ outline }) => outline);
  const seatLevel = Math.max(...lips.flat().map(({ y }) => y));
  expect(Math.min(...disc.outline.map(({ y }) => y)) - seatLevel).toBeCloseTo(0.0051, 12);
  const onLip = (outline: readonly Point[]): number[] =>
    outline.filter(({ y }) => y === seatLevel).map(({ x }) => Math.abs(x));
  for (const lip of lips) expect(Math.min(...onLip(lip))).toBeCloseTo(0.0234 / 2, 12);
});

test('a heavier valve carries more steel, by the volume of what was added', () => {
  const weights = (ram: Ram): number =>
    ramGeometry(ram)
      .areas.filter(({ part }) => part === 'weight')
      .reduce((sum, { outline }) => sum + volumeRound(outline, 0), 0);
  const light = weights(withValve({ movingMass: 0.06 }));
  // Washers of 100 g more: steel, 7850 kg/m³.
  expect(weights(withValve({ movingMass: 0.16 })) - light).toBeCloseTo(0.1 / 7850, 9);
});

test('the vessel holds what its part says, whatever its form', () => {
  for (const ram of RAMS) {
    const { vessel } = ramGeometry(ram);
    const right = vessel.inside.filter(({ x }) => x >= vessel.axis - 1e-12);
    // Forty chords in place of the crown's curve leave out less than a third of a per cent.
    expect(volumeUnder(right, vessel.axis) / ram.airVessel.volume).toBeCloseTo(1, 2);
  }
});

test('words never lie over one another, and stay on the sheet', () => {
  for (const ram of RAMS) {
    for (const width of [520, 660, 900]) {
      const { shapes, height } = ramSection(ram, { width, system: 'us' });
      const boxes = shapes.flatMap((shape) => (shape.kind === 'words' ? [wordsBox(shape)] : []));
      for (const [i, a] of boxes.entries()) {
        expect(a.left).toBeGreaterThanOrEqual(0);
        expect(a.right).toBeLessThanOrEqual(width);
        expect(a.top).toBeGreaterThanOrEqual(0);
        expect(a.bottom).toBeLessThanOrEqual(height);
        for (const b of boxes.slice(i + 1)) {
          const isApart =
            a.right <= b.left || b.right <= a.left || a.bottom <= b.top || b.bottom <= a.top;
          expect(isApart).toBe(true);
        }
      }
    }
  }
});

test('words stand clear of the ram', () => {
  for (const ram of RAMS) {
    const { shapes } = ramSection(ram, SHEET);
    const drawn = shapes.flatMap((shape) => (shape.kind === 'area' ? shape.outline : []));
    const left = Math.min(...drawn.map(({ x }) => x));
    const right = Math.max(...drawn.map(({ x }) => x));
    for (const shape of shapes) {
      if (shape.kind !== 'words' || shape.tone === 'tick') continue;
      const words = wordsBox(shape);
      expect(words.right <= left || words.left >= right).toBe(true);
    }
  }
});

test('on a narrow sheet numbers stand in the drawing and a list explains them', () => {
  const { keys, shapes } = ramSection(base, { width: 328, system: 'metric' });
  const drawn = shapes.flatMap((shape) => (shape.kind === 'key' ? [shape.text] : []));
  expect(drawn.map(Number).sort((a, b) => a - b)).toEqual(keys.map((_, i) => i + 1));
  expect(keys).toContain('bore 20\u00a0mm');
  expect(keys.join(' ')).toContain('stroke 3\u00a0mm');
});

test('a ram without a snifter shows none', () => {
  const { snifter: _none, ...rest } = base;
  const { spoken, dimensions } = ramSection(rest, SHEET);
  expect(spoken).not.toContain('snifter');
  expect(dimensions.some(({ what }) => what === 'snifter')).toBe(false);
});

/** Volume of what an upright rectangle turns into round its axis. */
function volumeRound(outline: readonly Point[], axis: number): number {
  const radius = Math.max(...outline.map(({ x }) => x - axis));
  const ys = outline.map(({ y }) => y);
  return Math.PI * radius ** 2 * (Math.max(...ys) - Math.min(...ys));
}

/** Volume under a profile turned round an axis, by frustums of cones from one point to the next. */
function volumeUnder(profile: readonly Point[], axis: number): number {
  return profile.slice(1).reduce((sum, { x, y }, i) => {
    const before = profile[i] as Point;
    const a = before.x - axis;
    const b = x - axis;
    return sum + (Math.PI / 3) * (y - before.y) * (a * a + a * b + b * b);
  }, 0);
}
