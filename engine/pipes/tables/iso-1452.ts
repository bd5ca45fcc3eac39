/**
 * Metric PVC-U pressure pipe by outer diameter and pressure class. Walls are the least allowed. Ratings are for water at
 * up to 25 °C.
 *
 * Source: ISO 1452-2 (2009), walls seen in a table of DIN 8062, which uses the same design stress; 32 mm PN 10 and both
 * 110 mm rows from memory (the older table prints 1.8, 5.3 and 8.2 mm there).
 */
import type { Metre } from '../../quantities.ts';
import type { KnownBy } from '../evidence.ts';
import { type TablePipe, tablePipe } from './table-pipe.ts';

/** Outer diameter in whole millimetres, as the pipe is named; least wall; how it is known. */
type Row = readonly [size: number, wall: Metre, knownBy: KnownBy];
const PN_10: readonly Row[] = [
  [32, 0.0016, 'memory'],
  [40, 0.0019, 'seen'],
  [50, 0.0024, 'seen'],
  [63, 0.003, 'seen'],
  [75, 0.0036, 'seen'],
  [90, 0.0043, 'seen'],
  [110, 0.0042, 'memory'],
];
const PN_16: readonly Row[] = [
  [20, 0.0015, 'seen'],
  [25, 0.0019, 'seen'],
  [32, 0.0024, 'seen'],
  [40, 0.003, 'seen'],
  [50, 0.0037, 'seen'],
  [63, 0.0047, 'seen'],
  [75, 0.0056, 'seen'],
  [90, 0.0067, 'seen'],
  [110, 0.0066, 'memory'],
];

const table = (pressureClass: 10 | 16): readonly TablePipe[] =>
  (pressureClass === 10 ? PN_10 : PN_16).map(([size, wall, knownBy]) =>
    tablePipe({
      name: `PVC-U PN${pressureClass} ${size}`,
      material: 'pvcU',
      standard: 'ISO 1452-2',
      series: `PN ${pressureClass}`,
      nominal: `${size} mm`,
      outerDiameter: size / 1000,
      innerDiameter: size / 1000 - 2 * wall,
      wallThickness: wall,
      // A pressure class is the rating in bar.
      rated: { rating: pressureClass * 1e5, ratingTemperature: 20 },
      source: 'ISO 1452-2 (2009), walls as in DIN 8062',
      knownBy,
    }),
  );

export const ISO_1452: readonly TablePipe[] = [...table(10), ...table(16)];
