import { FITTINGS, type FittingName } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { readTable } from '../read-table.ts';
import { identity, withOurs } from './table-rows.ts';

const OUR_NAMES: Readonly<Record<string, FittingName>> = {
  'ML-ENT-PROJ': 'entrance, pipe projecting inward',
  'ML-ENT-SHARP': 'entrance, sharp edge',
  'ML-ENT-SLIGHT': 'entrance, slightly rounded',
  'ML-ENT-BELL': 'entrance, bell mouth',
  'ML-EXIT': 'exit into a tank',
  'ML-90R-T': 'elbow 90, threaded',
  'ML-90R-F': 'elbow 90, flanged or glued',
  'ML-90L-T': 'long elbow 90, threaded',
  'ML-90L-F': 'long elbow 90, flanged or glued',
  'ML-45R-T': 'elbow 45, threaded',
  'ML-TL-T': 'tee straight through, threaded',
  'ML-TB-T': 'tee into the branch, threaded',
  'ML-TB-F': 'tee into the branch, flanged or glued',
  'ML-RB-F': 'return bend 180, flanged or glued',
  'ML-MITRE90': 'mitre 90',
  'ML-MITRE45': 'mitre 45',
  'ML-V-GLOBE': 'globe valve, open',
  'ML-V-ANGLE': 'angle valve, open',
  'ML-V-GATE': 'gate valve, open',
  'ML-V-GATE34': 'gate valve, quarter closed',
  'ML-V-GATE12': 'gate valve, half closed',
  'ML-V-BALL': 'ball valve, open',
  'ML-V-BALL23': 'ball valve, two thirds closed',
  'ML-V-DIAPH': 'diaphragm valve, open',
  'ML-V-SWING': 'swing check valve',
  'ML-V-LIFT': 'lift check valve',
  'ML-V-BALLCHK': 'ball check valve',
  'ML-V-BUTTERFLY': 'butterfly valve, open',
  'ML-FOOT-HINGE': 'foot valve with strainer, hinged disc',
  'ML-FOOT-POPPET': 'foot valve with strainer, poppet disc',
  'ML-STRAINER': 'strainer, clean',
};

/** Loss coefficients of fittings. Lists differ, so ours has to lie in the range that they span. */
export function rows(): readonly CheckRow[] {
  return readTable('hydraulics/minor_losses').map((row) => {
    const name = OUR_NAMES[row.text('id')];
    return {
      ...identity('minor_losses', row),
      quantity: `loss coefficient, ${name ?? row.text('fitting')}`,
      unit: '-',
      published: row.has('K') ? row.number('K') : Number.NaN,
      low: row.has('K_low') ? row.number('K_low') : Number.NaN,
      high: row.has('K_high') ? row.number('K_high') : Number.NaN,
      ...withOurs(
        name
          ? { ours: () => FITTINGS[name].value }
          : { skip: 'a formula, no number: its numbers are run in minor_loss_checks' },
      ),
    };
  });
}
