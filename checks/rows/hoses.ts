import { findPipe } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { readTable } from '../read-table.ts';
import { halfLastDigit, identity } from './table-rows.ts';

/** Bores of hoses: the nominal one, and that it lies within the limits for hose made on a mandrel. */
export function rows(): readonly CheckRow[] {
  return readTable('hydraulics/hoses').flatMap((row): readonly CheckRow[] => {
    const isMetric = row.text('standard') === 'ISO 1307';
    const words = isMetric ? ['PVC hose', 'rubber hose'] : ['garden hose'];
    return words.flatMap((kind): readonly CheckRow[] => {
      const name = `${kind} ${row.text('nominal')}`;
      const found = findPipe(name);
      const base = {
        ...identity('hoses', row),
        unit: 'mm',
        published: row.number('bore_mm'),
        ours: () => (found.ok ? 1000 * found.pipe.innerDiameter : Number.NaN),
      };
      const nominal = {
        ...base,
        id: `${row.text('id')}/${kind}`,
        quantity: `bore of ${name}`,
        toleranceAbsolute: halfLastDigit(row.text('bore_mm')),
      };
      if (!isMetric) return [nominal];
      return [
        nominal,
        {
          ...base,
          id: `${row.text('id')}/${kind}, limits`,
          quantity: `bore of ${name} within limits`,
          low: row.number('bore_min_mandrel_mm'),
          high: row.number('bore_max_mandrel_mm'),
        },
      ];
    });
  });
}
