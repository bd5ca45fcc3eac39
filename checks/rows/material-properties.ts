import {
  deratingFactor,
  MATERIALS,
  type Material,
  type MaterialName,
  minimumBendRadius,
} from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { identity, type Ours, withOurs } from './table-rows.ts';

type Property = 'youngsModulus' | 'poissonRatio' | 'roughness';

/** Which material of ours, which property, and the row's unit in SI. */
const PROPERTIES: Readonly<
  Record<string, readonly [MaterialName, Property & keyof Material, number]>
> = {
  'E-STEEL': ['steel', 'youngsModulus', 1e9],
  'E-GALVANISED-STEEL': ['galvanisedSteel', 'youngsModulus', 1e9],
  'E-COPPER': ['copper', 'youngsModulus', 1e9],
  'E-PVC-U': ['pvcU', 'youngsModulus', 1e9],
  'E-PE100--HDPE': ['pe100', 'youngsModulus', 1e9],
  'E-PE80--MDPE': ['pe80', 'youngsModulus', 1e9],
  'E-LDPE': ['ldpe', 'youngsModulus', 1e9],
  'E-PE': ['pe', 'youngsModulus', 1e9],
  'E-REINFORCED-PVC-HOSE': ['pvcHose', 'youngsModulus', 1e9],
  'E-RUBBER-HOSE': ['rubberHose', 'youngsModulus', 1e9],
  'NU-STEEL': ['steel', 'poissonRatio', 1],
  'NU-COPPER': ['copper', 'poissonRatio', 1],
  'NU-PVC-U': ['pvcU', 'poissonRatio', 1],
  'NU-PE': ['pe', 'poissonRatio', 1],
  'NU-RUBBER': ['rubberHose', 'poissonRatio', 1],
  'EPS-PVC-PE': ['pvcU', 'roughness', 1e-3],
  'EPS-COPPER-BRASS': ['copper', 'roughness', 1e-3],
  'EPS-COMMERCIAL-STEEL-NEW': ['steel', 'roughness', 1e-3],
  'EPS-GALVANISED-STEEL-ORDINARY': ['galvanisedSteel', 'roughness', 1e-3],
  'EPS-CAST-IRON-NEW': ['castIron', 'roughness', 1e-3],
  'EPS-PVC-HOSE-SMOOTH': ['pvcHose', 'roughness', 1e-3],
  'EPS-RUBBER-HOSE': ['rubberHose', 'roughness', 1e-3],
};

const SKIPPED: Readonly<Record<string, string>> = {
  'EPS-GALVANISED-STEEL-NEW':
    'the engine takes the ordinary galvanised finish, not the bright new one',
  'EPS-STEEL-USED': 'the engine takes new pipe; the roughness of an old one is given by hand',
};

/** Modulus, Poisson ratio, roughness, bend radius and derating. Ours has to lie in the range that the sources span. */
export function rows(): readonly CheckRow[] {
  return readTable('hydraulics/material_properties').map((row) => ({
    ...identity('material_properties', row),
    quantity: `${row.text('property')} of ${row.text('material')}`,
    unit: row.text('unit'),
    published: row.number('value'),
    low: row.number('low'),
    high: row.number('high'),
    ...withOurs(oursFor(row)),
  }));
}

function oursFor(row: TableRow): Ours {
  const id = row.text('id');
  const property = PROPERTIES[id];
  if (property) {
    const [material, name, unit] = property;
    return { ours: () => MATERIALS[material][name].value / unit };
  }
  // The temperature stands in the id of the metric rows and in the note of those printed in °F.
  const temperature = Number(/(\d+)C$/.exec(id)?.[1] ?? /= ([\d.]+) C/.exec(row.text('note'))?.[1]);
  if (id.startsWith('DERATE-PVCU-')) return { ours: () => deratingFactor('pvcU', temperature) };
  if (id.startsWith('DERATE-PVC-')) return { ours: () => deratingFactor('pvc1120', temperature) };
  if (id.startsWith('DERATE-PE-')) return { ours: () => deratingFactor('pe100', temperature) };
  if (id.startsWith('BEND-PE-DR')) {
    return { ours: () => bendOverOuterDiameter('pe100', Number(id.slice('BEND-PE-DR'.length))) };
  }
  if (id === 'BEND-PVC') return { ours: () => bendOverOuterDiameter('pvcU', 21) };
  return { skip: SKIPPED[id] ?? 'nothing of ours answers to this row' };
}

/** Least bend radius of a pipe with this outer diameter over wall, over the outer diameter. */
function bendOverOuterDiameter(material: MaterialName, ratio: number): number {
  const pipe = { name: '', material, innerDiameter: ratio - 2, wallThickness: 1, roughness: 0 };
  return (minimumBendRadius(pipe) ?? Number.NaN) / ratio;
}
