import { type Gauged, rectangularWeirFlow, vNotchFlow } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import type { TableRow } from '../read-table.ts';
import { rowsOf } from './table-rows.ts';

/**
 * Flows over thin-plate weirs. Rows by another formula than ours (plain power laws, Francis) are run against ours all the same:
 * their tolerance is that of typing the formula, so that most are known misses which show how far the formulas lie apart.
 */
export function rows(): readonly CheckRow[] {
  return rowsOf('flow_weirs', (row) => ({ ours: () => gaugedIn(row).flow }));
}

function gaugedIn(row: TableRow): Gauged {
  const heads = [{ value: row.number('head_m') }];
  if (row.has('notch_angle_deg')) {
    return vNotchFlow({ angle: { value: (row.number('notch_angle_deg') / 180) * Math.PI }, heads });
  }
  const width = row.number('crest_width_m');
  const isSuppressed = row.text('method').includes('suppressed');
  return rectangularWeirFlow({
    width: { value: width },
    heads,
    // Where a table prints no channel it means full contraction, or a crest right across: a deep pool, wide or as wide.
    crestHeight: row.has('crest_height_m') ? row.number('crest_height_m') : Infinity,
    channelWidth: row.has('channel_width_m')
      ? row.number('channel_width_m')
      : isSuppressed
        ? width
        : Infinity,
  });
}
