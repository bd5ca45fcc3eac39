/** What the table and the picture say, in sentences. */
import type { OperatingPoint, VerdictKind } from '@fallwright/engine';
import { isRunning, verdictWords } from '@fallwright/papers';
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import type { Wishes } from './cells.ts';
import { cellOf } from './cells.ts';
import type { Pair, PairResults } from './pairs.ts';
import { pairName } from './pairs.ts';
import type { SweepState } from './sweep.ts';

interface RunningPair {
  readonly pair: Pair;
  readonly point: OperatingPoint;
}

export function tableInWords(
  pairs: readonly Pair[],
  results: PairResults,
  wishes: Wishes,
  system: System,
): readonly string[] {
  const known = pairs.filter(({ key }) => results.get(key)?.kind === 'answered');
  if (known.length === 0) return [];
  const running = known.flatMap((pair): RunningPair[] => {
    const result = results.get(pair.key);
    if (result?.kind !== 'answered') return [];
    const { verdict, operatingPoint: point } = result.alternative;
    return point !== undefined && isRunning(verdict.kind) ? [{ pair, point }] : [];
  });
  const isWhole = pairs.every(({ key }) => results.has(key));
  const count = `${running.length} of ${known.length} pairs run.${othersInWords(known, results)}`;
  return [
    onSheet(pairs, results, wishes, system),
    isWhole ? count : `So far ${count}`,
    // The best of a part would be taken for the best of all.
    ...(isWhole ? best(running, wishes, system) : []),
  ].filter((sentence) => sentence !== undefined);
}

function onSheet(
  pairs: readonly Pair[],
  results: PairResults,
  wishes: Wishes,
  system: System,
): string | undefined {
  const pair = pairs.find(({ row, column }) => row.isOnSheet && column.isOnSheet);
  const cell = pair && cellOf(results.get(pair.key), wishes, system);
  return cell && `On the sheet, ${pairName(pair)}: ${lowered(cell.spoken)}.`;
}

const lowered = (words: string): string => words.charAt(0).toLowerCase() + words.slice(1);

function othersInWords(known: readonly Pair[], results: PairResults): string {
  const counts = new Map<VerdictKind, number>();
  for (const { key } of known) {
    const result = results.get(key);
    if (result?.kind !== 'answered') continue;
    const { kind } = result.alternative.verdict;
    if (!isRunning(kind)) counts.set(kind, (counts.get(kind) ?? 0) + 1);
  }
  const told = [...counts].map(([kind, count]) => `${verdictWords(kind)} ${count}`);
  return told.length === 0 ? '' : ` Of the others: ${told.join(', ')}.`;
}

function best(running: readonly RunningPair[], { needed }: Wishes, system: System): string[] {
  const told = ({ pair, point }: RunningPair): string =>
    `${pairName(pair)}, ${formatQuantity(point.deliveryFlow, 'daily', system)} for ${formatQuantity(point.supplyFlow, 'sourceFlow', system)} taken`;
  const [most] = [...running].sort((a, b) => b.point.deliveryFlow - a.point.deliveryFlow);
  if (most === undefined) return [];
  const first = `Most water: ${told(most)}.`;
  if (needed === undefined) return [first];
  const need = formatQuantity(needed, 'daily', system);
  const enough = running.filter(({ point }) => point.deliveryFlow >= needed);
  const [thriftiest] = enough.sort((a, b) => a.point.supplyFlow - b.point.supplyFlow);
  if (thriftiest === undefined) return [first, `None gives the ${need} that are needed.`];
  return [
    first,
    `${enough.length === 1 ? '1 gives' : `${enough.length} give`} the ${need} needed; the least water for it: ${told(thriftiest)}.`,
  ];
}

/** How far the run has come. */
export function progressInWords({ phase, done, wanted, elapsed, left }: SweepState): string {
  const of = `${done} of ${wanted} pairs`;
  switch (phase) {
    case 'running':
      return left === undefined ? of : `${of}, ${secondsInWords(left)} left`;
    case 'stopped':
      return `Stopped. ${of} are done and kept.`;
    case 'done':
      return elapsed > 0
        ? `${wanted} pairs, each simulated; ${elapsed.toFixed(1)} s.`
        : `${wanted} pairs, each simulated.`;
    default:
      return '';
  }
}

function secondsInWords(seconds: number): string {
  if (seconds < 1.5) return 'about a second';
  return seconds < 90
    ? `about ${Math.round(seconds)} seconds`
    : `about ${Math.round(seconds / 60)} minutes`;
}
