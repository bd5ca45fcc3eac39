/** The words and tables of the validation page. */
import type { CheckRow } from '../check-row.ts';
import { type Judged, shareOfAllowed } from './judged.ts';

export interface Subject {
  readonly title: string;
  readonly rows: readonly Judged[];
}

export function validationPage(
  hydraulics: readonly Judged[],
  rams: readonly Judged[],
  hasLogs: boolean,
): string {
  const all = [...hydraulics, ...rams];
  return `${[
    '# Validation',
    '',
    'Made by `npm run report` from the rows that the tests run (`checks/`), and from nothing else. Do not edit it by hand.',
    '',
    '- **met**: our number lies within the tolerance of the published one. The tolerance comes from the rounding or the scatter of the source.',
    '- **missed**: it does not. Every miss is listed with its number and its reason, and a test holds that it still misses.',
    '- **skipped**: kept in sight with its reason; nothing is run.',
    '- How a number is known: *seen* in the source; *computed* from a stated formula by other means than our engine; *memory*, recalled and not',
    '  re-read, which tests our typing more than the world; *common practice*, what the trade does, without a source.',
    '- Each row names its source by a key; what stands behind the keys is in `checks/data/hydraulics/sources.csv` and `checks/data/ram/sources.csv`.',
    '',
    '## In short',
    '',
    ...summary([
      { title: 'general hydraulics', rows: hydraulics },
      { title: 'rams', rows: rams },
    ]),
    '',
    ...trust(all),
    '',
    '## General hydraulics',
    '',
    ...tableOfTables(hydraulics),
    '',
    '### Waves in a line',
    '',
    'The line that a ram beats on, alone. Without friction it follows the exact square wave for ever (`surge_exact`); with friction its error',
    'halves with each doubling of the grid (`surge_moc_friction`, `grid_convergence`).',
    '',
    '![Head at a valve shut at once: exact and computed](validation/surge-square-wave.svg)',
    '',
    '![What a finer grid changes](validation/grid-convergence.svg)',
    '',
    '## Rams',
    '',
    ...tableOfTables(rams),
    '',
    ...laboratory(rams, hasLogs),
    '',
    ...handbook(rams),
    '',
    '## Every miss',
    '',
    ...misses(all),
    '',
    '## What is skipped',
    '',
    ...skips(all),
    '',
  ].join('\n')}`;
}

const OUTCOMES = ['met', 'missed', 'skipped'] as const;
type Counts = Readonly<Record<(typeof OUTCOMES)[number], number>>;

function count(rows: readonly Judged[]): Counts {
  const of = (outcome: Judged['outcome']) => rows.filter((one) => one.outcome === outcome).length;
  return { met: of('met'), missed: of('missed'), skipped: of('skipped') };
}

function summary(subjects: readonly Subject[]): string[] {
  const kinds = ['seen', 'computed', 'memory', 'common practice'] as const;
  const line = (title: string, rows: readonly Judged[]): string => {
    const { met, missed, skipped } = count(rows);
    return `| ${title} | ${rows.length} | ${met} | ${missed} | ${skipped} |`;
  };
  return [
    '| rows | all | met | missed | skipped |',
    '|---|---:|---:|---:|---:|',
    ...subjects.map(({ title, rows }) => line(title, rows)),
    ...kinds.map((kind) =>
      line(
        `known by: ${kind}`,
        subjects.flatMap(({ rows }) => rows).filter(({ row }) => row.knownBy === kind),
      ),
    ),
  ];
}

function groups(rows: readonly Judged[]): ReadonlyMap<string, readonly Judged[]> {
  const found = new Map<string, Judged[]>();
  for (const one of rows) {
    const { table, series } = one.row;
    const key = series === undefined ? `\`${table}\`` : `\`${table}\`: ${series}`;
    const group = found.get(key);
    if (group) group.push(one);
    else found.set(key, [one]);
  }
  return found;
}

function tableOfTables(rows: readonly Judged[]): string[] {
  return [
    '| table | met | missed | skipped | nearest to its limit, or farthest beyond it |',
    '|---|---:|---:|---:|---|',
    ...[...groups(rows)].map(([key, group]) => {
      const { met, missed, skipped } = count(group);
      return `| ${key} | ${met} | ${missed} | ${skipped} | ${worst(group)} |`;
    }),
  ];
}

/** The row with the largest gap for what it is allowed. */
function worst(group: readonly Judged[]): string {
  let found: { row: CheckRow; share: number; gap: string } | undefined;
  for (const one of group) {
    if (one.outcome === 'skipped') continue;
    const share = shareOfAllowed(one.row, one.comparison);
    if (found && !(share > found.share)) continue;
    found = {
      row: one.row,
      share,
      gap: gapOf(one.row, one.comparison.gap, one.comparison.relativeGap),
    };
  }
  if (!found) return '–';
  const times = Number.isFinite(found.share)
    ? `${short(found.share)} of what is allowed`
    : 'none is allowed';
  return `${found.row.id}: ${found.gap}, ${times}`;
}

