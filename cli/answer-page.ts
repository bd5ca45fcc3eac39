/** The answer as a page for a person: the verdict first, then why, then what would change it. */
import { styleText } from 'node:util';
import type { Answer, SampledAnswer } from '@fallwright/engine';
import {
  type AnswersCompared,
  alongTheLinesInWords,
  assumptionsInWords,
  cautions,
  changeInWords,
  changeRows,
  demandInWords,
  enoughChanges,
  fromFullStoreInWords,
  hasSeasons,
  howSureInWords,
  isRunning,
  levelBookRows,
  materialRows,
  measuredInWords,
  pressureRows,
  rangeNewsInWords,
  reasonsInWords,
  runInWords,
  startUpInWords,
  tankInWords,
  verdictSentence,
  waterPlanOf,
} from '@fallwright/papers';
import {
  type Assumption,
  type Given,
  installationOf,
  type NewestSite,
  type Problem,
  type Site,
} from '@fallwright/records';
import {
  formatNumber,
  formatQuantity,
  plainFigures,
  type System,
  toBeatsPerMinute,
  unitShown,
} from '@fallwright/units';
import { columns } from './columns.ts';
import { dayTable, yearTable } from './plan-tables.ts';
import { pageWidth, wrapped } from './wrap.ts';

export interface AnswerPageOf {
  readonly answer: Answer;
  readonly site: Site;
  readonly assumptions: readonly Assumption[];
  readonly warnings: readonly Problem[];
  readonly system: System;
  /** Absent when nobody asked how sure it is. */
  readonly sampled?: SampledAnswer | undefined;
  /** What a maker's range says of the ram; absent when none was given. */
  readonly news?: RangeNews | undefined;
}

export interface RangeNews {
  readonly news: NewestSite;
  /** With the answer of the newest revision, where there is another. */
  readonly compared?: AnswersCompared;
}

export function answerPage(about: AnswerPageOf): string {
  const { answer, site, assumptions, warnings, system, sampled } = about;
  const sections = [
    heading(about),
    section(
      'Worth checking first',
      warnings.map(({ field, message }) => `${field}: ${message}`),
    ),
    section(
      'What the range says of this ram',
      about.news ? rangeNewsInWords(about.news.news, about.news.compared, system) : [],
    ),
    section('Measured', measuredInWords(site, system)),
    table('Level book of the fall', levelTable(site.fall, system)),
    table('Level book of the lift', levelTable(site.lift, system)),
    section('Why', reasonsInWords(answer, site, system)),
    section('How sure', sampled ? howSureInWords(sampled, site, system) : []),
    section('Demand', demandInWords(answer, site, system)),
    section('Tank', tankInWords(answer, site, system)),
    table('The year', yearTable(about)),
    table('A day', dayTable(about)),
    section('How it starts', startUpInWords(answer, site, system)),
    table('What would change it', changeTable(about)),
    table('The same line in another pipe', materialTable(about)),
    table('Pressures', pressureTable(about)),
    section('Along the lines', alongTheLinesInWords(answer, site, system)),
    section('Assumed, because the file does not say', assumptionsInWords(assumptions, system)),
    section('How it was worked out', runInWords(answer)),
    section('Cautions', cautions(answer, site)),
  ];
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')
    .replaceAll('\u00a0', ' ');
}

function heading(about: AnswerPageOf): readonly string[] {
  const { answer, site, system } = about;
  const { kind } = answer.verdict;
  const ram = installationOf(site).installation.ram.name;
  const point = isRunning(kind) ? answer.operatingPoint : undefined;
  const colour = isRunning(kind) ? 'blue' : 'red';
  const lines = [
    ...(site.name === undefined ? [] : [bold(site.name), '']),
    styleText(['bold', colour], verdictSentence(kind, ram)),
  ];
  if (!point) {
    const drained = fromFullStoreInWords(answer, system);
    return drained === undefined ? lines : [...lines, ...wrapped(drained)];
  }
  const daily = formatNumber(point.deliveryFlow, 'daily', system);
  const show = (flow: number): string => formatQuantity(flow, 'sourceFlow', system);
  lines.push(
    `${daily} ${system === 'metric' ? 'litres' : 'gallons'} a day reach the tank${needOf(answer, system)}.`,
    ...monthsMetOf(about),
    `${plainFigures(toBeatsPerMinute(point.beatFrequency), 3)} beats a minute, ${show(point.supplyFlow)} from the source, ${show(point.wasteFlow)} run to waste.`,
  );
  return lines;
}

