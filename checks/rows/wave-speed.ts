import {
  airFreeWaveSpeed,
  type Restraint,
  thickWallFactor,
  thinWallFactor,
  wallCompliance,
} from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import type { TableRow } from '../read-table.ts';
import { type Ours, rowsOf } from './table-rows.ts';

const RESTRAINTS: Readonly<Record<string, Restraint>> = {
  anchored_upstream: 'anchoredUpstream',
  anchored_throughout: 'anchoredThroughout',
  expansion_joints: 'expansionJoints',
};

/**
 * The trade's list for plastic classes works by a = 4660/√(1 + (K/E)(DR − 2)) in ft/s (memory): 1420.4 m/s in open
 * water, where its own K and density give 1438.5. With the latter all nine rows come out 1.2–1.7 % high; with the
 * former they meet the list's rounding, so the list's own speed is what the engine is given here.
 */
const TRADE_SOUND_SPEED = 4660 * 0.3048;

/** Wave speed in pipes of stated modulus: published classes of PVC and PE, and small pipes and hoses by formula. */
export function rows(): readonly CheckRow[] {
  return rowsOf('wave_speed', oursFor).map((row) =>
    row.source === 'UNIBELL_SURGE'
      ? { ...row, note: `${row.note}; run with the list's own 4660 ft/s in open water` }
      : row,
  );
}

function oursFor(row: TableRow): Ours {
  const bulkModulus = row.number('water_bulk_modulus_GPa') * 1e9;
  const density =
    row.text('source_id') === 'UNIBELL_SURGE'
      ? bulkModulus / TRADE_SOUND_SPEED ** 2
      : row.number('water_density_kgm3');
  const water = { bulkModulus, density };
  const restraint = RESTRAINTS[row.text('restraint')];
  if (!restraint) return { ours: () => airFreeWaveSpeed({ ...water, wallCompliance: 0 }) };
  const wall = dimensions(row);
  // The list of plastic classes gives no Poisson ratio: with expansion joints the thin-wall factor needs none.
  const poissonRatio = row.has('poisson') ? row.number('poisson') : 0;
  const factor =
    row.text('wall_model') === 'thick'
      ? thickWallFactor({ restraint, poissonRatio, ...wall })
      : thinWallFactor({ restraint, poissonRatio });
  const youngsModulus = row.number('youngs_modulus_GPa') * 1e9;
  return {
    ours: () =>
      airFreeWaveSpeed({
        ...water,
        wallCompliance: wallCompliance({ factor, youngsModulus, ...wall }),
      }),
  };
}

/** Bore and wall; for a dimension ratio alone, a pipe of 1 m of wall that has it. */
function dimensions(row: TableRow): {
  readonly innerDiameter: number;
  readonly wallThickness: number;
} {
  if (row.has('bore_mm')) {
    return {
      innerDiameter: row.number('bore_mm') / 1000,
      wallThickness: row.number('wall_mm') / 1000,
    };
  }
  const ratio = Number(/DR ([\d.]+)/.exec(row.text('material'))?.[1]);
  return { innerDiameter: ratio - 2, wallThickness: 1 };
}
