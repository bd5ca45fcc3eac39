import type { Metre } from '../quantities.ts';
import { driveElevation } from './drive-elevation.ts';
import type { AirPocket, DriveLine } from './installation.ts';

/**
 * Head that a caught pocket takes from the line: the air lies on the falling leg behind its crest, and the water that it
 * keeps out there no longer pushes.
 *
 *   h = z(crest) − z(crest + V/A), at most down to the ram
 *
 * Source: common practice, no source ("a pocket costs the height of water it displaces").
 */
export function airLockHead(line: DriveLine, fall: Metre, pocket: AirPocket): Metre {
  let behind = 0;
  let segment = line.segments[0];
  for (const s of line.segments) {
    segment = s;
    if (pocket.distance < behind + s.length) break;
    behind += s.length;
  }
  if (!segment) return 0;
  const area = (Math.PI / 4) * segment.pipe.innerDiameter ** 2;
  const length = pocket.volume / area;
  const total = line.segments.reduce((sum, s) => sum + s.length, 0);
  const top = driveElevation(line, fall, pocket.distance);
  const foot = driveElevation(line, fall, Math.min(total, pocket.distance + length));
  return Math.min(fall, Math.max(0, top - foot));
}

/** Head that all pockets of a line take together, never more than the fall. */
export function airLockOf(line: DriveLine, fall: Metre): Metre {
  const sum = line.pockets.reduce((lost, pocket) => lost + airLockHead(line, fall, pocket), 0);
  return Math.min(fall, sum);
}
