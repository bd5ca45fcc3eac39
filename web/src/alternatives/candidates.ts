/** Pipes that might take the place of the owner's own: of each kind that shops sell, the bore nearest to it and its neighbours. */
import type { TablePipe } from '@fallwright/engine';
import { PIPES } from '@fallwright/engine';
import type { System } from '@fallwright/units';

export interface Family {
  readonly called: string;
  /** What the names of its pipes begin with; the size follows. */
  readonly begins: string;
  /** The narrowest first: one bore down, the nearest, one bore up, as far as the tables go. */
  readonly pipes: readonly TablePipe[];
  readonly nearest: TablePipe;
}

/** Judgement: one row of each standard, the one that merchants have on the shelf. The names are those of the tables. */
const FAMILIES: Readonly<
  Record<System, readonly { readonly called: string; readonly begins: string }[]>
> = {
  metric: [
    { called: 'garden hose', begins: 'garden hose ' },
    { called: 'PE100 SDR11', begins: 'PE100 SDR11 ' },
    { called: 'PVC-U PN16', begins: 'PVC-U PN16 ' },
    { called: 'steel EN 10255', begins: 'steel EN 10255 ' },
    { called: 'galvanised steel', begins: 'galvanised steel DN' },
    { called: 'copper L', begins: 'copper L ' },
  ],
  us: [
    { called: 'garden hose', begins: 'garden hose ' },
    { called: 'PE4710 SIDR 9', begins: 'PE4710 SIDR 9 ' },
    { called: 'PVC sch 40', begins: 'PVC sch 40 ' },
    { called: 'steel sch 40', begins: 'steel sch 40 ' },
    { called: 'galvanised sch 40', begins: 'galvanised steel sch 40 ' },
    { called: 'copper L', begins: 'copper L ' },
  ],
};

export function familiesNear(bore: number, system: System): Family[] {
  return FAMILIES[system].flatMap(({ called, begins }) => {
    const pipes = PIPES.filter(({ name }) => name.startsWith(begins)).sort(
      (a, b) => a.innerDiameter - b.innerDiameter,
    );
    // Bores are told apart by their ratio: 15 is as far from 20 as 20 is from 26.7.
    const gap = (pipe: TablePipe): number => Math.abs(Math.log(pipe.innerDiameter / bore));
    const [first] = pipes;
    if (first === undefined) return [];
    const nearest = pipes.reduce((best, pipe) => (gap(pipe) < gap(best) ? pipe : best), first);
    const at = pipes.indexOf(nearest);
    return [{ called, begins, nearest, pipes: pipes.slice(Math.max(0, at - 1), at + 2) }];
  });
}