function needOf({ demand }: Answer, system: System): string {
  if (!demand) return '';
  const needed = formatNumber(demand.needed, 'daily', system);
  return demand.isMet ? `; ${needed} are needed` : `; ${needed} are needed: not enough`;
}

/** Need and delivery change with the season: the line above tells the month that needs most. */
function monthsMetOf({ answer, site }: AnswerPageOf): readonly string[] {
  const plan = waterPlanOf(answer, site);
  if (!plan || !hasSeasons(plan)) return [];
  const met = plan.months.filter(({ isMet }) => isMet).length;
  return [`Need and source change over the year: enough in ${met} of 12 months.`];
}

function levelTable(given: Given, system: System): readonly string[] {
  const rows = levelBookRows(given, system);
  if (rows.length === 0) return [];
  const right = { align: 'right' } as const;
  const unit = unitShown('staff', system);
  return columns(
    [
      { head: `in ${unit}` },
      { head: 'back', ...right },
      { head: 'inter', ...right },
      { head: 'fore', ...right },
      { head: 'rise', ...right },
      { head: 'instrument', ...right },
      { head: 'level', ...right },
      { head: 'adjusted', ...right },
    ],
    rows.map((row) => [
      row.point,
      row.back,
      row.inter,
      row.fore,
      row.rise,
      row.instrument,
      row.level,
      row.adjusted,
    ]),
  );
}

function changeTable({ answer, system }: AnswerPageOf): readonly string[] {
  const rows = changeRows(answer, system);
  const inColumns = (gap: string): readonly string[] =>
    columns(
      [
        { head: '' },
        { head: 'now', align: 'right' },
        { head: 'runs from', align: 'right' },
        { head: 'below that' },
        { head: 'to', align: 'right' },
        { head: 'above that' },
      ],
      rows.map(({ what, now, from, below, to, above }) => [what, now, from, below, to, above]),
      { gap },
    );
  const roomy = inColumns('  ');
  const lines = isTooWide(roomy) ? inColumns(' ') : roomy;
  const sentences = answer.changes.map((change) => changeInWords(change, system));
  // In a narrow window a table would break; the same in sentences does not.
  if (rows.length === 0 || isTooWide(lines)) return sentences.flatMap(item);
  const vain = sentences.filter((_, index) => answer.changes[index]?.runs === undefined);
  const enough = enoughChanges(answer, system);
  return [
    ...lines,
    ...wrapped('The weight is that of the moving parts in water. A blank: as far as was tried.', {
      indent: '  ',
    }),
    ...(enough.length > 0 ? item(`For what is needed: ${enough.join(', or ')}.`) : []),
    ...vain.flatMap(item),
  ];
}

function materialTable({ answer, system }: AnswerPageOf): readonly string[] {
  const rows = materialRows(answer, system);
  if (rows.length === 0) return [];
  return columns(
    [{ head: 'drive pipe' }, { head: 'it' }, { head: 'delivers', align: 'right' }],
    rows.map(({ pipe, verdict, delivers }) => [pipe, verdict, delivers]),
  );
}

function isTooWide(lines: readonly string[]): boolean {
  return Math.max(...lines.map((line) => line.length)) > pageWidth();
}

function pressureTable({ answer, site, system }: AnswerPageOf): readonly string[] {
  const rows = pressureRows(answer, site, system);
  if (rows.length === 0) return [];
  const lines = columns(
    [
      { head: 'part' },
      { head: 'peak', align: 'right' },
      { head: 'Joukowsky', align: 'right' },
      { head: 'rating', align: 'right' },
      { head: '' },
    ],
    rows.map(({ part, peak, bound, rating, outcomeWords }) => [
      part,
      peak,
      bound || '–',
      rating || '–',
      outcomeWords,
    ]),
  );
  const { pressureCheck } = answer;
  const head = (value: number): string => formatQuantity(value, 'head', system);
  const range = pressureCheck
    ? [
        `Along the drive line the head runs from ${head(pressureCheck.lowestHead)} to ${head(pressureCheck.peakHead)}. A part is judged by the larger of the simulated peak and the Joukowsky bound, a ΔV/g.`,
      ]
    : [];
  return [...lines, ...range.flatMap((text) => wrapped(text, { indent: '  ' }))];
}

function section(title: string, texts: readonly string[]): readonly string[] {
  return texts.length === 0 ? [] : [bold(title), ...texts.flatMap(item)];
}

function table(title: string, lines: readonly string[]): readonly string[] {
  return lines.length === 0 ? [] : [bold(title), ...lines];
}

function item(text: string): readonly string[] {
  return wrapped(text, { first: '  - ', indent: '    ' });
}

function bold(text: string): string {
  return styleText('bold', text);
}
