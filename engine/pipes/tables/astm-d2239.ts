/**
 * PE pipe with a controlled bore (SIDR), inch sizes, joined with insert fittings and clamps. Two classes of polymer:
 * PE3408 (also 3608) and the newer PE4710. `PE` alone is taken as PE3408, the lower rating.
 *
 * The table is made by the rules of the standard, as its text could not be read: bore that of schedule 40, wall the bore
 * over SIDR but not under 0.060 in (1.524 mm), rating 2 HDS/(SIDR + 1) put on the usual step.
 *
 * Source: ASTM D2239-12 (scope seen, rules from memory). A supplier's list that was seen mixes the two classes.
 */
import type { Metre } from '../../quantities.ts';
import { POUND_PER_SQUARE_INCH, type TablePipe, tablePipe } from './table-pipe.ts';

/** Nominal size, controlled bore. */
const SIZES = [
  ['1/2 in', 0.0157988],
  ['3/4 in', 0.0209296],
  ['1 in', 0.0266446],
  ['1-1/4 in', 0.035052],
  ['1-1/2 in', 0.040894],
  ['2 in', 0.0525018],
] as const;

/** SIDR; least wall in thousandths of an inch for each size in turn; rating in psi of PE3408 and of PE4710. */
const SERIES = [
  [7, [89, 118, 150, 197, 230, 295], 200, 250],
  [9, [69, 92, 117, 153, 179, 230], 160, 200],
  [11.5, [60, 72, 91, 120, 140, 180], 125, 160],
  [15, [60, 60, 70, 92, 107, 138], 100, 125],
  [19, [60, 60, 60, 73, 85, 109], 80, 100],
] as const;

const THOUSANDTH_OF_AN_INCH: Metre = 2.54e-5;

const table = (polymer: 'PE' | 'PE4710'): readonly TablePipe[] =>
  SERIES.flatMap(([ratio, walls, ratingOf3408, ratingOf4710]) =>
    SIZES.map(([nominal, innerDiameter], size) => {
      const wallThickness = (walls[size] ?? 0) * THOUSANDTH_OF_AN_INCH;
      const printedRating = polymer === 'PE' ? ratingOf3408 : ratingOf4710;
      return tablePipe({
        name: `${polymer} SIDR ${ratio} ${nominal}`,
        material: 'pe',
        standard: 'ASTM D2239',
        series: `SIDR ${ratio}, ${polymer === 'PE' ? 'PE3408/3608' : 'PE4710'}`,
        nominal,
        outerDiameter: innerDiameter + 2 * wallThickness,
        innerDiameter,
        wallThickness,
        rated: { rating: printedRating * POUND_PER_SQUARE_INCH, ratingTemperature: 23 },
        source: 'ASTM D2239-12, by its rules from memory',
        knownBy: 'memory',
      });
    }),
  );

export const ASTM_D2239: readonly TablePipe[] = [...table('PE'), ...table('PE4710')];
