/** A pair in the few words that a cell holds: mark, figure, note. */
import type { Limit, StartUp, Verdict } from '@fallwright/engine';
import { isRunning, perCent } from '@fallwright/papers';
import type { Purpose, System } from '@fallwright/units';
import { formatNumber, formatQuantity, unitShown } from '@fallwright/units';
import { verdictWord } from '../answer/words.ts';
import type { MarkKind } from '../marks/verdict-mark.tsx';
import type { PairResult } from './pairs.ts';

export interface Cell {
  readonly kind: MarkKind;
  /** The figure of a ram that runs, the verdict of one that does not. */
  readonly figure: string;
  readonly isFigure: boolean;
  readonly note: string;
  /** The whole as a sentence, for those who listen. */
  readonly spoken: string;
}

export interface Wishes {
  /** Flow needed at the tank. */
  readonly needed?: number;
  /** Flow that the source gives; absent when it has plenty. */
  readonly given?: number;
}

/** `L` or `gal`: what the column counts a day. */
export function dailyUnit(system: System): string {
  return unitShown('daily', system).split(' ')[0] ?? '';
}

export function cellOf(
  result: PairResult | undefined,
  wishes: Wishes,
  system: System,
): Cell | undefined {
  if (result === undefined) return undefined;
  if (result.kind === 'refused') {
    const figure = 'Not possible';
    return {
      kind: 'notEnoughYet',
      figure,
      isFigure: false,
      note: result.message,
      spoken: `${figure}: ${result.message}`,
    };
  }
  const { verdict, operatingPoint: point, startUp } = result.alternative;
  const word = verdictWord(verdict.kind);
  if (point !== undefined && isRunning(verdict.kind)) {
    const daily = formatNumber(point.deliveryFlow, 'daily', system);
    const takes = `takes ${short(point.supplyFlow, 'sourceFlow', system)}`;
    const more = [
      ...(verdict.kind === 'runsAfterHandStart' ? [handStrokes(startUp)] : []),
      ...shortfall(point.deliveryFlow, wishes),
    ];
    return {
      kind: verdict.kind,
      figure: `${daily}\u00a0${dailyUnit(system)}`,
      isFigure: true,
      note: [takes, ...more].join('; '),
      spoken: [
        `${word}, ${formatQuantity(point.deliveryFlow, 'daily', system)}`,
        `${takes}\u00a0${unitShown('sourceFlow', system)}`,
        ...more,
      ].join(', '),
    };
  }
  const note = whyNot(verdict, startUp, system);
  return { kind: verdict.kind, figure: word, isFigure: false, note, spoken: `${word}, ${note}` };
}

/** How much of the need comes, when it is not all. */
function shortfall(delivered: number, { needed }: Wishes): string[] {
  return needed !== undefined && delivered < needed
    ? [`${perCent(delivered / needed)}\u00a0of\u00a0need`]
    : [];
}

/** A cell is read across others: one decimal of a litre or a metre is as much as it can carry. */
function short(value: number, purpose: Purpose, system: System): string {
  const figures = formatNumber(value, purpose, system);
  return Number(figures.replaceAll(',', '')) < 10
    ? formatNumber(value, purpose, system, 2)
    : figures;
}

function handStrokes(startUp: StartUp | undefined): string {
  const strokes = startUp?.handStrokes ?? 0;
  return strokes === 1 ? '1 stroke by hand' : `${strokes} strokes by hand`;
}

function whyNot(verdict: Verdict, startUp: StartUp | undefined, system: System): string {
  const of = (kind: Limit['kind'], purpose: Purpose, otherwise: string): string => {
    const limit = verdict.limits.find((one) => one.kind === kind);
    if (limit === undefined || limit.has >= limit.needs) return otherwise;
    const has = short(limit.has, purpose, system);
    return `${has} of ${formatQuantity(limit.needs, purpose, system)}`;
  };
  switch (verdict.kind) {
    case 'staysOpen':
      return of('closingFlow', 'sourceFlow', 'only just too slow');
    case 'doesNotLift':
      return of('hammer', 'head', 'the blow gives way');
    case 'staysShut':
      return startUp?.outcome === 'never'
        ? 'never starts from cold'
        : of('recoil', 'head', 'too weak a recoil');
    case 'flutters':
      return of('beat', 'time', 'opens too soon');
    case 'starves': {
      const source = verdict.limits.find((one) => one.kind === 'source');
      if (source === undefined) return 'the source runs dry';
      const takes = short(source.needs, 'sourceFlow', system);
      return `takes ${takes}; ${formatQuantity(source.has, 'sourceFlow', system)} given`;
    }
    default:
      return '';
  }
}
