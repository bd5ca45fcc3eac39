/** Air caught in the drive line. */
import { expect, test } from 'vitest';
import { typicalRam } from '../machine/typical-ram.ts';
import { airLockHead, airLockOf } from './air-lock.ts';
import { driveElevation } from './drive-elevation.ts';
import { driveOf, lengthOf, plainPlace, withoutSnifter } from './fixtures/made-installation.ts';
import { operatingPoint, ramKernel, startedKernel } from './operating-point.ts';

/** Down to 0.8 m, over a crest at 1.6 m half way, and down to the ram. */
const CREST = [
  { distance: 0, elevation: 2 },
  { distance: 3, elevation: 0.8 },
  { distance: 6, elevation: 1.6 },
  { distance: 12, elevation: 0 },
];

test('a line without a profile runs straight from the source’s surface to the ram', () => {
  const line = driveOf('steel sch 40 3/4 in', 12);
  expect(driveElevation(line, 2, 0)).toBe(2);
  expect(driveElevation(line, 2, 3)).toBe(1.5);
  expect(driveElevation(line, 2, 12)).toBe(0);
});

test('a line with a profile follows it, and stays at its ends beyond them', () => {
  const line = driveOf('steel sch 40 3/4 in', 14, { profile: CREST });
  expect(driveElevation(line, 2, 4.5)).toBeCloseTo(1.2, 12);
  expect(driveElevation(line, 2, 6)).toBe(1.6);
  expect(driveElevation(line, 2, 13)).toBe(0);
});

test('a pocket costs the height of the leg that it fills behind its crest', () => {
  const line = driveOf('steel sch 40 3/4 in', 12, { profile: CREST });
  // 20.96 mm of bore hold 0.34504 litre a metre; the leg behind the crest falls 1.6 m in 6 m.
  const volume = 3e-4;
  const filled = volume / ((Math.PI / 4) * 0.02096 ** 2);
  expect(airLockHead(line, 2, { distance: 6, volume })).toBeCloseTo((filled * 1.6) / 6, 4);
  // Twice the air, twice the height, until the whole leg is full of it.
  expect(airLockHead(line, 2, { distance: 6, volume: 2 * volume })).toBeCloseTo(
    (2 * filled * 1.6) / 6,
    4,
  );
  expect(airLockHead(line, 2, { distance: 6, volume: 1 })).toBeCloseTo(1.6, 12);
});

test('air on a rising or a level leg costs nothing', () => {
  const level = [
    { distance: 0, elevation: 1 },
    { distance: 10, elevation: 1 },
    { distance: 12, elevation: 0 },
  ];
  const line = driveOf('steel sch 40 3/4 in', 12, { profile: level });
  expect(airLockHead(line, 2, { distance: 4, volume: 1e-4 })).toBe(0);
  const rising = driveOf('steel sch 40 3/4 in', 12, { profile: CREST });
  expect(airLockHead(rising, 2, { distance: 3.5, volume: 1e-4 })).toBe(0);
});

test('all the air of a line together never takes more than the fall', () => {
  const pocket = { distance: 6, volume: 1 };
  const line = driveOf('steel sch 40 3/4 in', 12, { profile: CREST, pockets: [pocket, pocket] });
  expect(airLockOf(line, 2)).toBe(2);
});

test('in a wider pipe the same air stands lower, and costs less', () => {
  const pocket = { distance: 6, volume: 2e-4 };
  const narrow = driveOf('steel sch 40 3/4 in', 12, { profile: CREST });
  const wide = driveOf('steel sch 40 1-1/4 in', 12, { profile: CREST });
  expect(airLockHead(wide, 2, pocket)).toBeLessThan(airLockHead(narrow, 2, pocket));
});

