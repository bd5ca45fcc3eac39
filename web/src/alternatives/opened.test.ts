import type { Change, Installation } from '@fallwright/engine';
import { GRAVITY } from '@fallwright/engine';
import { installationOf, siteFromData } from '@fallwright/records';
import { describe, expect, test } from 'vitest';
import { alternativeFromChange } from './opened.ts';

function installationWith(ram: string | Record<string, unknown>): Installation {
  const read = siteFromData({
    fallwright: 'site@1',
    source: { flow: '14 L/min' },
    fall: '1.9 m',
    drive: { pipe: 'PE100 SDR11 25', length: '14 m' },
    ram,
    lift: '12 m',
  });
  if (!read.ok) throw new Error(read.problems.map(({ message }) => message).join(' '));
  return installationOf(read.site).installation;
}

const installation = installationWith('DN20');

function change(what: Change['what'], now: number, part: Partial<Change>): Change {
  return { what, now, searchedLow: now / 4, searchedHigh: now * 4, effort: 'free', ...part };
}

describe('the value that is tried', () => {
  test('lies a tenth inside the nearest stretch that gives enough', () => {
    const opened = alternativeFromChange(
      change('driveLength', 14, { runs: { low: 8, high: 40 }, enough: { low: 20, high: 30 } }),
      installation,
    );
    expect(opened).toEqual({ kind: 'length', length: 21 });
  });

  test('comes down to a stretch that lies below', () => {
    const opened = alternativeFromChange(
      change('stroke', 0.006, { runs: { low: 0.002, high: 0.004 } }),
      installation,
    );
    expect(opened).toEqual({ kind: 'stroke', stroke: expect.closeTo(0.0038, 9) });
  });

  test('is as far from both turning points as can be for a ram that runs', () => {
    const opened = alternativeFromChange(
      change('fall', 1.5, { runs: { low: 1, high: 4 } }),
      installation,
    );
    expect(opened).toEqual({ kind: 'place', what: 'fall', value: 2, isStore: false });
  });

  test('is none where nothing turns, or where it stands already', () => {
    expect(alternativeFromChange(change('lift', 12, {}), installation)).toBeUndefined();
    expect(
      alternativeFromChange(change('lift', 12, { runs: { low: 6, high: 24 } }), installation),
    ).toBeUndefined();
    expect(
      alternativeFromChange(
        change('trappedAir', 0, { runs: { low: 0, high: 1e-4 } }),
        installation,
      ),
    ).toBeUndefined();
  });
});

describe('what it becomes', () => {
  test('caught air is bled where no air is best', () => {
    const opened = alternativeFromChange(
      change('trappedAir', 5e-5, { runs: { low: 0, high: 1e-4 } }),
      installation,
    );
    expect(opened).toEqual({ kind: 'air', volume: 0 });
  });

  test('a bore is the next pipe of the same material that can be bought', () => {
    const bore = installation.driveLine.segments[0]?.pipe.innerDiameter ?? 0;
    const wider = alternativeFromChange(
      change('driveBore', bore, { runs: { low: bore * 1.2, high: bore * 1.4 } }),
      installation,
    );
    expect(wider).toEqual({ kind: 'pipe', name: 'PE100 SDR11 32' });
  });

  test('a weight on the valve is told as it weighs in air', () => {
    const { wasteValve } = installation.ram;
    const now = wasteValve.kind === 'weighted' ? wasteValve.submergedWeight : 0;
    const opened = alternativeFromChange(
      change('valveWeight', now, { runs: { low: now / 4, high: now } }),
      installation,
    );
    // The middle of the stretch is half of the present weight, in water and in air alike.
    expect(opened).toEqual({
      kind: 'weight',
      weight: expect.closeTo((wasteValve.movingMass * GRAVITY) / 2, 6),
    });
  });

  test('a spring has no weight to fetch', () => {
    const sprung = installationWith({
      typical: 'DN20',
      wasteValve: { kind: 'sprung', forceOpen: '0.5 N' },
    });
    expect(
      alternativeFromChange(change('valveWeight', 0.5, { runs: { low: 0.1, high: 0.3 } }), sprung),
    ).toBeUndefined();
  });
});
