/** Every row that is checked, set by set. The tests and the validation report read this list and nothing else. */
import type { CheckRow } from './check-row.ts';
import * as atmosphere from './rows/atmosphere.ts';
import * as frictionFactor from './rows/friction-factor.ts';
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
import * as viscoelasticPe from './rows/viscoelastic-pe.ts';
import * as waterProperties from './rows/water-properties.ts';
import * as waveSpeed from './rows/wave-speed.ts';
import * as waveSpeedFreeAir from './rows/wave-speed-free-air.ts';

const ROW_SETS: readonly { readonly rows: () => readonly CheckRow[] }[] = [
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
  viscoelasticPe,
  pipeTables,
  hoses,
  materialProperties,
  notComputed,
];

export function allRows(): readonly CheckRow[] {
  return ROW_SETS.flatMap(({ rows }) => rows());
}
