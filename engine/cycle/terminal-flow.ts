import { flowArea } from '../machine/waste-valve.ts';
import type { PipeSegment } from '../pipes/pipe.ts';
import { steadyFlow } from '../pipes/steady-flow.ts';
import type { CubicMetrePerSecond } from '../quantities.ts';
import { airLockOf } from './air-lock.ts';
import type { Installation } from './installation.ts';

/** Flow through the drive line and the wide-open waste valve, steady. */
export function terminalFlow(installation: Installation): CubicMetrePerSecond {
  const { driveLine, fall, water, ram } = installation;
  const last = driveLine.segments.at(-1) as PipeSegment;
  const area = (Math.PI / 4) * last.pipe.innerDiameter ** 2;
  const open = flowArea(ram.wasteValve, ram.wasteValve.stroke);
  const { flow } = steadyFlow({
    segments: driveLine.segments,
    fall: fall - airLockOf(driveLine, fall),
    // The whole head at the body is spent in the valve: Q = A √(2 g H) is a loss of (area/A)² on the pipe's velocity head.
    extraLosses: { entrance: driveLine.entranceLoss, outlet: (area / open) ** 2 },
    water,
  });
  return flow;
}
