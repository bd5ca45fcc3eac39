/**
 * Air squeezed in a vessel: pressures, work and slow filling.
 *
 * A ram beats water into the vessel, its delivery stop valve shut, until the water that the row states has come in. So these rows
 * hold the law that a run uses, beat by beat, and not a formula beside it.
 */
import {
  airInVessel,
  GRAVITY,
  type Installation,
  type RamKernel,
  startedKernel,
  typicalRam,
  waterAt,
} from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { typicalPlace } from '../places.ts';
import { readTable, type TableRow } from '../read-table.ts';
import { identity, type Ours, rowsOf, withOurs } from './table-rows.ts';

/** Nothing leaves the vessel. */
const SHUT = { advance: () => 0 };
/** Most steps that a vessel may take to fill: some minutes of beating. */
const MOST_STEPS = 2_000_000;

export function rows(): readonly CheckRow[] {
  return [
    ...rowsOf('air_vessel', oursFor, (row) => !isPractice(row)),
    ...practiceRows(),
    ...sizedRows(),
  ];
}

const isPractice = (row: TableRow): boolean => row.text('quantity') === 'index_practice';

/** The index of a typical ram is the usual value, and lies between slow and fast. */
function practiceRows(): CheckRow[] {
  return readTable('hydraulics/air_vessel')
    .filter(isPractice)
    .map((row) => {
      const isUsual = row.text('id') === 'AV-INDEX-1.2';
      return {
        ...identity('air_vessel', row),
        quantity: isUsual
          ? 'index of a typical vessel'
          : 'index of a typical vessel, within bounds',
        unit: '-',
        published: row.number('value'),
        ...(isUsual ? { toleranceAbsolute: 0 } : { low: 1, high: 1.4 }),
        ...withOurs({ ours: () => typicalRam('DN25').airVessel.polytropicIndex }),
      };
    });
}

/** The same slow fill by the formula with which a choice sizes vessels. */
function sizedRows(): CheckRow[] {
  return readTable('hydraulics/air_vessel')
    .filter((row) => row.text('quantity') === 'air_volume_after_slow_fill')
    .map((row) => {
      const water = waterAt({ temperature: 10, altitude: 0 });
      const atmosphere = row.number('initial_pressure_abs_kPa') * 1000;
      const vesselHead = (slowlyRaisedTo(row) - atmosphere) / (atmosphere / water.atmosphericHead);
      return {
        ...identity('air_vessel', row),
        id: `${row.text('id')}/sizing`,
        quantity: 'air left, as vessels are sized',
        unit: row.text('unit'),
        published: row.number('value'),
        toleranceRelative: row.number('tolerance_rel'),
        ours: () =>
          airInVessel(
            { volume: row.number('air_volume_m3'), airShare: 1, polytropicIndex: 1.2 },
            { water, vesselHead, deliveredPerBeat: 1e-6, backFlowPerBeat: 0 },
          ),
      };
    });
}

function slowlyRaisedTo(row: TableRow): number {
  return 1000 * Number(/raised to ([\d.]+) kPa absolute/.exec(row.text('note'))?.[1]);
}

function oursFor(row: TableRow): Ours {
  switch (row.text('quantity')) {
    case 'final_pressure_abs':
      return { ours: () => squeezed(row).pressure / 1000 };
    case 'compression_work':
      return { ours: () => squeezed(row).work };
    case 'air_volume_after_slow_fill':
      return { ours: () => airLeft(row) };
    default:
      return { skip: `nothing of ours answers to ${row.text('quantity')}` };
  }
}

/** A ram with a vessel of this much air at atmospheric pressure, at a place where it lifts to a gauge pressure and beyond. */
function ramWithVessel(freeAir: number, polytropicIndex: number, gaugePressure: number) {
  const plain = typicalPlace({ size: 'DN50', fall: 2, lift: 10 });
  const perMetre = plain.water.density * GRAVITY;
  const head = gaugePressure / perMetre;
  const installation: Installation = {
    ...plain,
    fall: Math.max(1.5, head / 5),
    ram: { ...plain.ram, airVessel: { volume: freeAir, airShare: 1, polytropicIndex } },
  };
  const kernel = startedKernel(installation, head, {});
  kernel.setVesselSide({ kind: 'air', outflow: SHUT });
  kernel.fillVessel(head);
  const pressure = (): number =>
    installation.water.atmosphericPressure + kernel.vesselHead * perMetre;
  return { kernel, pressure };
}

/** Beats until this much has come in; gives what came in and what it took, step by step, to `see`. */
function fill(kernel: RamKernel, volume: number, see: () => void): void {
  for (let i = 0; i < MOST_STEPS && kernel.volumes.delivered < volume; i++) {
    // A ram that has stopped shut is pushed again: the vessel does not care who works it.
    if (kernel.run(1) === 0 && kernel.time - kernel.lastMotion > 1) kernel.pushOpen();
    see();
  }
  if (kernel.volumes.delivered < volume) throw new Error('the ram did not fill the vessel');
}

function squeezed(row: TableRow): { readonly pressure: number; readonly work: number } {
  const start = row.number('initial_pressure_abs_kPa') * 1000;
  const added = row.number('water_added_m3');
  const atmosphere = 101_325;
  const free = (row.number('air_volume_m3') * start) / atmosphere;
  const { kernel, pressure } = ramWithVessel(free, row.number('polytropic_n'), start - atmosphere);
  let before = { volume: 0, pressure: pressure() };
  let last = before;
  let work = 0;
  fill(kernel, added, () => {
    before = last;
    last = { volume: kernel.volumes.delivered, pressure: pressure() };
    // ∫ p dV by trapezoids, up to the volume asked for and no farther.
    const end = Math.min(last.volume, added);
    const share =
      last.volume > before.volume ? (end - before.volume) / (last.volume - before.volume) : 1;
    const endPressure = before.pressure + share * (last.pressure - before.pressure);
    work += ((before.pressure + endPressure) / 2) * (end - before.volume);
  });
  const share = (added - before.volume) / (last.volume - before.volume);
  return { pressure: before.pressure + share * (last.pressure - before.pressure), work };
}

/** Volume of air after a slow fill, from how fast its pressure then rises: V = dv / (1 − (p₁/p₂)^(1/n)). */
function airLeft(row: TableRow): number {
  const final = slowlyRaisedTo(row);
  const atmosphere = row.number('initial_pressure_abs_kPa') * 1000;
  const index = 1.2;
  const { kernel, pressure } = ramWithVessel(
    row.number('air_volume_m3'),
    index,
    final - atmosphere,
  );
  const before = pressure();
  fill(kernel, row.number('air_volume_m3') / 50, () => {});
  return kernel.volumes.delivered / (1 - (before / pressure()) ** (1 / index));
}
