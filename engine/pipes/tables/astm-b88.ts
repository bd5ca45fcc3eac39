/**
 * Copper water tube, type L, inch sizes. Walls are nominal. Ratings are for annealed tube, worked out from the least
 * wall at 41 MPa (6000 psi) and 38 °C; brazed joints reach them, soft-soldered ones may not.
 *
 * Source: ASTM B88; dimensions seen in two tables, ratings from memory and recomputed by 2 S t/(D − 0.8 t).
 */
import type { Metre, Pascal } from '../../quantities.ts';
import { type TablePipe, tablePipe } from './table-pipe.ts';

/** Nominal size, outer diameter, nominal wall, rating. */
const ROWS: readonly (readonly [string, Metre, Metre, Pascal])[] = [
  ['1/2 in', 0.015875, 0.001016, 4.978e6],
  ['3/4 in', 0.022225, 0.001143, 4.013e6],
  ['1 in', 0.028575, 0.00127, 3.406e6],
  ['1-1/4 in', 0.034925, 0.001397, 3.027e6],
  ['1-1/2 in', 0.041275, 0.001524, 2.813e6],
  ['2 in', 0.053975, 0.001778, 2.51e6],
];

export const ASTM_B88: readonly TablePipe[] = ROWS.map(([nominal, outerDiameter, wall, rating]) =>
  tablePipe({
    name: `copper L ${nominal}`,
    material: 'copper',
    standard: 'ASTM B88',
    series: 'type L',
    nominal,
    outerDiameter,
    innerDiameter: outerDiameter - 2 * wall,
    wallThickness: wall,
    rated: { rating, ratingTemperature: 38 },
    source: 'ASTM B88, dimensions as in two tables; rating from memory',
    knownBy: 'seen',
  }),
);
