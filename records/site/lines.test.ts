/** A surveyed profile in a site: the air its crests may hold, its vents, and what is worth a second look. */
import { describe, expect, test } from 'vitest';
import { installationOf } from './installation-of.ts';
import { siteLines } from './line-survey.ts';
import { readSite } from './read-site.ts';

const HUMP = 'profile: [{ at: 3 m, height: 1 m }, { at: 6 m, height: 1.3 m }]';

function site(drive: string, delivery = '') {
  const read = readSite(`fallwright: site@1
source: { flow: 14 L/min }
fall: 1.9 m
drive: [ { material: PVC-U, bore: 20 mm, wall: 2 mm, length: 14 m, ${drive} } ]
lift: 12 m
${delivery}`);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read;
}

function pockets(drive: string) {
  const { installation, assumptions } = installationOf(site(drive).site);
  return {
    pockets: installation.driveLine.pockets,
    said: assumptions.filter(({ field }) => field === 'drive[0].air'),
  };
}

describe('air at the crests of a profile', () => {
  test('is assumed from the shape and the bore, and said', () => {
    const found = pockets(HUMP);
    // ½ · π/4 · D³ (1/s₁ + 1/s₂) with slopes of 0.3 m in 3 m and 1.3 m in 8 m (exact).
    const exact = 0.5 * (Math.PI / 4) * 0.02 ** 3 * (10 + 8 / 1.3);
    expect(found.pockets).toEqual([{ distance: 6, volume: expect.closeTo(exact, 12) }]);
    expect(found.said).toMatchObject([
      { what: 'air caught at the crest in the profile', basis: 'computed' },
    ]);
  });

  test('air that is told, a straight pipe and a vent each say otherwise', () => {
    expect(pockets(`${HUMP}, air: 5 mL at 6 m`).pockets).toEqual([
      { distance: 6, volume: expect.closeTo(5e-6, 12) },
    ]);
    expect(pockets(`${HUMP}, laid: straight`).pockets).toEqual([]);
    const vented = pockets(`${HUMP}, vents: [6 m]`);
    expect(vented.pockets).toEqual([]);
    expect(vented.said).toMatchObject([
      { value: { words: 'none' }, why: 'the vent there lets it out' },
    ]);
    expect(pockets('laid: over a crest, vents: 5 m').pockets).toEqual([]);
  });

  test('a rise within the ± of the heights holds none', () => {
    const rough = HUMP.replace('1.3 m', '1.3 m ± 0.5 m');
    expect(pockets(rough).pockets).toEqual([]);
  });
});

describe('worth a second look', () => {
  test('a vent where no crest is, and a pipe above its source', () => {
    expect(site(`${HUMP}, vents: 9 m`).warnings).toMatchObject([
      { kind: 'unusual', field: 'drive[0].vents', line: 4 },
    ]);
    const high = site('profile: [{ at: 3 m, height: 1 m }, { at: 6 m, height: 2.4 m }]').warnings;
    expect(high).toMatchObject([{ field: 'drive[0].profile' }]);
    expect(high[0]?.message.replaceAll('\u00a0', ' ')).toContain(
      'rises 0.5 m above the source’s surface at 6 m',
    );
    expect(site(`${HUMP}, vents: 6 m`).warnings).toEqual([]);
  });

  test('a vent beyond its pipe is a problem', () => {
    expect(() => site('vents: 20 m')).toThrow(/The vent is 20 m along a pipe that is 14 m long/);
  });
});

test('both lines are read along their length, straight ones too', () => {
  const delivery =
    'delivery: { pipe: PE100 SDR11 20, length: 160 m, profile: [{ at: 50 m, height: 9 m }, { at: 90 m, height: 7 m }] }';
  const [drive, pipe] = siteLines(site('held: buried', delivery).site);
  expect(drive).toMatchObject({
    line: 'drive',
    isSurveyed: false,
    reading: { crests: [], pressure: { highest: { pressureHead: 1.9 } } },
  });
  expect(pipe).toMatchObject({
    line: 'delivery',
    isSurveyed: true,
    reading: {
      crests: [{ distance: 50, pressureHead: 3 }],
      sags: [{ distance: 90 }],
      pressure: { lowest: { pressureHead: 0 }, highest: { pressureHead: 12 } },
    },
  });
});
