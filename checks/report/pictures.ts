/** The pictures of the validation page, from the same rows and runs as the tests. */
import { traceRun } from '@fallwright/engine';
import { lineOfSpeed } from '../line-of-speed.ts';
import { beatsOf, type PressureLog, pressureLog } from '../pressure-log.ts';
import { readTable } from '../read-table.ts';
import { RIG_OF_2019, rigAt, SOFT_SPRING } from '../rigs.ts';
import { GRIDS, lineError, pointOnGrid } from '../rows/grid-convergence.ts';
import { FALLS, pointAtRatio, SIZES } from '../rows/handbook-efficiency.ts';
import { closingLine } from '../rows/surge-exact.ts';
import {
  type Axis,
  chart,
  type Mark,
  OURS,
  OURS_LIGHT,
  type Point,
  SPREAD,
  THEIRS,
} from './chart.ts';

/** Efficiency against lift over fall: a handbook's table and the typical rams. */
export function efficiencyByRatio(): string {
  const table = readTable('ram/handbook_tables')
    .filter((row) => row.text('table_id') === 'T4')
    .map((row): Point => [row.number('var1_value'), row.number('output_low')]);
  const shifted = (by: number): Point[] => table.map(([x, y]) => [x, Math.max(0, y + by)]);
  const dashes: Readonly<Record<string, string | undefined>> = {
    DN20: '2 3',
    DN32: '7 3',
    DN50: undefined,
  };
  const curves = SIZES.flatMap((size) =>
    FALLS.map((fall): Mark => {
      const dash = dashes[size];
      return {
        kind: 'line',
        points: table.map(([ratio]) => [
          ratio,
          pointAtRatio(size, fall, ratio).daubuissonEfficiency,
        ]),
        colour: OURS,
        width: 1.2,
        ...(dash === undefined ? {} : { dash }),
      };
    }),
  );
  const key = (at: Point, words: string, dash?: string): Mark[] => [
    {
      kind: 'line',
      points: [at, [at[0] + 1.6, at[1]]],
      colour: OURS,
      ...(dash === undefined ? {} : { dash }),
    },
    { kind: 'text', at: [at[0] + 2, at[1] - 0.012], text: words, colour: OURS },
  ];
  return chart('Efficiency against lift over fall: handbook table T4 and nine typical rams', [
    {
      title: "Efficiency (D'Aubuisson) by lift over fall: table T4 and typical rams",
      x: {
        label: 'lift over fall',
        low: 3,
        high: 27,
        ticks: [4, 6, 8, 10, 12, 14, 16, 18, 20, 22, 24, 26],
      },
      y: { label: 'efficiency', low: 0, high: 0.9, ticks: [0, 0.2, 0.4, 0.6, 0.8] },
      marks: [
        { kind: 'band', low: shifted(-0.12), high: shifted(0.12), colour: SPREAD },
        ...curves,
        { kind: 'dots', points: table, colour: THEIRS },
        ...key([17, 0.82], 'DN20 at 1.5, 2 and 3 m', dashes.DN20),
        ...key([17, 0.75], 'DN32', dashes.DN32),
        ...key([17, 0.68], 'DN50'),
        { kind: 'dots', points: [[17.8, 0.61]], colour: THEIRS },
        { kind: 'text', at: [19, 0.598], text: 'table T4, with 0.12 either way', colour: THEIRS },
      ],
    },
  ]);
}

/** A pressure log of the laboratory ram and the same rig simulated; nothing when the log is not there. */
export function logAndBeat(): string | undefined {
  const log = pressureLog('AC19-R1');
  if (!log) return undefined;
  const setting = { ...SOFT_SPRING, vesselHead: 6.07 };
  const trace = traceRun(rigAt(RIG_OF_2019, setting), { duration: 8 });
  const simulated = binned(
    { time: Array.from(trace.time), head: Array.from(trace.bodyHead) },
    0.002,
  );
  // Both windows begin a tenth of a second before a beat, after some seconds of running.
  const start = (one: PressureLog): number => (beatsOf(one).starts.find((t) => t > 5) ?? 0) - 0.1;
  const window = (one: PressureLog): Point[] => {
    const from = start(one);
    return one.time
      .map((time, i): Point => [time - from, one.head[i] as number])
      .filter(([time]) => time >= 0 && time <= WINDOW);
  };
  const time: Axis = {
    label: 'time, s',
    low: 0,
    high: WINDOW,
    ticks: [0, 0.2, 0.4, 0.6, 0.8, 1, 1.2],
  };
  const head: Axis = { label: 'head, m', low: -12, high: 48, ticks: [-10, 0, 10, 20, 30, 40] };
  return chart('Head at the waste valve of the laboratory ram AC19-R1: logged, and simulated', [
    {
      title: 'AC19-R1, logged every 2 to 6 ms',
      x: time,
      y: head,
      marks: [{ kind: 'line', points: window(log), colour: THEIRS, width: 1 }],
    },
    {
      title: 'The same rig simulated: nothing fitted but the steady flow',
      x: time,
      y: head,
      marks: [{ kind: 'line', points: window(simulated), colour: OURS, width: 1 }],
    },
  ]);
}

const WINDOW = 1.2;

