import { interpolate } from '../numerics/interpolate.ts';
import type { Metre } from '../quantities.ts';
import { MATERIALS } from './materials.ts';
import type { Pipe } from './pipe.ts';

/**
 * Tightest cold bend that a pipe should be laid in for good, or nothing when no source states one.
 *
 *   r = (r/OD) OD, the ratio by outer diameter over wall
 *
 * Walls thicker or thinner than the table take its end value. A bend with a fitting in it must be much wider (HDPE
 * 100 OD).
 *
 * Source: stands with each material in `MATERIALS`.
 */
export function minimumBendRadius(pipe: Pipe): Metre | undefined {
  const table = MATERIALS[pipe.material].bendRadius;
  if (!table) return undefined;
  const outerDiameter = pipe.innerDiameter + 2 * pipe.wallThickness;
  const ratios = table.points.map(([ratio]) => ratio);
  const dimensionRatio = outerDiameter / pipe.wallThickness;
  const within = Math.min(Math.max(dimensionRatio, Math.min(...ratios)), Math.max(...ratios));
  return interpolate(table.points, within) * outerDiameter;
}
