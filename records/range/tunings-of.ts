/** The ways in which a ram of a range can be set up: those that are listed, and every pair of stroke and weight or spring. */
import { formatQuantity, readQuantity, unitSystemOf } from '@fallwright/units';
import type { Given } from '../given.ts';
import { givensOf } from '../site/givens.ts';
import type { RamForm } from '../site/ram-fields.ts';
import type { RamRevision, SettingsForm, TuningForm } from './range-schema.ts';

/** A ram set up in one way, as a site file would describe it. */
export interface TunedRam {
  readonly name: string;
  readonly form: RamForm;
}

/** What a ram without tunings is called in its one state. */
export const AS_BUILT = 'as built';

/** Every tuning, those that are listed first. One that has none is offered as it is built. */
export function tuningsOf(revision: RamRevision): readonly TunedRam[] {
  const listed = revision.tunings ?? [];
  const made = [...listed, ...gridOf(revision)];
  const form = ramFormOf(revision);
  if (made.length === 0) return [{ name: AS_BUILT, form }];
  return made.map((tuning) => ({ name: tuning.name, form: tuned(form, tuning) }));
}

/** The ram as it is built, with its name. */
export function ramFormOf({ name, ram }: RamRevision): RamForm {
  return typeof ram === 'string' ? { name, typical: ram } : { name, ...ram };
}

/** The ram with what a tuning changes on its waste valve. */
function tuned(form: RamForm, { name: _, ...changes }: TuningForm): RamForm {
  const { stroke, weight, wasteValve = {}, ...rest } = form;
  const before = {
    ...wasteValve,
    ...(stroke && { stroke }),
    ...(weight && { weight }),
  };
  // A weight in place of another may be told in air or in water: the old one goes either way.
  if (changes.weight) delete before.weightInWater;
  if (changes.weightInWater) delete before.weight;
  return { ...rest, wasteValve: { ...before, ...changes } };
}

/** How many pairs a grid makes; nought without one. */
export function gridSize({ stroke, weights, springs }: SettingsForm): number {
  const holders = (weights?.length ?? 0) + (springs?.length ?? 0);
  if (!stroke && holders === 0) return 0;
  return (stroke?.steps ?? 1) * Math.max(1, holders);
}

function gridOf(revision: RamRevision): readonly TuningForm[] {
  const { settings } = revision;
  if (!settings) return [];
  const strokes = settings.stroke ? strokesOf(settings.stroke) : [undefined];
  const holders: readonly TuningForm[] = [
    ...(settings.weights ?? []).map((weight) => ({ name: `weight ${weight.text}`, weight })),
    ...(settings.springs ?? []).map((spring) => ({ ...spring, name: `spring ${spring.name}` })),
  ];
  return strokes.flatMap((stroke) => {
    if (!stroke) return holders;
    const words = `stroke ${stroke.text}`;
    if (holders.length === 0) return [{ name: words, stroke }];
    return holders.map((holder) => ({ ...holder, name: `${words}, ${holder.name}`, stroke }));
  });
}

/** Even steps from least to most. What is between is a rounded text, which its value follows. */
function strokesOf({ least, most, steps }: NonNullable<SettingsForm['stroke']>): readonly Given[] {
  const system = unitSystemOf(givensOf({ least, most }).map(({ given }) => given.text));
  return Array.from({ length: steps }, (_, step): Given => {
    if (step === 0) return least;
    if (step === steps - 1) return most;
    const value = least.value + ((most.value - least.value) * step) / (steps - 1);
    const text = formatQuantity(value, 'stroke', system, { figures: 3 }).replaceAll('\u00a0', ' ');
    const read = readQuantity(text, 'stroke');
    if (!read.ok) throw new RangeError(`a stroke that was written must read, got ${text}`);
    return { ...read.value, origin: 'stated' };
  });
}
