/** Lengths that a drawing puts into the document: written in the person's units, no finer than they can be meant. */
import type { System } from '@fallwright/units';

/** International foot. Source: 1959 agreement of the yard, 0.9144 m, a third of it. */
export const METRES_PER_FOOT = 0.3048;

/** Metres in the unit that lengths are written in. */
export const metresPerUnit = (system: System): number => (system === 'us' ? METRES_PER_FOOT : 1);

/** Judgement: a level and a tape on a hillside give a centimetre at best; 0.05 ft is 15 mm. */
const FINEST: Readonly<Record<System, number>> = { metric: 0.01, us: 0.05 };

/** The finest step that is written, in metres. */
export const finestStep = (system: System): number => FINEST[system] * metresPerUnit(system);

/**
 * `metres` as it is written into the file, such as `6.25 m` or `−0.2 m`.
 * @param step in metres; a value is rounded to a multiple of it. A pixel may stand for more than a centimetre.
 */
export function writtenMetres(metres: number, system: System, step = finestStep(system)): string {
  const unit = metresPerUnit(system);
  const coarse = Math.max(step / unit, FINEST[system]);
  const rounded = Math.round(metres / unit / coarse) * coarse;
  // Two decimals are enough for both finest steps.
  const number = String(Number(rounded.toFixed(2))).replace(/^-(?=0$)/, '');
  return `${number.replace('-', '−')} ${system === 'us' ? 'ft' : 'm'}`;
}

/** Steps that a drag may be rounded to, in the unit that is written. */
const STEPS: Readonly<Record<System, readonly number[]>> = {
  metric: [0.01, 0.02, 0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10],
  us: [0.05, 0.1, 0.2, 0.5, 1, 2, 5, 10, 20, 50],
};

/** The round step, in metres, that one pixel of a drag stands for: a finer number would only look exact. */
export function dragStep(metresPerPixel: number, system: System): number {
  const unit = metresPerUnit(system);
  const steps = STEPS[system];
  const step = steps.find((one) => one >= 0.999 * (metresPerPixel / unit)) ?? steps.at(-1) ?? 1;
  return step * unit;
}
