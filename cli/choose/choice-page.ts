/** A choice as a page for a person: the three picks first, then the front, what to buy, and why the others were left out. */
import { styleText } from 'node:util';
import { type Contender, WANTED_CHANCE } from '@fallwright/engine';
import {
  assumptionsInWords,
  combinationInWords,
  moneyInWords,
  type Proposal,
  pickName,
  proposalOf,
  ramsInWords,
  whyNotRow,
} from '@fallwright/papers';
import {
  formatNumber,
  formatQuantity,
  plainFigures,
  toBeatsPerMinute,
  unitShown,
} from '@fallwright/units';
import { columns } from '../columns.ts';
import { pageWidth, wrapped } from '../wrap.ts';
import {
  type ChoiceAbout,
  fieldShown,
  lacksOf,
  type NamedPick,
  namedPicks,
  waterOf,
} from './choice-about.ts';
import { daily, driveInWords, lackInWords, reasonGroup } from './choice-words.ts';
import { frontPlot } from './front-plot.ts';
import { notEnough, whatWouldHelp } from './when-none.ts';

export function choicePage(about: ChoiceAbout, why: string | undefined): string {
  const { field, isPriced } = fieldShown(about);
  const picks = namedPicks(field, isPriced);
  const proposed = picks.map(({ names, pick }) =>
    proposalOf(
      about.request,
      pick,
      names.map((name) => pickName(name, pick.contender, about.request.wish)),
      about.reader,
    ),
  );
  const sections = [
    heading(about, picks.length > 0, isPriced),
    section(
      'Worth checking first',
      about.warnings.map(({ file, problem }) => `${file}, ${where(problem)}: ${problem.message}`),
    ),
    section('What would have to change', picks.length > 0 ? [] : whatWouldHelp(about)),
    section('Not enough', picks.length > 0 ? notEnough(about, field) : []),
    ...proposed.map((proposal, index) => pickSection(about, picks[index] as NamedPick, proposal)),
    frontSection(about, isPriced),
    ...(proposed[0] ? [sizesSection(proposed[0]), partsSection(about, proposed[0])] : []),
    lacksSection(about, isPriced),
    whySection(about, why),
    othersSection(about),
    section(
      'Assumed, because the files do not say',
      assumptionsInWords(about.assumptions, about.system),
    ),
    section('How it was chosen', howInWords(about)),
    section('Cautions', CAUTIONS),
  ];
  return sections
    .filter((lines) => lines.length > 0)
    .map((lines) => lines.join('\n'))
    .join('\n\n')
    .replaceAll('\u00a0', ' ');
}

/** Common practice, no source. The cautions of a build stand in its own answer. */
const CAUTIONS = [
  'This is a prediction, not a promise. Prices are those of the list on its day. Local codes and licensed practice come first.',
  'Each beat is a shock: keep fingers out of the waste valve, let the pressure off before undoing anything, and shore a trench that is deeper than the knees.',
  'Before anything is bought, write the pick as a site file (--write) and read its answer: it has the pressures and the cautions of that build.',
];

function heading(about: ChoiceAbout, hasPicks: boolean, isPriced: boolean): readonly string[] {
  const { site, choice, hasPrices, hasRange, system, request } = about;
  const { need } = request.wish;
  const lines = site.name === undefined ? [] : [bold(site.name), ''];
  if (!choice.isComplete) {
    lines.push(
      ...wrapped('Stopped before the end: this is what stands by now, and better may be left.'),
    );
  }
  const wish =
    need === undefined ? 'No need is stated' : `${daily(need, system)} are needed at the tank`;
  lines.push(
    hasPicks
      ? bold(`${wish}.`)
      : styleText(['bold', 'red'], `${wish}. Nothing that is offered works here.`),
  );
  if (!hasPrices) {
    lines.push(
      ...wrapped(
        'Without a price list builds are compared by water alone, at what the source gives in its driest time: those that give most are shown, and not the smaller ones that would do. Give one with --prices.',
      ),
    );
  } else if (!isPriced && hasPicks) {
    lines.push(
      ...wrapped(
        'Every build that works lacks a price, so they are compared by water alone. What is missing stands below.',
      ),
    );
  }
  if (!hasRange) {
    lines.push(...wrapped('Without a range the rams are typical ones. Give yours with --range.'));
  }
  return lines;
}

