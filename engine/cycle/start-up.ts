/**
 * A cold start: the drive line full and at rest, no pressure in vessel and delivery line but that of the source's level.
 *
 * A person pushes the waste valve open and lets go, and pushes again whenever it has stayed shut for as long as a person
 * waits. The pushes are counted until the ram beats alone. With the delivery stop valve kept shut until then (the usual
 * practice) the back pressure is that of the squeezed air; with it open, that of the front of the water on its way up.
 */
import { openingForces, seatArea } from '../machine/waste-valve.ts';
import type { Second } from '../quantities.ts';
import { GRAVITY } from '../quantities.ts';
import { DeliveryColumn, STOP_VALVE_SHUT } from './delivery-column.ts';
import type { Installation } from './installation.ts';
import type { RunOptions } from './operating-point.ts';
import { ramKernel, stillTime, waveReturnTime } from './operating-point.ts';
import type { StartUp } from './run-record.ts';

export interface StartUpOptions extends RunOptions {
  readonly stopValve: 'shut' | 'open';
  /** Longest start that is followed. */
  readonly longest?: Second;
}

/** Judgement: five minutes of pushing is more than anyone does. */
const LONGEST: Second = 300;
/** Beats in a row without a push after which the ram is said to go on alone. */
const BEATS_ALONE = 12;
/** Pushes after which a person gives up. Source: trade guides speak of 20–30 (memory); 60 leaves room. */
const MOST_PUSHES = 60;
/** How long a person waits before pushing again. Judgement: a second, or until the waves have come back a few times. */
const PATIENCE: Second = 1;

/** Follows a start from cold and counts the pushes by hand. */
export function startUp(installation: Installation, options: StartUpOptions): StartUp {
  const { fall } = installation;
  const kernel = ramKernel(installation, fall, options);
  const isShut = options.stopValve === 'shut';
  const outflow = isShut ? STOP_VALVE_SHUT : new DeliveryColumn(installation, 'toSourceLevel');
  kernel.setVesselSide({ kind: 'air', outflow });
  kernel.fillVessel(fall);
  const longest = options.longest ?? LONGEST;
  const still = stillTime(installation, kernel);
  const patience = Math.max(PATIENCE, 4 * waveReturnTime(kernel));
  const patienceSteps = Math.ceil(patience / kernel.grid.timeStep);
  const end = (outcome: StartUp['outcome'], handStrokes: number): StartUp => ({
    outcome,
    handStrokes,
    stopValveShut: isShut,
    vesselHeadAtStart: kernel.vesselHead,
    simulatedTime: kernel.time,
    steps: kernel.steps,
  });

  // A valve heavier than the static head on its seat hangs open by itself; otherwise the head holds it shut.
  let pushes = 0;
  if (hangsOpen(installation)) {
    kernel.rest(0, 0);
    kernel.pushOpen();
  }
  let alone = 0;
  while (kernel.time < longest) {
    if (kernel.run(patienceSteps) > 0) {
      alone++;
      if (alone > BEATS_ALONE) return end('goesOn', pushes);
      continue;
    }
    if (kernel.opening > 0) {
      // Water still gathers speed through the open valve; only a flow that has stopped growing will never shut it.
      if (kernel.time - kernel.lastMotion > still) return end('never', pushes);
      continue;
    }
    if (pushes >= MOST_PUSHES) return end('never', pushes);
    kernel.pushOpen();
    pushes++;
    alone = 0;
  }
  return end('never', pushes);
}

function hangsOpen(installation: Installation): boolean {
  const { ram, water, fall } = installation;
  const staticForce = water.density * GRAVITY * seatArea(ram.wasteValve) * fall;
  return openingForces(ram.wasteValve).atShut > staticForce;
}
