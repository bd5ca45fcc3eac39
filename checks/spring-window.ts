/**
 * The window of springs in which the laboratory ram of 2021 works, for the shape of the series AC21 and AC19-A.
 *
 * The series print a clamp's position and no force, so the spring is swept: the weak spring of 60.4 N/m over the stroke
 * makes the force at the shut stop larger than that at the open stop by about 1 N, and the clamp shifts both alike.
 */
import type { OperatingPoint } from '@fallwright/engine';
import { RIG_OF_2021, rigPoint } from './rigs.ts';

/** Source: AC-SU21: stiffness of the weak spring, stroke and head in the vessel. */
const STIFFNESS = 60.4;
const STROKE = 0.0159;
const VESSEL_HEAD = 6;
/** Steps of force, N. */
const STEP = 0.25;
const MOST_FORCE = 6;

export interface SpringSetting {
  /** Force of the spring when the valve is shut. */
  readonly force: number;
  readonly point: OperatingPoint;
}

let settings: readonly SpringSetting[] | undefined;

/** The rig at every force from a slack spring up. */
export function springSettings(): readonly SpringSetting[] {
  settings ??= Array.from({ length: MOST_FORCE / STEP + 1 }, (_, i) => {
    const force = i * STEP;
    const setting = { forceAtShut: force, forceAtOpen: force - STIFFNESS * STROKE };
    return { force, point: rigPoint(RIG_OF_2021, { ...setting, vesselHead: VESSEL_HEAD }) };
  });
  return settings;
}

/** Judgement: a setting works when it delivers a third of the best, which is where the published series end. */
const WORKS = 1 / 3;

/** The settings that work, in order of force. */
export function workingSettings(): readonly SpringSetting[] {
  const all = springSettings();
  const best = Math.max(...all.map(({ point }) => point.deliveryFlow));
  return all.filter(({ point }) => point.deliveryFlow >= WORKS * best);
}
