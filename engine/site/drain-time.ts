import type { Installation, StoredSource } from '../cycle/installation.ts';
import { delivers, operatingPoint } from '../cycle/operating-point.ts';
import type { Metre, Second } from '../quantities.ts';

/** Levels at which the ram's draw is found. Judgement: the draw changes smoothly with the fall, and four intervals follow it. */
const LEVELS = 5;

/**
 * How long a ram runs from a full store until the intake comes out of the water.
 *
 *   t = ∫ A dz / (Q_drive(z) − Q_in)
 *
 * The beat is taken as settled at every level (a beat is short against the emptying). Infinity when the inflow keeps up; the
 * time to the level at which the ram stops of itself when it stops before.
 * Source: water balance of the store (METHOD §3); the steps are Judgement.
 */
export function drainTime(installation: Installation, source: StoredSource): Second {
  const slice = source.depthOverIntake / LEVELS;
  let time = 0;
  for (let k = 0; k < LEVELS; k++) {
    const drop: Metre = (k + 0.5) * slice;
    const lower = atFall(installation, installation.fall - drop);
    if (lower.fall <= 0) return time;
    const point = operatingPoint(lower);
    if (!delivers(point)) return time;
    const draw = point.supplyFlow - source.inflow;
    if (draw <= 0) return Infinity;
    time += (source.surfaceArea * slice) / draw;
  }
  return time;
}

/** The installation as if its source stood still at a level. */
export function atFall(installation: Installation, fall: Metre): Installation {
  return { ...installation, fall, source: { kind: 'steady' } };
}