/** Lowest and highest of each short stretch of time, so that no spike is lost. */
function binned({ time, head }: PressureLog, width: number): PressureLog {
  const times: number[] = [];
  const heads: number[] = [];
  let bin = -1;
  let low = 0;
  let high = 0;
  const put = (): void => {
    if (bin < 0) return;
    times.push(bin * width, (bin + 0.5) * width);
    heads.push(low, high);
  };
  for (const [i, value] of head.entries()) {
    const own = Math.floor((time[i] as number) / width);
    if (own === bin) {
      low = Math.min(low, value);
      high = Math.max(high, value);
    } else {
      put();
      bin = own;
      low = value;
      high = value;
    }
  }
  put();
  return { time: times, head: heads };
}

/** A line stopped at once, without friction: the exact square wave, and the line that a ram beats on. */
export function squareWave(): string {
  const row = readTable('hydraulics/surge_exact').find((one) => one.text('id') === 'SQ-2-FIRST');
  if (!row) throw new Error('the table of exact surges has lost a row');
  const [length, speed] = [row.number('length_m'), row.number('wave_speed_ms')];
  const still = row.number('static_head_m');
  const rise = row.number('value') - still;
  const trip = (2 * length) / speed;
  const trips = 9;
  const exact: Point[] = [[-0.2 * trip, still]];
  for (let k = 0; k < trips; k++) {
    const head = still + (k % 2 === 0 ? rise : -rise);
    exact.push([k * trip, exact.at(-1)?.[1] ?? still], [k * trip, head], [(k + 1) * trip, head]);
  }
  const line = closingLine(row, 0);
  const ours: Point[] = [];
  const every = 10;
  for (let i = 0; line.time < trips * trip - 1e-9; i++) {
    line.advance();
    if (i % every === every / 2) ours.push([line.time, line.headAtEnd]);
  }
  const { driveLine } = lineOfSpeed({ length, innerDiameter: 0.05, waveSpeed: speed });
  const metres = driveLine.segments[0]?.length ?? 0;
  return chart('Head at a valve shut at once on a frictionless line: exact, and computed', [
    {
      title: `${metres} m of line, waves of ${speed} m/s, ${row.number('initial_velocity_ms')} m/s stopped at once, no friction (SQ-2)`,
      x: {
        label: 'time, s',
        low: -0.2 * trip,
        high: trips * trip,
        ticks: [0, 0.1, 0.2, 0.3, 0.4, 0.5, 0.6],
      },
      y: { label: 'head at the valve, m', low: -60, high: 60, ticks: [-40, -20, 0, 20, 40] },
      marks: [
        { kind: 'line', points: exact, colour: THEIRS, width: 1.2 },
        { kind: 'dots', points: ours, colour: OURS, radius: 3 },
        { kind: 'text', at: [0.02, 50], text: 'line: exact', colour: THEIRS },
        { kind: 'text', at: [0.12, 50], text: 'dots: every tenth step of ours', colour: OURS },
      ],
    },
  ]);
}

/** What a finer grid changes: the error of a line with friction, and a ram's delivery. */
export function gridConvergence(): string {
  const grids: Axis = {
    label: 'reaches in the line',
    low: 3,
    high: 170,
    ticks: [4, 8, 16, 32, 64, 128],
    scale: 'log',
  };
  const errors = GRIDS.map((reaches): Point => [reaches, lineError(reaches)]);
  const first = errors[0] ?? [4, 1];
  const slope: Point[] = GRIDS.map((reaches) => [reaches, (first[1] * first[0]) / reaches]);
  const finest = pointOnGrid(128);
  const delivered = (substeps?: number): Point[] =>
    GRIDS.map((reaches) => [
      reaches,
      100 * (pointOnGrid(reaches, substeps).deliveryFlow / finest.deliveryFlow - 1),
    ]);
  const wide = [3, 170].map((reaches) => reaches);
  const spread = 100 * finest.beatSpread;
  return chart(
    'What a finer grid changes: the error of a line with friction, and the delivery of a ram',
    [
      {
        title: 'Line with friction, 17 trips after a stop (MOC-1): error of the head at its end',
        x: grids,
        y: {
          label: 'error, m',
          low: 0.1,
          high: 10,
          ticks: [0.1, 1, 10],
          scale: 'log',
        },
        marks: [
          { kind: 'line', points: slope, colour: THEIRS, width: 1, dash: '4 4' },
          { kind: 'dots', points: errors, colour: OURS },
          {
            kind: 'text',
            at: [24, 2.4],
            text: 'dashed: halves with each doubling',
            colour: THEIRS,
          },
        ],
      },
      {
        title: 'DN20 at 2 m to 12 m: delivery against that on 128 reaches',
        x: grids,
        y: { label: 'difference, %', low: -3, high: 3, ticks: [-2, -1, 0, 1, 2] },
        marks: [
          {
            kind: 'band',
            low: wide.map((x): Point => [x, -spread]),
            high: wide.map((x): Point => [x, spread]),
            colour: SPREAD,
          },
          { kind: 'line', points: delivered(), colour: OURS },
          { kind: 'dots', points: delivered(), colour: OURS },
          { kind: 'line', points: delivered(160), colour: OURS_LIGHT, dash: '5 3' },
          { kind: 'dots', points: delivered(160), colour: OURS_LIGHT, radius: 3 },
          {
            kind: 'text',
            at: [3.4, 2.4],
            text: "dark: the tool's clock; light: that of the pressure check",
            colour: OURS,
          },
          {
            kind: 'text',
            at: [3.4, -2.6],
            text: 'band: by how much single beats differ of their own accord',
            colour: THEIRS,
          },
        ],
      },
    ],
  );
}
