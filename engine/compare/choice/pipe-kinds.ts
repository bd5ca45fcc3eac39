/** What a pipe's material means for those who lay it. */
import type { MaterialName } from '../../pipes/materials.ts';

const METALS: ReadonlySet<MaterialName> = new Set([
  'steel',
  'galvanisedSteel',
  'castIron',
  'copper',
]);
const HOSES: ReadonlySet<MaterialName> = new Set(['pvcHose', 'rubberHose']);
const STIFF_PLASTICS: ReadonlySet<MaterialName> = new Set(['pvcU', 'pvc1120']);

export function isMetal(material: MaterialName): boolean {
  return METALS.has(material);
}

export function isHose(material: MaterialName): boolean {
  return HOSES.has(material);
}

/** Whether it comes in straight bars that take no turn by themselves. */
export function isStiff(material: MaterialName): boolean {
  return METALS.has(material) || STIFF_PLASTICS.has(material);
}
