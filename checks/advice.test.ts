/** The rules of the trade that a choice tells are those of rules_of_thumb.csv, figure for figure. */
import { type AdviceRule, RULES } from '@fallwright/engine';
import { expect, test } from 'vitest';
import { readTable } from './read-table.ts';

/** What a rule's SI figure is multiplied with to stand as the table prints it. */
const PRINTED: Partial<Record<AdviceRule, number>> = { beatRate: 60, deliveryFriction: 100 };
/** Rules that the table gives in words alone. */
const IN_WORDS: Partial<Record<AdviceRule, RegExp>> = {
  rigidDrivePipe: /rigid/,
  feederOverDriveBore: /at least one size above drive pipe/,
};

const ROWS = new Map(readTable('ram/rules_of_thumb').map((row) => [row.text('id'), row]));

for (const [name, { id, low, high, source }] of Object.entries(RULES)) {
  const rule = name as AdviceRule;
  test(`${id} ${rule}: the range is the table's`, () => {
    const row = ROWS.get(id);
    if (!row) throw new Error(`no row ${id}`);
    const range = row.text('range');
    const words = IN_WORDS[rule];
    if (words) expect(range).toMatch(words);
    else {
      const printed = (range.match(/\d+(\.\d+)?/g) ?? []).map(Number);
      for (const end of [low, high]) {
        if (end !== undefined)
          expect(printed).toContain(Number((end * (PRINTED[rule] ?? 1)).toFixed(9)));
      }
    }
    // How a rule is known is told with it.
    expect(source.includes('memory')).toBe(row.text('known_by') === 'memory');
    expect(source === 'common practice, no source').toBe(row.text('source_id') === 'COMMON');
  });
}
