/**
 * Hoses by bore: metric sizes of the standard in PVC and in rubber, and garden hose by its trade size. Makers give no
 * common wall or rating, so a hose has a stated default wall and no rating: read the one printed on it.
 *
 * Judgement: default walls are 1 mm + 0.12 of the bore for reinforced PVC and 2 mm + 0.12 of the bore for rubber, which
 * is 4 and 5 mm at 25 mm (common practice, no source). Outer diameters follow from them.
 *
 * Source: ISO 1307 (2008), bores in a hose maker's table (seen); trade sizes from memory, real bores vary by 0.8 mm.
 */
import type { Metre } from '../../quantities.ts';
import type { KnownBy } from '../evidence.ts';
import { type TablePipe, tablePipe } from './table-pipe.ts';

type Size = readonly [nominal: string, bore: Metre];
const ISO_1307_SIZES: readonly Size[] = [
  ['10 mm', 0.01],
  ['12.5 mm', 0.0125],
  ['16 mm', 0.016],
  ['19 mm', 0.019],
  ['25 mm', 0.025],
  ['31.5 mm', 0.0315],
  ['38 mm', 0.038],
  ['50 mm', 0.05],
];
const TRADE_SIZES: readonly Size[] = [
  ['1/2 in', 0.0127],
  ['5/8 in', 0.015875],
  ['3/4 in', 0.01905],
  ['1 in', 0.0254],
];

const WALL = {
  pvcHose: { least: 0.001, perBore: 0.12 },
  rubberHose: { least: 0.002, perBore: 0.12 },
} as const;

const table = (
  words: string,
  material: 'pvcHose' | 'rubberHose',
  sizes: readonly Size[],
  origin: { readonly standard: string; readonly source: string; readonly knownBy: KnownBy },
): readonly TablePipe[] =>
  sizes.map(([nominal, bore]) => {
    const wallThickness = WALL[material].least + WALL[material].perBore * bore;
    return tablePipe({
      name: `${words} ${nominal}`,
      material,
      series: material === 'pvcHose' ? 'reinforced PVC' : 'rubber',
      nominal,
      outerDiameter: bore + 2 * wallThickness,
      innerDiameter: bore,
      wallThickness,
      ...origin,
    });
  });

const METRIC = {
  standard: 'ISO 1307',
  source: 'ISO 1307 (2008), bores as in a hose maker’s table; wall by common practice',
  knownBy: 'seen',
} as const;
const TRADE = {
  standard: 'garden hose trade size',
  source: 'trade sizes, inch bore by name; wall by common practice',
  knownBy: 'memory',
} as const;

export const HOSES: readonly TablePipe[] = [
  ...table('PVC hose', 'pvcHose', ISO_1307_SIZES, METRIC),
  ...table('rubber hose', 'rubberHose', ISO_1307_SIZES, METRIC),
  ...table('garden hose', 'pvcHose', TRADE_SIZES, TRADE),
];
