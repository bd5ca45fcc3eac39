/**
 * Steel tube for welding and threading, medium series, black or galvanised. The standard gives no rating: the thread
 * governs.
 *
 * Source: EN 10255 (2004). Walls to DN 50 seen in a supplier's table; outer diameters, and all of DN 65–100, from memory.
 */
import type { Metre } from '../../quantities.ts';
import type { KnownBy } from '../evidence.ts';
import { type TablePipe, tablePipe } from './table-pipe.ts';

/** Nominal size, outer diameter, nominal wall, how the wall is known. */
const ROWS: readonly (readonly [string, Metre, Metre, KnownBy])[] = [
  ['DN15', 0.0213, 0.0026, 'seen'],
  ['DN20', 0.0269, 0.0026, 'seen'],
  ['DN25', 0.0337, 0.0032, 'seen'],
  ['DN32', 0.0424, 0.0032, 'seen'],
  ['DN40', 0.0483, 0.0032, 'seen'],
  ['DN50', 0.0603, 0.0036, 'seen'],
  ['DN65', 0.0761, 0.0036, 'memory'],
  ['DN80', 0.0889, 0.004, 'memory'],
  ['DN100', 0.1143, 0.0045, 'memory'],
];

const FINISHES = [
  ['steel EN 10255', 'steel'],
  ['galvanised steel', 'galvanisedSteel'],
] as const;

export const EN_10255: readonly TablePipe[] = FINISHES.flatMap(([words, material]) =>
  ROWS.map(([nominal, outerDiameter, wall, knownBy]) =>
    tablePipe({
      name: `${words} ${nominal}`,
      material,
      standard: 'EN 10255',
      series: 'medium',
      nominal,
      outerDiameter,
      innerDiameter: outerDiameter - 2 * wall,
      wallThickness: wall,
      source: 'EN 10255 (2004), table 2; supplier table of EN 10255 and BS 1387',
      knownBy,
    }),
  ),
);
