/** The box on the page for a field of the site file, and what people call it. */
import { fieldId } from '../fields/field-ids.ts';

/** Fields that a problem may name as a whole, with the box that a person fills in first. */
const FIRST_BOXES: Readonly<Record<string, { readonly path: string; readonly name: string }>> = {
  source: { path: 'source.flow', name: 'the water that the source gives' },
  fall: { path: 'fall', name: 'the fall, from the water to the ram' },
  drive: { path: 'drive[0].pipe', name: 'the drive pipe' },
  ram: { path: 'ram', name: 'the ram' },
  lift: { path: 'lift', name: 'the lift, from the ram to the tank' },
  demand: { path: 'demand', name: 'the water that is needed' },
  delivery: { path: 'delivery[0].pipe', name: 'the delivery pipe' },
};

const LAST_WORDS: Readonly<Record<string, string>> = {
  pipe: 'which pipe it is',
  length: 'the length',
  material: 'the material',
  bore: 'the bore',
  wall: 'the wall',
};

export function boxFor(field: string): { readonly id: string; readonly name: string } {
  const whole = FIRST_BOXES[field];
  if (whole !== undefined) return { id: fieldId(whole.path), name: whole.name };
  const [height] = /^(?:fall|lift)(?=\.)/.exec(field) ?? [];
  if (height !== undefined) return boxFor(height);
  if (field.startsWith('source.gauging')) return boxFor('source');
  const [, line, indexText, last] = /^(drive|delivery)\[(\d+)\](?:\.(\w+))?$/.exec(field) ?? [];
  if (line === undefined) return { id: fieldId(field), name: field };
  const number = Number(indexText) + 1;
  const pipe = `the ${line} pipe${number > 1 ? ` ${number}` : ''}`;
  const what = last === undefined ? undefined : LAST_WORDS[last];
  return {
    id: fieldId(last === undefined ? `${field}.pipe` : field),
    name: what === undefined ? pipe : `${what} of ${pipe}`,
  };
}
