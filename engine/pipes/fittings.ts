/**
 * Loss coefficients of what stands in a line beside straight pipe, on the velocity head of the pipe it joins.
 *
 * Published lists differ by a factor of two for elbows and check valves, so each entry carries the range they span.
 */
import type { Ratio } from '../quantities.ts';
import type { KnownBy, SourcedValue } from './evidence.ts';
import { closestNames, nameWords } from './name-search.ts';

const LIST_A = 'reference sheet of minor losses, quoting Crane TP-410 and textbooks';
const LIST_B = 'Environmentally Conscious Materials Handling (2009), table 9.2';
const LIST_C = 'LMNO Engineering, minor loss table (as in Munson, Young and Okiishi)';
const LIST_D = 'lecture slides, quoting Potter and Wiggert, Mott, Crowe, Cengel';
const LIST_E = 'web notes on fittings (values as in Perry)';

const fitting = (
  value: Ratio,
  low: Ratio,
  high: Ratio,
  source: string,
  knownBy: KnownBy = 'seen',
): SourcedValue => ({ value, low, high, source, knownBy });

/**
 * Loss coefficient of each fitting, on the velocity head of the pipe (of the smaller bore where two differ).
 *
 * Entrances are the loss alone. The velocity head itself, which a line also takes from its source, comes on top.
 */
export const FITTINGS = {
  'entrance, pipe projecting inward': fitting(0.8, 0.5, 1, LIST_A),
  'entrance, sharp edge': fitting(0.5, 0.5, 0.5, LIST_B),
  'entrance, slightly rounded': fitting(0.22, 0.04, 0.5, LIST_A),
  'entrance, bell mouth': fitting(0.05, 0.03, 0.1, LIST_B),
  'exit into a tank': fitting(1, 1, 1, LIST_A),
  'elbow 90, threaded': fitting(1.5, 0.9, 1.5, LIST_C),
  'elbow 90, flanged or glued': fitting(0.3, 0.3, 0.3, LIST_C),
  'long elbow 90, threaded': fitting(0.7, 0.6, 0.7, LIST_C),
  'long elbow 90, flanged or glued': fitting(0.2, 0.2, 0.2, LIST_C),
  'elbow 45, threaded': fitting(0.4, 0.4, 0.4, LIST_C),
  'tee straight through, threaded': fitting(0.9, 0.9, 0.9, LIST_C),
  'tee into the branch, threaded': fitting(2, 2, 2, LIST_C),
  'tee into the branch, flanged or glued': fitting(1, 1, 1, LIST_C),
  'return bend 180, flanged or glued': fitting(0.2, 0.2, 0.2, LIST_C),
  'mitre 90': fitting(1.1, 1.1, 1.3, LIST_A),
  'mitre 45': fitting(0.4, 0.35, 0.44, LIST_B),
  'globe valve, open': fitting(10, 3, 10, LIST_C),
  'angle valve, open': fitting(2, 2, 5, LIST_C),
  'gate valve, open': fitting(0.15, 0.1, 0.3, LIST_C),
  'gate valve, quarter closed': fitting(0.26, 0.26, 1.2, LIST_C),
  'gate valve, half closed': fitting(2.1, 2.1, 5.6, LIST_C),
  'ball valve, open': fitting(0.05, 0.05, 0.05, LIST_D),
  'ball valve, two thirds closed': fitting(200, 200, 210, LIST_D),
  'diaphragm valve, open': fitting(2.3, 2.3, 2.3, LIST_D),
  'swing check valve': fitting(2, 0.29, 2.5, LIST_C),
  'lift check valve': fitting(4.6, 0.85, 9.1, LIST_B),
  'ball check valve': fitting(70, 70, 70, LIST_E),
  'butterfly valve, open': fitting(0.56, 0.2, 1.2, LIST_B),
  'foot valve with strainer, hinged disc': fitting(1.2, 0.8, 1.5, LIST_A),
  'foot valve with strainer, poppet disc': fitting(10, 7, 15, LIST_E),
  'strainer, clean': fitting(
    1,
    0.5,
    2.5,
    'general hydraulic knowledge; depends on open area',
    'memory',
  ),
} as const satisfies Readonly<Record<string, SourcedValue>>;

export type FittingName = keyof typeof FITTINGS;

/** Names of all fittings, in the order of the line: entrances, bends, tees, valves, strainers. */
export function fittingNames(): readonly FittingName[] {
  return Object.keys(FITTINGS) as FittingName[];
}

/** A fitting by its name; or the names nearest to what was written. Case, commas and hyphens do not matter. */
export function findFitting(
  name: string,
):
  | { readonly ok: true; readonly name: FittingName; readonly loss: SourcedValue }
  | { readonly ok: false; readonly suggestions: readonly string[] } {
  const wanted = nameWords(name).join(' ');
  const found = fittingNames().find((known) => nameWords(known).join(' ') === wanted);
  return found
    ? { ok: true, name: found, loss: FITTINGS[found] }
    : { ok: false, suggestions: closestNames(name, fittingNames()) };
}
