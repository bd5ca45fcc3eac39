/**
 * Metric PE pressure pipe by outer diameter and dimension ratio. Walls are the least allowed, so bores are the largest.
 * Ratings are for water at 20 °C and fifty years.
 *
 * Source: ISO 4427-2 (2007) and EN 12201-2 (2003); PE100 walls agree in two suppliers' tables (seen). PE80 has the same
 * walls by dimension ratio; its rating 2 σ/(SDR − 1) with σ = 6.3 MPa, printed as 12.5 bar, is from memory.
 */
import type { Metre, Pascal } from '../../quantities.ts';
import type { KnownBy } from '../evidence.ts';
import { type TablePipe, tablePipe } from './table-pipe.ts';

/** Outer diameter in whole millimetres, as the pipe is named; least wall. */
type Row = readonly [size: number, wall: Metre];
const SDR_11: readonly Row[] = [
  [20, 0.002],
  [25, 0.0023],
  [32, 0.003],
  [40, 0.0037],
  [50, 0.0046],
  [63, 0.0058],
  [75, 0.0068],
  [90, 0.0082],
  [110, 0.01],
];
/** Not made in 20 and 25: the wall would be under 2 mm. */
const SDR_17: readonly Row[] = [
  [32, 0.002],
  [40, 0.0024],
  [50, 0.003],
  [63, 0.0038],
  [75, 0.0045],
  [90, 0.0054],
  [110, 0.0066],
];

const table = (
  polymer: 'PE100' | 'PE80',
  ratio: 11 | 17,
  rating: Pascal,
  knownBy: KnownBy,
): readonly TablePipe[] =>
  (ratio === 11 ? SDR_11 : SDR_17).map(([size, wall]) =>
    tablePipe({
      name: `${polymer} SDR${ratio} ${size}`,
      material: polymer === 'PE100' ? 'pe100' : 'pe80',
      standard: 'ISO 4427-2',
      series: `${polymer} SDR ${ratio}`,
      nominal: `${size} mm`,
      outerDiameter: size / 1000,
      innerDiameter: size / 1000 - 2 * wall,
      wallThickness: wall,
      rated: { rating, ratingTemperature: 20 },
      source: 'ISO 4427-2 (2007), EN 12201-2 (2003), as in suppliers’ tables',
      knownBy,
    }),
  );

export const ISO_4427: readonly TablePipe[] = [
  ...table('PE100', 11, 1.6e6, 'seen'),
  ...table('PE100', 17, 1e6, 'seen'),
  ...table('PE80', 11, 1.25e6, 'memory'),
];
