import { bucketFlow, floatFlow, SURFACE_COEFFICIENT } from '@fallwright/engine';
import { toLitres } from '@fallwright/units';
import type { CheckRow } from '../check-row.ts';
import type { TableRow } from '../read-table.ts';
import { type Ours, rowsOf } from './table-rows.ts';

/** Timed containers and floats; and the coefficient of a float that we take against those that others print. */
export function rows(): readonly CheckRow[] {
  return rowsOf('flow_bucket_float', oursFor);
}

function oursFor(row: TableRow): Ours {
  if (row.text('quantity') !== 'flow') return { ours: () => SURFACE_COEFFICIENT.value };
  const times = [{ value: row.number('time_s') }];
  if (row.has('volume_L')) {
    const volume = { value: row.number('volume_L') / 1000 };
    return { ours: () => toLitres(bucketFlow({ volume, times }).flow) };
  }
  return {
    ours: () =>
      toLitres(
        floatFlow({
          length: { value: row.number('distance_m') },
          // The five times of the source, whose mean is the time of the row.
          times: [50, 47, 51, 48, 54].map((value) => ({ value })),
          section: { area: { value: row.number('area_m2') } },
          coefficient: { value: row.number('surface_coefficient') },
        }).flow,
      ),
  };
}