test('air at a crest stops a ram that only just runs, and bleeding the line restores it', () => {
  // A half-inch ram on 30 m of half-inch polyethylene at 1.2 m of fall: it reaches a quarter more than its closing flow.
  const crest = [
    { distance: 0, elevation: 1.2 },
    { distance: 10, elevation: 0.4 },
    { distance: 14, elevation: 0.9 },
    { distance: 30, elevation: 0 },
  ];
  const place = (volume: number) =>
    plainPlace({
      fall: 1.2,
      lift: 6,
      ram: typicalRam('DN15'),
      driveLine: driveOf('PE SIDR 15 1/2 in', 30, {
        profile: crest,
        pockets: volume > 0 ? [{ distance: 14, volume }] : [],
      }),
    });
  expect(operatingPoint(place(0)).end.outcome).toBe('settled');
  // 2 litres fill more than half of the 16 m leg: half the fall is gone, and with it three tenths of the flow.
  expect(operatingPoint(place(2e-3)).end.outcome).toBe('staysOpen');
});

test('air in a running line takes water from the tank', () => {
  const delivered = [0, 1e-4, 1e-3].map(
    (volume) =>
      operatingPoint(
        plainPlace({
          driveLine: driveOf('steel sch 40 3/4 in', 12, {
            profile: CREST,
            pockets: volume > 0 ? [{ distance: 6, volume }] : [],
          }),
        }),
        { block: 24 },
      ).deliveryFlow,
  );
  expect(delivered[1]).toBeLessThan(delivered[0] as number);
  expect(delivered[2]).toBeLessThan(delivered[1] as number);
});

test('free air spread through the water softens the blow', () => {
  const peaks = [0, 1e-4, 1e-3].map((freeAirFraction) => {
    const kernel = startedKernel(
      plainPlace({
        lift: 200,
        driveLine: driveOf('steel sch 40 3/4 in', 12, {
          segments: [{ ...lengthOf('steel sch 40 3/4 in', 12), freeAirFraction }],
        }),
      }),
      200,
      { reaches: 32 },
    );
    kernel.clearExtremes();
    kernel.run(100_000);
    kernel.run(200);
    return kernel.extremes.peak;
  });
  expect(peaks[1]).toBeLessThan(peaks[0] as number);
  expect(peaks[2]).toBeLessThan(peaks[1] as number);
});

test('a bubble is a cushion: the smaller it is, the faster the water swings on it', () => {
  // Rigid water of length L between source and bubble: period 2π √( L V /(g A n H₀) ), H₀ being the absolute head.
  const periodOf = (volume: number) => {
    const place = plainPlace({
      fall: 2,
      lift: 60,
      ram: withoutSnifter(plainPlace().ram),
      driveLine: driveOf('steel sch 40 3/4 in', 12, {
        profile: [
          { distance: 0, elevation: 0.5 },
          { distance: 12, elevation: 0.5 },
        ],
        pockets: [{ distance: 11.9, volume }],
      }),
    });
    const kernel = ramKernel(place, 60, { reaches: 64 });
    kernel.rest(2e-6, 2);
    // Times at which the flow at the source turns from out of the source to into it.
    const turns: number[] = [];
    let before = 1;
    while (turns.length < 6) {
      kernel.run(1);
      const flow = (kernel.flow[0] as number) + (kernel.flow[1] as number);
      if (before > 0 && flow <= 0) turns.push(kernel.time);
      before = flow;
    }
    const period = ((turns[5] as number) - (turns[0] as number)) / 5;
    const area = (Math.PI / 4) * 0.02096 ** 2;
    const absolute = 2 - 0.5 + place.water.atmosphericHead;
    const exact = 2 * Math.PI * Math.sqrt((11.8125 * volume) / (9.80665 * area * 1.2 * absolute));
    return { period, exact };
  };
  for (const volume of [2e-4, 1e-3, 5e-3]) {
    const { period, exact } = periodOf(volume);
    // The four litres of water give by a part in seven hundred of what the smallest bubble does; friction slows the swing by
    // less than 1 %, and a swing of a few per cent of the air's volume is not quite that of a spring.
    expect(Math.abs(period / exact - 1)).toBeLessThan(0.02);
  }
});
