/** Fittings as people list them: `elbow`, `2 x bend 45`, `ball valve`, `K 1.5`, or a name from the engine's table. */
import { FITTINGS, type FittingName, findFitting } from '@fallwright/engine';

/** Short words, and the fitting of the table that each means. Judgement: the commonest make of each. */
const SHORT_WORDS: ReadonlyMap<string, FittingName> = new Map<string, FittingName>(
  Object.entries({
    elbow: 'elbow 90, threaded',
    'elbow 90': 'elbow 90, threaded',
    'elbow 45': 'elbow 45, threaded',
    'glued elbow': 'elbow 90, flanged or glued',
    bend: 'long elbow 90, threaded',
    'bend 90': 'long elbow 90, threaded',
    'bend 45': 'elbow 45, threaded',
    'long elbow': 'long elbow 90, threaded',
    'long bend': 'long elbow 90, threaded',
    tee: 'tee straight through, threaded',
    'ball valve': 'ball valve, open',
    'gate valve': 'gate valve, open',
    'globe valve': 'globe valve, open',
    'angle valve': 'angle valve, open',
    'butterfly valve': 'butterfly valve, open',
    'check valve': 'swing check valve',
    'non-return valve': 'swing check valve',
    'foot valve': 'foot valve with strainer, hinged disc',
    strainer: 'strainer, clean',
    mitre: 'mitre 90',
  } as const satisfies Record<string, FittingName>),
);

export type FittingRead =
  | { readonly ok: true; readonly loss: number }
  | { readonly ok: false; readonly suggestions: readonly string[] };

/** The whole loss coefficient of one entry, its count included. */
export function fittingLoss(text: string): FittingRead {
  const { count, name } = countAndName(text.trim().toLowerCase());
  const [, coefficient] = /^k\s*=?\s*(\d+(?:\.\d+)?)$/.exec(name) ?? [];
  if (coefficient !== undefined) return { ok: true, loss: count * Number(coefficient) };
  const short = SHORT_WORDS.get(plainName(name));
  if (short) return { ok: true, loss: count * FITTINGS[short].value };
  const found = findFitting(plainName(name));
  return found.ok ? { ok: true, loss: count * found.loss.value } : found;
}

/** `2 x elbow`, `2 elbows`; but in `90 elbow` the number is the angle. */
function countAndName(written: string): { readonly count: number; readonly name: string } {
  const [, count, name] =
    /^(\d{1,2})\s*[x×*]\s*(.+)$/.exec(written) ??
    /^([1-9]|1\d)\s+(?=[a-z])(.+)$/.exec(written) ??
    [];
  return count === undefined || name === undefined
    ? { count: 1, name: written }
    : { count: Number(count), name };
}

/** Singular, with the angle behind. */
function plainName(name: string): string {
  return name
    .replace(/\b(elbow|bend|tee|valve|strainer|mitre)s\b/g, '$1')
    .replace(/°/g, '')
    .replace(/\s+/g, ' ')
    .replace(/^(90|45) ?(?:degrees? |deg )?(elbow|bend)$/, '$2 $1');
}
