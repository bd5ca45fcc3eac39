import { colebrookFriction, darcyFriction, laminarFriction } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { readTable } from '../read-table.ts';
import { identity } from './table-rows.ts';

/**
 * Darcy factors of laminar and turbulent flow against the law that the engine uses.
 *
 * In the transition no law is agreed on. There the printed Colebrook–White root is held against that formula, and the
 * engine's own law has to lie between it and the laminar law, as the table asks.
 */
export function rows(): readonly CheckRow[] {
  return readTable('hydraulics/friction_factor').flatMap((row): readonly CheckRow[] => {
    const reynolds = row.number('reynolds');
    const relativeRoughness = row.number('rel_roughness');
    const published = row.number('value');
    const base = {
      ...identity('friction_factor', row),
      quantity: row.text('quantity'),
      unit: row.text('unit'),
      published,
    };
    const toleranceRelative = row.number('tolerance_rel');
    const ours = () => darcyFriction(reynolds, relativeRoughness);
    if (row.text('regime') !== 'transitional') return [{ ...base, toleranceRelative, ours }];
    return [
      {
        ...base,
        toleranceRelative,
        ours: () => colebrookFriction({ reynolds, relativeRoughness }),
      },
      {
        ...base,
        id: `${base.id}/bounds`,
        low: laminarFriction(reynolds),
        high: published,
        ours,
      },
    ];
  });
}
