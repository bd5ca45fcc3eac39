/**
 * Steel pipe, schedule 40, inch sizes. The walls are nominal; the mill may be 12.5 % under. The standard gives no
 * rating: thread, joint and corrosion decide.
 *
 * Source: ASME B36.10M, outer diameters and walls as listed in fluids 1.3.1 (seen); the same as PVC schedule 40.
 */
import type { Metre } from '../../quantities.ts';
import { type TablePipe, tablePipe } from './table-pipe.ts';

/** Nominal size, outer diameter, nominal wall. */
const ROWS: readonly (readonly [nominal: string, outerDiameter: Metre, wall: Metre])[] = [
  ['1/2 in', 0.0213, 0.00277],
  ['3/4 in', 0.0267, 0.00287],
  ['1 in', 0.0334, 0.00338],
  ['1-1/4 in', 0.0422, 0.00356],
  ['1-1/2 in', 0.0483, 0.00368],
  ['2 in', 0.0603, 0.00391],
  ['2-1/2 in', 0.073, 0.00516],
  ['3 in', 0.0889, 0.00549],
  ['4 in', 0.1143, 0.00602],
];

const FINISHES = [
  ['steel', 'steel'],
  ['galvanised steel', 'galvanisedSteel'],
] as const;

export const ASME_B36_10M: readonly TablePipe[] = FINISHES.flatMap(([word, material]) =>
  ROWS.map(([nominal, outerDiameter, wall]) =>
    tablePipe({
      name: `${word} sch 40 ${nominal}`,
      material,
      standard: 'ASME B36.10M',
      series: 'schedule 40',
      nominal,
      outerDiameter,
      innerDiameter: outerDiameter - 2 * wall,
      wallThickness: wall,
      source: 'ASME B36.10M, as listed in fluids 1.3.1',
      knownBy: 'seen',
    }),
  ),
);