function pickSection(
  about: ChoiceAbout,
  { pick }: NamedPick,
  { names, chance, margins, advice, missing }: Proposal,
): readonly string[] {
  const { choice, system, reader, isJudged } = about;
  const { candidate, run } = pick.contender;
  const { count } = candidate.parts;
  const cost = candidate.cost === undefined ? '' : `${moneyInWords(candidate.cost, reader)}, `;
  const supply = formatQuantity(count * run.supplyFlow, 'sourceFlow', system);
  const beats = plainFigures(toBeatsPerMinute(run.beatFrequency), 3);
  const notJudged = choice.isComplete
    ? 'Its chance was not worked out: it stands too far behind the front.'
    : 'Its chance was not worked out: the search was stopped before.';
  const limits = margins.map(({ what, margin }) => `${what}, ${margin}`).join('; ');
  return [
    ...wrapped(`${startOfSentence(names.join(', '))}: ${cost}${daily(waterOf(pick), system)}`).map(
      bold,
    ),
    ...item(`${combinationInWords(candidate.parts, reader)}.`),
    ...item(
      `${beats} beats a minute; ${supply} from the source; efficiency ${share(run.daubuissonEfficiency)} by D’Aubuisson.`,
    ),
    ...(chance === undefined ? (isJudged ? item(notJudged) : []) : item(chance)),
    ...item(`Limits, the nearest first: ${limits}.`),
    ...advice.flatMap((rule) => item(`Not as is usual: ${rule}`)),
    ...(about.hasPrices && missing.length > 0
      ? item(`Without a price: ${missing.join('; ')}.`)
      : []),
    ...(pick.answer ? [] : item('Not worked out finely: the search was stopped before.')),
  ];
}

/** A few hundred tries cannot tell a chance from certainty. */
function chanceShown(chance: number): string {
  if (chance > 0.99) return 'over 99\u00a0%';
  return chance < 0.01 ? 'under 1\u00a0%' : `${Math.round(100 * chance)}\u00a0%`;
}

/** One for each row, and for its place in the picture. */
const LETTERS = 'abcdefghijklmnopqrstuvwxyz';
/** Judgement: more rows than this nobody compares; the record has them all. */
const MOST_ROWS = 12;

function frontSection(about: ChoiceAbout, isPriced: boolean): readonly string[] {
  const { choice, system, reader, request } = about;
  const { front, contenders } = isPriced ? choice.priced : choice.unpriced;
  // Without prices the front is one build: what comes near it is worth a look.
  const all = isPriced ? front : differing(contenders);
  const shown = all.slice(0, MOST_ROWS);
  if (shown.length === 0) return [];
  const right = { align: 'right' } as const;
  const rows = shown.map((contender, index) => {
    const { candidate, water, judgement } = contender;
    return [
      LETTERS.charAt(index),
      ...(isPriced ? [moneyInWords(candidate.cost ?? 0, reader)] : []),
      formatNumber(water, 'daily', system),
      ...(about.isJudged
        ? [
            judgement
              ? chanceShown(judgement.chance).replace(/(over|under) /, (word) =>
                  word.startsWith('o') ? '>' : '<',
                )
              : '–',
          ]
        : []),
      `${ramsInWords(candidate.parts)}; ${driveInWords(candidate.parts, system)}; ${candidate.parts.deliveryPipe.name}`,
    ];
  });
  const heads = [
    { head: '' },
    ...(isPriced ? [{ head: 'cost', ...right }] : []),
    { head: unitShown('daily', system), ...right },
    ...(about.isJudged ? [{ head: 'chance', ...right }] : []),
    { head: 'ram; drive line; delivery pipe' },
  ];
  const more = all.length - shown.length;
  const plot = isPriced ? plotOf(about, shown) : [];
  const wanted = request.wish.wantedChance ?? WANTED_CHANCE;
  const hasUnsure = all.some(({ judgement }) => judgement && judgement.chance < wanted);
  return [
    bold(isPriced ? 'The front: nothing costs less and gives more' : 'Most water first'),
    ...tableWithin(heads, rows),
    ...(hasUnsure
      ? wrapped(
          `Only what has a chance of ${share(wanted)} or more is picked, while there is any.`,
          {
            indent: '  ',
          },
        )
      : []),
    ...(more > 0 ? [`  and ${more} more: see --json`] : []),
    ...(plot.length > 0 ? ['', ...plot] : []),
  ];
}