function gapOf(row: CheckRow, gap: number, relative: number): string {
  const unit = row.unit === '-' ? '' : ` ${row.unit}`;
  const sign = gap >= 0 ? '+' : '−';
  const amount = `${sign}${short(Math.abs(gap))}${unit}`;
  return Number.isNaN(relative) || 'low' in row
    ? amount
    : `${amount} (${sign}${short(100 * Math.abs(relative))} %)`;
}

function short(value: number): string {
  if (value === 0 || !Number.isFinite(value)) return String(value);
  return String(Number(value.toPrecision(3)));
}

function allowedOf(row: CheckRow): string {
  const unit = row.unit === '-' ? '' : ` ${row.unit}`;
  if ('low' in row) {
    // A trend is a ratio that has to lie above or below 1, by 0.1 % at least.
    if (row.low === 1.001) return 'above 1';
    if (row.low === 0 && row.high === 0.999) return 'below 1';
    return row.low === row.high
      ? `${short(row.low)}${unit}`
      : `${short(row.low)} to ${short(row.high)}${unit}`;
  }
  return `${short(row.published)}${unit}`;
}

function misses(rows: readonly Judged[]): string[] {
  const missed = rows.filter((one) => one.outcome === 'missed');
  const line = (one: Judged): string => {
    if (one.outcome === 'skipped') return '';
    const { row, comparison } = one;
    const reason = row.miss ?? '**not explained yet**';
    return `| ${row.id} | ${cell(row.quantity)} | ${allowedOf(row)} | ${short(comparison.got)} | ${row.source}, ${row.knownBy} | ${cell(reason)} |`;
  };
  return [
    `${missed.length} rows run and do not agree.`,
    '',
    '| row | what | published | ours | source | why |',
    '|---|---|---|---:|---|---|',
    ...missed.map(line),
  ];
}

