import { describe, expect, test } from 'vitest';
import { LARKRISE } from '../fixtures/larkrise.ts';
import { installationOf } from './installation-of.ts';
import { readSite } from './read-site.ts';

function assembled(text: string) {
  const read = readSite(text);
  if (!read.ok) throw new Error(read.problems[0]?.message);
  return installationOf(read.site);
}

function changed(from: string, to: string): string {
  if (!LARKRISE.includes(from)) throw new Error(`the example has no “${from}”`);
  return LARKRISE.replace(from, to);
}

test('the short example is put together in SI', () => {
  const { installation, demand } = assembled(LARKRISE);
  expect(installation.fall).toBe(1.9);
  expect(installation.lift).toBe(12);
  expect(installation.source).toEqual({ kind: 'steady', yield: 14e-3 / 60 });
  // ISO 4427: 25 mm less two walls of 2.3 mm.
  expect(installation.driveLine.segments[0]?.pipe.innerDiameter).toBeCloseTo(0.0204, 9);
  expect(installation.deliveryLine.segments[0]?.length).toBe(160);
  expect(installation.ram.name).toBe('DN20');
  expect(demand).toBeCloseTo(0.9 / 86400, 12);
});

test('everything that was not given is listed, with why', () => {
  const { assumptions } = assembled(LARKRISE);
  const assumedFields = assumptions.map(({ field }) => field);
  expect(assumedFields).toEqual(
    expect.arrayContaining([
      'source.intake',
      'drive[0].fittings',
      'drive[0].held',
      'drive[0].air',
      'ram.wasteValve.stroke',
      'ram.wasteValve.weight',
      'temperature',
      'altitude',
    ]),
  );
  for (const { why } of assumptions) expect(why).not.toBe('');
});

test('what is given is not assumed', () => {
  const fields = assembled(`${LARKRISE}temperature: 4 °C\naltitude: 800 m\n`).assumptions.map(
    ({ field }) => field,
  );
  expect(fields).not.toContain('temperature');
  expect(fields).not.toContain('altitude');
});

describe('drive line', () => {
  test('a pipe spelled out gets the wall and roughness of its material', () => {
    const { installation, assumptions } = assembled(
      changed('pipe: PE100 SDR11 25', 'material: galvanized steel, bore: 27.2 mm'),
    );
    const pipe = installation.driveLine.segments[0]?.pipe;
    expect(pipe?.material).toBe('galvanisedSteel');
    expect(pipe?.wallThickness).toBeGreaterThan(0.002);
    expect(assumptions.map(({ field }) => field)).toContain('drive[0].wall');
  });

  test('a nested pipe reads like one spelled out in the line', () => {
    const nested = assembled(
      changed('pipe: PE100 SDR11 25', 'pipe: { material: PVC hose, bore: 12.7 mm, wall: 3 mm }'),
    );
    const flat = assembled(
      changed('pipe: PE100 SDR11 25', 'material: PVC hose, bore: 12.7 mm, wall: 3 mm'),
    );
    expect(nested.installation).toEqual(flat.installation);
  });

  test('air is placed along the whole line', () => {
    const { installation } = assembled(
      changed(
        '{ pipe: PE100 SDR11 25, length: 14 m }',
        '{ pipe: PE100 SDR11 25, length: 14 m }, { pipe: PE100 SDR11 32, length: 6 m, air: [10 mL at 2 m, 4 mL] }',
      ),
    );
    expect(installation.driveLine.pockets.map(({ distance }) => distance)).toEqual([16, 17]);
    expect(installation.driveLine.pockets[0]?.volume).toBeCloseTo(1e-5, 12);
  });

  test('a crest holds air that is assumed, at the highest point', () => {
    const { installation, assumptions } = assembled(
      changed(
        'length: 14 m }',
        'length: 14 m, laid: over a crest, profile: [{ at: 5 m, height: 1.6 m }] }',
      ),
    );
    expect(installation.driveLine.pockets).toHaveLength(1);
    expect(installation.driveLine.pockets[0]?.distance).toBe(5);
    expect(installation.driveLine.profile?.map(({ distance }) => distance)).toEqual([0, 5, 14]);
    expect(assumptions.map(({ what }) => what)).toContain('air caught at the crest');
  });

  test('fittings add their losses', () => {
    const loss = (list: string): number =>
      assembled(changed('length: 14 m }', `length: 14 m, fittings: ${list} }`)).installation
        .driveLine.segments[0]?.fittingsLoss ?? Number.NaN;
    expect(loss('[K 1.5, 2 x K 0.5]')).toBeCloseTo(2.5, 9);
    expect(loss('[2 x elbow 90]')).toBeCloseTo(2 * loss('[90 elbow]'), 9);
    expect(loss('[2 elbows]')).toBeCloseTo(2 * loss('elbow'), 9);
  });

  test('a hose lies loose and a pipe is held', () => {
    expect(assembled(LARKRISE).installation.driveLine.segments[0]?.restraint).toBe(
      'anchoredThroughout',
    );
    const hose = assembled(changed('PE100 SDR11 25', 'garden hose 1/2 in'));
    expect(hose.installation.driveLine.segments[0]?.restraint).toBe('expansionJoints');
  });
});

