import { findPipe, type TablePipe } from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { halfLastDigit, identity, type Ours, withOurs } from './table-rows.ts';

/** For each table of pipes, the name under which the engine has to know a row. */
const NAMES: Readonly<Record<string, (row: TableRow) => string>> = {
  pipes_astm_d2239_pe: (row) => {
    const polymer = row.text('series').includes('PE4710') ? 'PE4710' : 'PE';
    return `${polymer} ${row.text('series').split(',')[0]} ${row.text('nominal')}`;
  },
  pipes_astm_d1785_pvc: (row) => `PVC ${row.text('series').split(',')[0]} ${row.text('nominal')}`,
  pipes_iso4427_pe100: (row) => `${row.text('series')} ${row.text('nominal')}`,
  pipes_iso1452_pvcu: (row) => `PVC-U ${row.text('id').split('-').at(-1)} ${row.text('nominal')}`,
  pipes_asme_b36_10m_steel: (row) => `steel ${row.text('series')} ${row.text('nominal')}`,
  pipes_en10255_steel: (row) => `steel EN 10255 ${row.text('nominal').split(' (')[0]}`,
  pipes_astm_b88_copper_l: (row) => `copper ${row.text('series')} ${row.text('nominal')}`,
};

/** Dimensions and ratings of every pipe, found in the engine by its name. Tolerance: half of the last printed digit. */
export function rows(): readonly CheckRow[] {
  return Object.entries(NAMES).flatMap(([table, nameOf]) =>
    readTable(`hydraulics/${table}`).flatMap((row) =>
      row.has('od_mm') ? pipeRows(table, row, nameOf(row)) : [notMade(table, row)],
    ),
  );
}

function pipeRows(table: string, row: TableRow, name: string): readonly CheckRow[] {
  const found = findPipe(name);
  const pipe = found.ok ? found.pipe : undefined;
  const inMillimetres = (printed: string, quantity: string, of: (pipe: TablePipe) => number) => ({
    ...identity(table, row),
    id: `${row.text('id')}/${quantity}`,
    quantity: `${quantity} of ${name}`,
    unit: 'mm',
    published: Number(printed),
    toleranceAbsolute: halfLastDigit(printed),
    ours: () => (pipe ? 1000 * of(pipe) : Number.NaN),
  });
  const checks: CheckRow[] = [
    inMillimetres(row.text('od_mm'), 'outer diameter', (p) => p.outerDiameter),
    inMillimetres(row.text('bore_mm'), 'bore', (p) => p.innerDiameter),
  ];
  // Steel and copper are laid out by their nominal wall, which stands in words.
  const nominal = /nominal wall (?:[\d.]+ in = )?([\d.]+) mm/.exec(row.text('bore_basis'))?.[1];
  const wall = nominal ?? row.text('wall_min_mm');
  checks.push(inMillimetres(wall, 'wall', (p) => p.wallThickness));
  if (nominal && row.has('wall_min_mm')) {
    const least = inMillimetres(row.text('wall_min_mm'), 'least wall', () => Number.NaN);
    const skip = 'the engine keeps the nominal wall, from which the bore follows';
    checks.push({ ...least, ...withOurs({ skip }) });
  }
  if (row.has('pressure_rating_kPa')) {
    checks.push({
      ...identity(table, row),
      id: `${row.text('id')}/rating`,
      quantity: `rating of ${name}`,
      unit: 'kPa',
      published: row.number('pressure_rating_kPa'),
      // Printed to the kilopascal where it was turned from psi, to a tenth of it at best.
      toleranceAbsolute: 0.5,
      ours: () => (pipe?.rating ?? Number.NaN) / 1000,
    });
  }
  return checks;
}

/** A row that says that the sizes are not made: then the engine must not know them either. */
function notMade(table: string, row: TableRow): CheckRow {
  const sizes = row.text('nominal').match(/\d+/g) ?? [];
  const known: Ours = {
    ours: () => sizes.filter((size) => findPipe(`${row.text('series')} ${size}`).ok).length,
  };
  return {
    ...identity(table, row),
    quantity: `pipes known of ${row.text('series')} in ${row.text('nominal')}`,
    unit: '-',
    published: 0,
    toleranceAbsolute: 0,
    ...withOurs(known),
  };
}
