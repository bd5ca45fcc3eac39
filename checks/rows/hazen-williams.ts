import { hazenWilliamsGradient } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { rowsOf } from './table-rows.ts';

/** Head loss per length by the older formula: a state's printed table for plastic, and the formula itself. */
export function rows(): readonly CheckRow[] {
  return rowsOf('hazen_williams', (row) => ({
    ours: () =>
      hazenWilliamsGradient({
        innerDiameter: row.number('bore_m'),
        coefficient: row.number('hazen_c'),
        flow: row.number('flow_m3s'),
      }),
  }));
}
