/** Every row that is checked, set by set. The tests and the validation report read this list and nothing else. */
import type { CheckRow } from './check-row.ts';
import { readTable } from './read-table.ts';
import * as airVessel from './rows/air-vessel.ts';
import * as atmosphere from './rows/atmosphere.ts';
import * as commonPractice from './rows/common-practice.ts';
import * as experiments from './rows/experiments.ts';
import * as flowBucketFloat from './rows/flow-bucket-float.ts';
import * as flowWeirs from './rows/flow-weirs.ts';
import * as frictionFactor from './rows/friction-factor.ts';
import * as gridConvergence from './rows/grid-convergence.ts';
import * as handbookDailyOutput from './rows/handbook-daily-output.ts';
import * as handbookEfficiency from './rows/handbook-efficiency.ts';
import * as handbookSizes from './rows/handbook-sizes.ts';
import * as hazenWilliams from './rows/hazen-williams.ts';
import * as hoses from './rows/hoses.ts';
import * as joukowsky from './rows/joukowsky.ts';
import * as materialProperties from './rows/material-properties.ts';
import * as minorLossChecks from './rows/minor-loss-checks.ts';
import * as minorLosses from './rows/minor-losses.ts';
import * as notComputed from './rows/not-computed.ts';
import * as pipeFlowExamples from './rows/pipe-flow-examples.ts';
import * as pipeTables from './rows/pipe-tables.ts';
import * as rigidColumn from './rows/rigid-column.ts';
import * as rulesOfThumb from './rows/rules-of-thumb.ts';
import * as surgeExact from './rows/surge-exact.ts';
import * as surgeMocFriction from './rows/surge-moc-friction.ts';
import * as viscoelasticPe from './rows/viscoelastic-pe.ts';
import * as waterDemand from './rows/water-demand.ts';
import * as waterProperties from './rows/water-properties.ts';
import * as waveSpeed from './rows/wave-speed.ts';
import * as waveSpeedFreeAir from './rows/wave-speed-free-air.ts';
import * as workedExamples from './rows/worked-examples.ts';

interface RowSet {
  readonly rows: () => readonly CheckRow[];
}

/** General hydraulics. */
const HYDRAULICS: readonly RowSet[] = [
  waterProperties,
  atmosphere,
  frictionFactor,
  pipeFlowExamples,
  hazenWilliams,
  minorLosses,
  minorLossChecks,
  waveSpeed,
  waveSpeedFreeAir,
  joukowsky,
  rigidColumn,
  surgeExact,
  surgeMocFriction,
  viscoelasticPe,
  airVessel,
  pipeTables,
  hoses,
  materialProperties,
  waterDemand,
  flowWeirs,
  flowBucketFloat,
  notComputed,
];

/** Rams. */
const RAMS: readonly RowSet[] = [
  experiments,
  workedExamples,
  handbookEfficiency,
  handbookDailyOutput,
  handbookSizes,
  rulesOfThumb,
  commonPractice,
  gridConvergence,
];

/** A row that is known to miss, and why. */
export interface KnownMiss {
  readonly table: string;
  readonly id: string;
  readonly reason: string;
}

export function knownMisses(): readonly KnownMiss[] {
  return readTable('known-misses').map((row) => ({
    table: row.text('table'),
    id: row.text('id'),
    reason: row.text('reason'),
  }));
}

/** The folders of `data` that hold tables. */
export const SUBJECTS = ['hydraulics', 'ram'] as const;
export type Subject = (typeof SUBJECTS)[number];

export function rowsOfSubject(subject: Subject): readonly CheckRow[] {
  const misses = new Map(knownMisses().map(({ table, id, reason }) => [`${table} ${id}`, reason]));
  const sets = subject === 'ram' ? RAMS : HYDRAULICS;
  return sets.flatMap(({ rows }) =>
    rows().map((row) => {
      const miss = misses.get(`${row.table} ${row.id}`);
      return miss === undefined ? row : { ...row, miss };
    }),
  );
}

export function allRows(): readonly CheckRow[] {
  return SUBJECTS.flatMap(rowsOfSubject);
}
