import { creepCompliance, HDPE_CREEP } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { readTable } from '../read-table.ts';
import { identity } from './table-rows.ts';

/** The engine keeps the parameters with the digits that the table prints, so they must be the same. */
const SAME = 1e-9;

/** Creep of HDPE: the parameters that the engine uses, and the algebra of the creep law. */
export function rows(): readonly CheckRow[] {
  return readTable('hydraulics/viscoelastic_pe').map((row) => {
    const base = {
      ...identity('viscoelastic_pe', row),
      unit: row.text('unit'),
      published: row.number('value'),
    };
    if (row.text('kind') === 'formula check') {
      return {
        ...base,
        quantity: 'creep_compliance',
        toleranceRelative: row.number('tolerance_rel'),
        ours: () => creepCompliance(HDPE_CREEP, row.number('time_s')),
      };
    }
    const element = row.number('element');
    return {
      ...base,
      quantity: element === 0 ? 'instant_compliance' : `compliance_of_element_${element}`,
      toleranceRelative: SAME,
      ours: () =>
        element === 0
          ? HDPE_CREEP.instantCompliance
          : complianceAt(row.number('retardation_time_s')),
    };
  });
}

/** Compliance of the element with this retardation time; NaN, which fails, when there is none. */
function complianceAt(retardationTime: number): number {
  const element = HDPE_CREEP.elements.find((one) => one.retardationTime === retardationTime);
  return element?.compliance ?? Number.NaN;
}