describe('source', () => {
  test('a tank by its volume and depth', () => {
    const { installation } = assembled(
      changed(
        '{ flow: 14 L/min }',
        '{ store: tank, volume: 1000 L, depth: 0.5 m, inflow: 3 L/min }',
      ),
    );
    expect(installation.source).toEqual({
      kind: 'store',
      surfaceArea: 2,
      depthOverIntake: 0.5,
      inflow: 3e-3 / 60,
    });
  });

  test('a bucket runs empty unless something runs in', () => {
    const { installation, assumptions } = assembled(
      changed('{ flow: 14 L/min }', '{ store: bucket, volume: 15 L }'),
    );
    expect(installation.source).toMatchObject({ kind: 'store', inflow: 0 });
    expect(assumptions.map(({ field }) => field)).toEqual(
      expect.arrayContaining(['source.depth', 'source.inflow']),
    );
  });

  test('plenty sets no limit', () => {
    expect(assembled(changed('14 L/min', 'plenty')).installation.source).toEqual({
      kind: 'steady',
    });
  });
});

describe('ram', () => {
  test('inch sizes name the same typical rams', () => {
    expect(assembled(changed('ram: DN20', 'ram: 3/4 in')).installation.ram).toEqual(
      assembled(LARKRISE).installation.ram,
    );
    expect(assembled(changed('ram: DN20', 'ram: 1½"')).installation.ram.name).toBe('DN40');
  });

  test('without one, a typical ram of the size of the drive pipe is taken, and said', () => {
    const { installation, assumptions } = assembled(changed('ram: DN20\n', ''));
    expect(installation.ram.name).toBe('DN20');
    expect(assumptions.map(({ field }) => field)).toContain('ram');
  });

  test('single parts replace those of a typical one', () => {
    const plain = assembled(LARKRISE).installation.ram;
    const { installation } = assembled(
      changed('ram: DN20', 'ram: { typical: DN20, stroke: 4 mm, weight: 120 g }'),
    );
    const valve = installation.ram.wasteValve;
    expect(valve.stroke).toBeCloseTo(0.004, 9);
    expect(valve.movingMass).toBeCloseTo(0.12, 9);
    // In water a weight of brass or steel loses about an eighth.
    expect(valve.kind === 'weighted' && valve.submergedWeight / (0.12 * 9.80665)).toBeCloseTo(
      0.872,
      2,
    );
    expect(installation.ram.deliveryValve).toEqual(plain.deliveryValve);
  });

  test('a sprung valve has its two forces', () => {
    const { installation } = assembled(
      changed(
        'ram: DN20',
        'ram: { typical: DN20, wasteValve: { kind: sprung, forceOpen: 2 N, forceShut: 3 N, mass: 40 g } }',
      ),
    );
    expect(installation.ram.wasteValve).toMatchObject({
      kind: 'sprung',
      forceAtOpen: 2,
      forceAtShut: 3,
      movingMass: 0.04,
    });
  });

  test('no snifter is no snifter', () => {
    expect(
      assembled(changed('ram: DN20', 'ram: { typical: DN20, snifter: none }')).installation.ram
        .snifter,
    ).toBeUndefined();
  });
});

test('without a delivery line a short one is assumed, and said', () => {
  const { installation, assumptions } = assembled(
    changed('delivery: { pipe: PE100 SDR11 20, length: 160 m }\n', ''),
  );
  expect(installation.deliveryLine.segments[0]?.length).toBe(12);
  expect(assumptions.map(({ field }) => field)).toContain('delivery');
});