/** One of each ram, tuning and drive line: what differs only behind the ram is alike in water. */
function differing(contenders: readonly Contender[]): readonly Contender[] {
  const seen = new Set<string>();
  return contenders
    .filter(({ candidate: { parts } }) => {
      const key = `${parts.ram.key}|${parts.tuning.name}|${parts.count}|${parts.drivePipe.key}`;
      if (seen.has(key)) return false;
      seen.add(key);
      return true;
    })
    .sort((a, b) => b.water - a.water);
}

function plotOf(about: ChoiceAbout, front: readonly Contender[]): readonly string[] {
  const { system, reader } = about;
  const points = front.map(({ candidate, water }, index) => ({
    label: LETTERS.charAt(index),
    across: candidate.cost ?? 0,
    up: water,
  }));
  return frontPlot(points, {
    upCalled: unitShown('daily', system),
    acrossCalled: '',
    upShown: (value) => formatNumber(value, 'daily', system),
    acrossShown: (value) => moneyInWords(value, reader),
    width: Math.min(56, pageWidth() - 16),
    height: 9,
  });
}

/** The last column takes what is left of the page, and goes on below itself. */
function tableWithin(
  heads: readonly { readonly head: string; readonly align?: 'left' | 'right' }[],
  rows: readonly (readonly string[])[],
): readonly string[] {
  const last = heads.length - 1;
  const [head = ''] = columns(
    heads.slice(0, last),
    rows.map((row) => row.slice(0, last)),
  );
  const width = Math.max(head.length, ...columns(heads.slice(0, last), rows).map((l) => l.length));
  const room = pageWidth() - width - 2;
  const broken = rows.flatMap((row) =>
    wrapped(row[last] ?? '', { width: room, indent: '' }).map((part, index) => [
      ...row.slice(0, last).map((cell) => (index === 0 ? cell : '')),
      part,
    ]),
  );
  return columns(heads, broken);
}

function sizesSection({ names, sizes }: Proposal): readonly string[] {
  return section(
    `Sizes for the ${names[0] ?? 'pick'}`,
    sizes.map(({ what, size }) => `${what}: ${size}.`),
  );
}

function partsSection(about: ChoiceAbout, proposal: Proposal): readonly string[] {
  if (!about.hasPrices) return [];
  const { names, parts, total } = proposal;
  const right = { align: 'right' } as const;
  const rows: string[][] = [];
  let group = '';
  for (const part of parts) {
    if (part.group !== group) rows.push([startOfSentence(part.group), '', '', '', '']);
    group = part.group;
    rows.push([
      `  ${shortened(part.what)}`,
      part.size,
      part.quantity,
      part.each,
      part.sum || 'no price',
    ]);
    for (const line of wrapped(part.note, { width: LONGEST_NAME })) {
      if (line !== '') rows.push([`    ${line}`, '', '', '', '']);
    }
  }
  rows.push(['Total', '', '', '', total ?? 'not known']);
  return [
    bold(`Parts and work for the ${names[0] ?? 'pick'}`),
    ...columns(
      [
        { head: '' },
        { head: 'size' },
        { head: 'quantity', ...right },
        { head: 'each', ...right },
        { head: 'sum', ...right },
      ],
      rows,
      { gap: ' ' },
    ),
  ];
}

/** Judgement: a name longer than this leaves no room for its figures. */
const LONGEST_NAME = 36;

function shortened(name: string): string {
  return name.length > LONGEST_NAME ? `${name.slice(0, LONGEST_NAME - 1)}…` : name;
}

/** Judgement: the rest stands in the record. */
const MOST_LACKS = 8;

