/** When nothing works, or nothing gives enough: what came nearest, and what would have to change. */
import type { Choice, Contender, Field, Reason } from '@fallwright/engine';
import { formatQuantity, plainFigures, type System } from '@fallwright/units';
import type { ChoiceAbout } from './choice-about.ts';
import { daily, ramInWords, share } from './choice-words.ts';

interface Near {
  readonly reason: Reason;
  readonly key: string;
  /** How far short it falls: 1 is just enough. */
  readonly reached: number;
}

/** Of each kind of reason the build that came nearest, the nearest of all first. */
function nearest(choice: Choice): readonly Near[] {
  const found = new Map<string, Near>();
  for (const key of choice.keys()) {
    const reason = choice.reasonFor(key);
    const reached = reason && reachedOf(reason);
    if (!reason || reached === undefined) continue;
    const kind = reason.kind === 'verdict' ? reason.verdict : reason.kind;
    const best = found.get(kind);
    if (!best || reached > best.reached) found.set(kind, { reason, key, reached });
  }
  return [...found.values()].sort((a, b) => b.reached - a.reached);
}

function reachedOf(reason: Reason): number | undefined {
  switch (reason.kind) {
    case 'staysOpen':
      return reason.terminalFlow / reason.closingFlow;
    case 'liftTooHigh':
      return reason.reaches / reason.needs;
    case 'overRated':
      return reason.rating / reason.pressure;
    case 'verdict':
      return 1 + reason.decidedBy.margin;
    case 'pulse':
      return reason.largest / reason.share;
    default:
      return undefined;
  }
}

/** What would have to change, one sentence for each kind of obstacle. */
export function whatWouldHelp(about: ChoiceAbout): readonly string[] {
  const { choice, system } = about;
  return nearest(choice).map(({ reason, key }) => {
    const candidate = choice.candidate(key);
    const who = candidate ? ramInWords(candidate.parts) : key;
    return `${who}: ${adviceFor(reason, system)}`;
  });
}

function adviceFor(reason: Reason, system: System): string {
  const flow = (value: number): string => formatQuantity(value, 'sourceFlow', system);
  const height = (value: number): string => formatQuantity(value, 'height', system);
  switch (reason.kind) {
    case 'staysOpen':
      return `the line lets ${flow(reason.terminalFlow)} through and its valve shuts at ${flow(reason.closingFlow)}. A wider drive pipe, a lighter weight, a shorter stroke or more fall would shut it.`;
    case 'liftTooHigh':
      return `its hammer reaches ${height(reason.reaches)} at the most and ${height(reason.needs)} are needed. More fall, a stiffer drive pipe or a ram that shuts at a larger flow reaches higher; or the tank stands lower.`;
    case 'overRated':
      return `${reason.name} would see ${formatQuantity(reason.pressure, 'pressure', system)} and may carry ${formatQuantity(reason.rating, 'pressure', system)}. A part of a higher rating carries it.`;
    case 'pulse':
      return `its vessel would swing by ${share(reason.share)} where ${share(reason.largest)} are wished for at the most. Offer a larger vessel.`;
    case 'verdict': {
      const { decidedBy, verdict } = reason;
      const has = `it has ${share(1 + decidedBy.margin)} of what it needs`;
      if (verdict === 'starves') {
        return `the source gives too little for it: ${has}. A smaller ram, a lighter weight or a store that fills in between takes less.`;
      }
      if (verdict === 'staysShut' || verdict === 'flutters') {
        return `its valve does not open again in time: ${has}. A heavier weight, a longer stroke or a longer drive line opens it.`;
      }
      if (verdict === 'staysOpen') {
        return `its valve does not shut: ${has} of flow. A wider drive pipe, a lighter weight or a shorter stroke shuts it.`;
      }
      return `it does not reach the lift: ${has}. More fall or a stiffer drive pipe reaches higher.`;
    }
    default:
      return '';
  }
}

/** The need is above what anything gives: how far, and whether more rams side by side would do. */
export function shortfallInWords(about: ChoiceAbout, field: Field): readonly string[] {
  const { system, request } = about;
  const { shortfall } = field.picks;
  if (!shortfall) return [];
  const need = daily(shortfall.need, system);
  if (shortfall.mostWater >= shortfall.need) {
    const best = shortfall.bestChance;
    const chance = best === undefined ? '' : ` The best chance of it is ${share(best)}.`;
    return [
      `Some give ${need}, but none as surely as is wished.${chance} Measure what is not sure, take one with more to spare, or lower the wish with --chance.`,
    ];
  }
  const lines = [
    `Nothing here gives ${need}; the most is ${daily(shortfall.mostWater, system)}, ${share(shortfall.mostWater / shortfall.need)} of it.`,
  ];
  const most = request.wish.mostRams ?? 1;
  const more = ramsThatWouldDo(about, field.contenders, shortfall.need);
  if (more !== undefined && more > most) {
    lines.push(
      `${plainFigures(more, 2)} rams side by side, each on its own drive line, would give about that, and the source has the water for them: try --rams ${more}.`,
    );
  } else {
    lines.push(
      'A larger ram, more fall or a richer source would give more. See what each build was left out for with --why.',
    );
  }
  return lines;
}

/** Judgement: rams side by side want looking after one by one. */
const MOST_RAMS = 6;

/** The fewest rams alike that would give the need on what the source gives in its driest time. */
function ramsThatWouldDo(
  { request }: ChoiceAbout,
  contenders: readonly Contender[],
  need: number,
): number | undefined {
  const { source, dryFlow } = request.place;
  const given = dryFlow ?? (source.kind === 'steady' ? (source.yield ?? Infinity) : source.inflow);
  const counts = contenders.flatMap(({ run }) => {
    const count = Math.ceil(need / run.deliveryFlow);
    return count <= MOST_RAMS && count * run.supplyFlow <= given ? [count] : [];
  });
  return counts.length === 0 ? undefined : Math.min(...counts);
}
