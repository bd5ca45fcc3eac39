import { GRAVITY, suddenContractionLoss, suddenExpansionLoss } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { rowsOf } from './table-rows.ts';

/** Head lost at a sudden change of bore. */
export function rows(): readonly CheckRow[] {
  return rowsOf('minor_loss_checks', (row) => {
    const [upstream, downstream] = [
      row.number('upstream_bore_mm'),
      row.number('downstream_bore_mm'),
    ];
    const bores = {
      smallBore: Math.min(upstream, downstream) / 1000,
      largeBore: Math.max(upstream, downstream) / 1000,
    };
    const loss = row.text('kind') === 'expansion' ? suddenExpansionLoss : suddenContractionLoss;
    const velocityHead = row.number('small_bore_velocity_ms') ** 2 / (2 * GRAVITY);
    return { ours: () => loss(bores) * velocityHead };
  });
}