function lacksSection(about: ChoiceAbout, isPriced: boolean): readonly string[] {
  const { choice, system, reader, hasPrices } = about;
  const lacks = lacksOf(choice.unpriced);
  if (!hasPrices || lacks.length === 0) return [];
  const most = Math.max(...choice.unpriced.contenders.map(({ water }) => water));
  const rest = lacks.length - MOST_LACKS;
  const names = lacks.slice(0, MOST_LACKS).map(({ lack }) => lackInWords(lack, reader));
  return section('Without a price', [
    `${startOfSentence(names.join('; '))}${rest > 0 ? `; and ${rest} more` : ''}.`,
    isPriced
      ? `Builds that need any of it are not compared by cost. The best of them would give ${daily(most, system)}. Put the price into the list, or write left out for a kind that you go without.`
      : 'Put the price into the list, or write left out for a kind that you go without.',
  ]);
}

function whySection(about: ChoiceAbout, why: string | undefined): readonly string[] {
  if (why === undefined) return [];
  const { choice, reader } = about;
  const words = why
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const found = [...choice.keys()].filter((key) => {
    const parts = choice.candidate(key)?.parts;
    const text = `${key} ${parts ? combinationInWords(parts, reader) : ''}`.toLowerCase();
    return words.every((word) => text.replaceAll('\u00a0', ' ').includes(word));
  });
  if (found.length === 0) {
    return section('Why', [
      `No build has all of ${why} in its words. Write the ram, its tuning or a pipe as they stand above.`,
    ]);
  }
  const lines = found.slice(0, MOST_ROWS).map((key) => {
    const { what, cost, why: because } = whyNotRow(choice, key, reader);
    const price = cost === '' ? '' : `, ${cost}`;
    return `${what}${price}. ${because === '' ? 'It stands on the front: nothing costs less and gives more.' : because}`;
  });
  const more = found.length - lines.length;
  return section(`Why: ${why}`, [
    ...lines,
    ...(more > 0 ? [`And ${more.toLocaleString('en')} more with these words.`] : []),
  ]);
}

function othersSection({ choice }: ChoiceAbout): readonly string[] {
  const counts = new Map<string, number>();
  for (const key of choice.keys()) {
    const reason = choice.reasonFor(key);
    if (!reason) continue;
    const group = reasonGroup(reason);
    counts.set(group, (counts.get(group) ?? 0) + 1);
  }
  if (counts.size === 0) return [];
  const rows = [...counts].sort(([, a], [, b]) => b - a);
  return [
    bold('Why the others were left out'),
    ...columns(
      [{ head: 'builds', align: 'right' }, { head: '' }],
      rows.map(([group, count]) => [count.toLocaleString('en'), group]),
    ),
  ];
}

function howInWords({ choice, isJudged }: ChoiceAbout): readonly string[] {
  const { combinations, rejected, pruned, distinctRuns, runs } = choice.progress;
  const many = (count: number): string => count.toLocaleString('en');
  const part = (count: number): string => share(count / Math.max(1, combinations));
  return [
    `${many(combinations)} combinations: ${part(rejected)} turned away by limits before any run, ${part(pruned)} beaten by bound. ${many(runs)} of ${many(distinctRuns)} different runs were made; ${share(1 - runs / Math.max(1, distinctRuns))} were spared.`,
    isJudged
      ? 'The picks are judged by tries with all that is not sure drawn at random, in the dry season where months are told.'
      : 'The picks rest on their margins alone: nothing was drawn at random.',
  ];
}

function where({ line, field }: { readonly line?: number; readonly field: string }): string {
  return [line === undefined ? '' : `line ${line}`, field].filter((part) => part !== '').join(', ');
}

function section(title: string, lines: readonly string[]): readonly string[] {
  if (lines.length === 0) return [];
  return [bold(title), ...lines.flatMap(item)];
}

function item(text: string): readonly string[] {
  return wrapped(text, { indent: '    ', first: '  - ' });
}

function bold(text: string): string {
  return styleText('bold', text);
}

function share(ratio: number): string {
  return `${plainFigures(100 * ratio, 2)}\u00a0%`;
}

function startOfSentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