function skips(rows: readonly Judged[]): string[] {
  const reasons = new Map<string, { count: number; tables: Set<string>; first: string }>();
  for (const one of rows) {
    if (one.outcome !== 'skipped') continue;
    const known = reasons.get(one.reason);
    if (known) {
      known.count++;
      known.tables.add(one.row.table);
    } else
      reasons.set(one.reason, { count: 1, tables: new Set([one.row.table]), first: one.row.id });
  }
  return [
    '| rows | table | reason |',
    '|---|---|---|',
    ...[...reasons].map(
      ([reason, { count: n, tables, first }]) =>
        `| ${n === 1 ? first : n} | ${[...tables].map((t) => `\`${t}\``).join(', ')} | ${cell(reason)} |`,
    ),
  ];
}

const cell = (words: string): string => words.replaceAll('|', '\\|');

/** Bands of judgement of the laboratory ram, by what is measured. */
const BANDS: Readonly<Record<string, readonly [good: number, acceptable: number]>> = {
  beats: [0.15, 0.3],
  delivered: [0.15, 0.35],
  'steady flow': [0.03, 0.08],
};

function bandOf(row: CheckRow, got: number): string {
  const kind = row.id.split('/')[1] ?? '';
  const ratio = got / row.published;
  const isTwofold = ratio > 2 || ratio < 0.5;
  if (kind === 'peak')
    return isTwofold ? 'wrong' : Math.abs(ratio - 1) <= 0.3 ? 'good' : 'acceptable';
  const [good, acceptable] = BANDS[kind] ?? [0, 0];
  const off = Math.abs(ratio - 1);
  if (off <= good) return 'good';
  if (off <= acceptable) return 'acceptable';
  return isTwofold ? 'wrong' : 'poor';
}

function laboratory(rams: readonly Judged[], hasLogs: boolean): string[] {
  const lines = rams.flatMap((one) => {
    if (one.row.series !== 'laboratory ram' || one.outcome === 'skipped') return [];
    const { row, comparison } = one;
    return [
      `| ${row.id} | ${row.quantity} | ${short(row.published)} ${row.unit} | ${short(comparison.got)} | ${bandOf(row, comparison.got)} |`,
    ];
  });
  return [
    '### The laboratory ram',
    '',
    'A small vertical ram with a sprung plate for a waste valve (AC-SU19 and its sister reports). Its steady flow sets one unknown, the passage round the',
    'plate; springs, mass and bores are published; the stroke is that of a later state of the rig; all else is a typical ram of this size. Nothing is',
    `fitted to beats, delivery or pressure. The passage found so gives a closing force of ${got(rams, 'RT41')} N at the full flow, where 4.2 N was measured (RT41).`,
    '',
    '| row | what | published | ours | judged |',
    '|---|---|---:|---:|---|',
    ...lines,
    '',
    'Good, acceptable and wrong: beats within 15 %, 30 %, twofold off; delivery 15 %, 35 %, twofold; peak 30 %, twofold, more. Poor lies between acceptable',
    'and wrong. The steady flow is set, not predicted.',
    '',
    hasLogs
      ? 'The log below stood beside the clone when this page was made.'
      : 'The logs were not beside the clone when this page was made: their rows are skipped, and the picture is that of the last time.',
    '',
    '![Head at the waste valve, logged and simulated](validation/ac19-log-and-beat.svg)',
  ];
}

function handbook(rams: readonly Judged[]): string[] {
  return [
    '### Handbook tables',
    '',
    '![Efficiency by lift over fall](validation/efficiency-by-ratio.svg)',
    '',
    ...['DN32', 'DN50'].flatMap((size) => dailyOutput(rams, size)),
  ];
}

/** T1 as a map: ours over the table's, cell by cell. */
function dailyOutput(rams: readonly Judged[], size: string): string[] {
  const cells = new Map<string, string>();
  const falls = new Set<number>();
  const lifts = new Set<number>();
  for (const one of rams) {
    const found = /^T1-([\d.]+)-([\d.]+)\/(\w+)$/.exec(one.row.id);
    if (!found || found[3] !== size || one.outcome === 'skipped') continue;
    const [fall, lift] = [Number(found[1]), Number(found[2])];
    falls.add(fall);
    lifts.add(lift);
    const ratio = (one.comparison.got / one.row.published).toFixed(2);
    cells.set(`${fall} ${lift}`, one.outcome === 'met' ? ratio : `**${ratio}**`);
  }
  const byLift = [...lifts].sort((a, b) => a - b);
  const byFall = [...falls].sort((a, b) => a - b);
  return [
    `Daily output over that of table T1 (from memory), ${size}; the fall runs down, the lift across, in metres. Misses are bold.`,
    '',
    `| | ${byLift.join(' | ')} |`,
    `|---:|${byLift.map(() => '---:').join('|')}|`,
    ...byFall.map(
      (fall) =>
        `| ${fall} | ${byLift.map((lift) => cells.get(`${fall} ${lift}`) ?? '').join(' | ')} |`,
    ),
    '',
  ];
}

/** Our number of a row, as the words quote it. */
function got(rows: readonly Judged[], id: string): string {
  const one = rows.find(({ row }) => row.id === id);
  if (!one || one.outcome === 'skipped') throw new Error(`no row ${id} runs`);
  return short(one.comparison.got);
}

/** What the rows do not allow anyone to rely on; each with the rows behind it. */
function trust(rows: readonly Judged[]): string[] {
  return [
    '## What the tool must not be trusted for',
    '',
    `- **The beat rate and delivery of a given ram, closer than a third.** With springs, mass and steady flow known, the one rig that is published whole beats ${got(rows, 'AC19-R1/beats')} times a minute here and 229 times there, and delivers ${got(rows, 'AC19-R1/delivered')} L/min for 1.92. One published analysis says of its own beat rates and efficiencies that only the trends are right (IVERSEN-1975). Measure yours.`,
    `- **A sprung plate in a tube.** With the rig's stiffer spring ours stays open where the real one beat (AC19-R3).`,
    `- **Lifts beyond about fourteen times the fall with a ram as it comes.** There efficiency falls faster than table T4; with more weight it goes further (T1), to some twenty to thirty times the fall.`,
    '- **A trickle.** Where less than a tenth of the energy arrives, a small change of the place changes it much. Read it as "nothing much".',
    `- **Peaks off the choosing grid.** They come out at ${got(rows, 'GC-PEAK-CHOOSING')} of the true ones (GC-PEAK-CHOOSING). The pressure check runs a finer grid, and still judges by the Joukowsky bound when that is larger.`,
    `- **Low falls with little lift.** Ours delivers up to 1.5 times the handbook there. Leaks, sticking and silt are not in the model.`,
    `- **The drive water of a typical ram of DN40 and more.** It takes ${got(rows, 'T2-51')} L/min at DN50 where handbooks print 27 to 55. Put in the real weight and stroke.`,
    '- **Anything that wears, leaks, freezes, clogs or breaks.** No row here is a test of strength. Peaks in published logs are several times the lift.',
    '- **Rows known from memory** say that we recall what others printed. The daily output table is one of them.',
  ];
}
