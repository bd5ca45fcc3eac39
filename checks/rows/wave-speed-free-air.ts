import { airFreeWaveSpeed, mixtureWaveSpeed, STANDARD_ATMOSPHERE } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { rowsOf } from './table-rows.ts';

/** The water that the computed rows state. */
const WATER = { bulkModulus: 2.19e9, density: 998.2 };

/** Wave speed in water with free air, and the published half speed at one part in 10⁴. */
export function rows(): readonly CheckRow[] {
  return rowsOf('wave_speed_free_air', (row) => {
    const airFraction = row.number('air_fraction');
    if (row.text('quantity') === 'wave_speed_ratio_to_air_free') {
      const rigid = { ...WATER, wallCompliance: 0 };
      // The paper does not say how fast its bubbles give up heat; slow is the nearer of the two bounds.
      const air = { airFraction, absolutePressure: STANDARD_ATMOSPHERE, polytropicIndex: 1 };
      return { ours: () => mixtureWaveSpeed({ ...rigid, ...air }) / airFreeWaveSpeed(rigid) };
    }
    return {
      ours: () =>
        mixtureWaveSpeed({
          ...WATER,
          airFraction,
          wallCompliance: row.number('pipe_term_1Pa'),
          absolutePressure: row.number('pressure_abs_kPa') * 1000,
          polytropicIndex: row.number('polytropic_n'),
        }),
    };
  });
}
