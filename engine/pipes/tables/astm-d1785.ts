/**
 * PVC pipe in steel-pipe sizes, schedules 40 and 80, compound 1120. Walls are the least allowed. Threading halves the
 * rating, and schedule 40 should not be threaded at all.
 *
 * Source: ASTM D1785-88, extract (seen); ratings at 23 °C as printed, 2 S t/(OD − t) with S = 13.8 MPa (2000 psi).
 */
import type { Metre } from '../../quantities.ts';
import { POUND_PER_SQUARE_INCH, type TablePipe, tablePipe } from './table-pipe.ts';

/** Nominal size, outer diameter; then for each schedule the least wall, the bore from it, and the printed rating. */
type Schedule = readonly [wall: Metre, bore: Metre, poundsPerSquareInch: number];
const ROWS: readonly (readonly [string, Metre, Schedule, Schedule])[] = [
  ['1/2 in', 0.021336, [0.00277, 0.015799, 600], [0.00373, 0.013868, 850]],
  ['3/4 in', 0.02667, [0.00287, 0.02093, 480], [0.00391, 0.018847, 690]],
  ['1 in', 0.033401, [0.00338, 0.026645, 450], [0.00455, 0.024308, 630]],
  ['1-1/4 in', 0.042164, [0.00356, 0.035052, 370], [0.00485, 0.032461, 520]],
  ['1-1/2 in', 0.04826, [0.00368, 0.040894, 330], [0.00508, 0.0381, 470]],
  ['2 in', 0.060325, [0.00391, 0.052502, 280], [0.00554, 0.049251, 400]],
  ['2-1/2 in', 0.073025, [0.00516, 0.062713, 300], [0.00701, 0.059004, 420]],
  ['3 in', 0.0889, [0.00549, 0.077927, 260], [0.00762, 0.07366, 370]],
  ['4 in', 0.1143, [0.00602, 0.10226, 220], [0.00856, 0.09718, 320]],
];

const table = (schedule: 40 | 80): readonly TablePipe[] =>
  ROWS.map(([nominal, outerDiameter, forty, eighty]) => {
    const [wallThickness, innerDiameter, printedRating] = schedule === 40 ? forty : eighty;
    return tablePipe({
      name: `PVC sch ${schedule} ${nominal}`,
      material: 'pvc1120',
      standard: 'ASTM D1785',
      series: `schedule ${schedule}`,
      nominal,
      outerDiameter,
      innerDiameter,
      wallThickness,
      rated: { rating: printedRating * POUND_PER_SQUARE_INCH, ratingTemperature: 23 },
      source: 'ASTM D1785-88, extract of dimensions and pressure ratings',
      knownBy: 'seen',
    });
  });

export const ASTM_D1785: readonly TablePipe[] = [...table(40), ...table(80)];
