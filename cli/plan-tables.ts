/** The tank's balance as tables with bars: a year by months and a day by hours, in the columns there are. */
import type { Answer } from '@fallwright/engine';
import { hasSeasons, hourRows, monthName, monthRows, waterPlanOf } from '@fallwright/papers';
import { isGiven, type Site } from '@fallwright/records';
import { formatQuantity, type System, unitShown } from '@fallwright/units';
import { type Column, columns } from './columns.ts';
import { pageWidth, wrapped } from './wrap.ts';

interface PlanTableOf {
  readonly answer: Answer;
  readonly site: Site;
  readonly system: System;
}

/** Columns of a bar that stands for a full tank. */
const LONGEST_BAR = 20;
const SHORTEST_BAR = 8;

const right = (head: string): Column => ({ head, align: 'right' });

export function yearTable({ answer, site, system }: PlanTableOf): readonly string[] {
  const plan = waterPlanOf(answer, site);
  if (!plan || !(site.tank || hasSeasons(plan))) return [];
  const rows = monthRows(plan, system);
  const lines = withBars(
    [
      { head: '' },
      right('needed'),
      right('comes'),
      right('share'),
      right('days met'),
      right('runs over'),
      right('missing'),
      right('in tank'),
    ],
    rows.map(({ month, needed, comes, share, daysMet, runsOver, missing, inTank }) => [
      month.slice(0, 3),
      needed,
      comes,
      share,
      daysMet,
      runsOver,
      missing,
      inTank,
    ]),
    rows.map(({ full }) => full),
  );
  const volume = unitShown('volume', system);
  return [
    ...lines,
    ...note(
      `Needed and comes: ${unitShown('daily', system)}. The rest: ${volume} in the month, and in the tank of ${formatQuantity(plan.volume, 'volume', system)} as it ends.`,
    ),
  ];
}

export function dayTable({ answer, site, system }: PlanTableOf): readonly string[] {
  const plan = waterPlanOf(answer, site);
  if (!plan || !(site.tank || !isGiven(site.demand))) return [];
  const rows = hourRows(plan, system);
  const lines = withBars(
    [
      { head: 'hour' },
      right('comes'),
      right('drawn'),
      right('runs over'),
      right('missing'),
      right('in tank'),
    ],
    rows.map(({ hour, comes, drawn, runsOver, missing, inTank }) => [
      hour,
      comes,
      drawn,
      runsOver,
      missing,
      inTank,
    ]),
    rows.map(({ full }) => full),
  );
  const when = hasSeasons(plan) ? ` in ${monthName(plan.hardestMonth)}` : '';
  return [
    ...lines,
    ...note(
      `Amounts in ${unitShown('volume', system)}, for a day${when} like the days before it, with a tank of ${formatQuantity(plan.volume, 'volume', system)}.`,
    ),
  ];
}

/** The table with a bar at the end of each row, where the page is wide enough for one. */
function withBars(
  heads: readonly Column[],
  rows: readonly (readonly string[])[],
  full: readonly number[],
): readonly string[] {
  const roomy = columns(heads, rows);
  const lines = widthOf(roomy) > pageWidth() ? columns(heads, rows, { gap: ' ' }) : roomy;
  const room = Math.min(LONGEST_BAR, pageWidth() - widthOf(lines) - 2);
  if (room < SHORTEST_BAR) return lines;
  const [head = '', ...rest] = lines;
  const width = widthOf(lines);
  return [
    head,
    ...rest.map((line, index) =>
      `${line.padEnd(width)}  ${'#'.repeat(Math.round((full[index] ?? 0) * room))}`.trimEnd(),
    ),
  ];
}

function widthOf(lines: readonly string[]): number {
  return Math.max(...lines.map((line) => line.length));
}

function note(text: string): readonly string[] {
  return wrapped(text, { indent: '  ' });
}
