/** The materials of a pipe by the words people use, brought to the engine's names. */
import { MATERIALS, type MaterialName } from '@fallwright/engine';

const SPELLINGS: Readonly<Record<MaterialName, string>> = {
  steel: 'steel, black steel, black iron',
  galvanisedSteel:
    'galvanised steel, galvanized steel, galvanised, galvanized, galv, galvanised iron, gi',
  castIron: 'cast iron, ductile iron',
  copper: 'copper',
  pvcU: 'pvc-u, upvc, pvc, pvcu, u-pvc, rigid pvc, pvc pipe',
  pvc1120: 'pvc 1120, pvc schedule 40, pvc sch 40, pvc (inch schedule)',
  pe100: 'pe100, pe 100, hdpe, pe4710',
  pe80: 'pe80, pe 80, mdpe',
  pe: 'pe, polyethylene, polythene, poly, poly pipe',
  ldpe: 'ldpe, soft pe, soft polythene',
  pvcHose: 'pvc hose, garden hose, reinforced pvc hose, hose, braided hose, vinyl hose',
  rubberHose: 'rubber hose, rubber',
};

const NAMES = Object.keys(SPELLINGS) as MaterialName[];

const BY_WORD: ReadonlyMap<string, MaterialName> = new Map(
  NAMES.flatMap((name) => [
    [tidy(name), name] as const,
    [tidy(MATERIALS[name].displayName), name] as const,
    ...SPELLINGS[name].split(', ').map((word) => [tidy(word), name] as const),
  ]),
);

/** The words offered when none of ours was written. */
export const MATERIAL_WORDS: readonly string[] = NAMES.map(
  (name) => SPELLINGS[name].split(', ')[0] ?? name,
);

export function materialCalled(words: string): MaterialName | undefined {
  return BY_WORD.get(tidy(words));
}

function tidy(words: string): string {
  return words.toLowerCase().replace(/[^a-z0-9]/g, '');
}
