/**
 * The rig of a test as if it were a document of its own, so that every field that writes the fall and the pipes of a place
 * writes those of a rig. Each step is a step of the test.
 */
import type { SiteAnswerState } from '../answer/site-answer.ts';
import type { Place } from '../state/place.ts';
import { MOST_REMEMBERED } from '../state/place.ts';
import type { SiteDocument } from '../state/site-document.ts';
import { isRecord } from '../state/site-document.ts';
import type { Store } from '../state/store.ts';

const RIG = 'rig';
const PREFIX = `${RIG}.`;
const NO_RIG: SiteDocument = {};

export function rigStore(test: Store<Place>): Store<Place> {
  let seen: Place | undefined;
  let shown: Place | undefined;
  const get = (): Place => {
    const whole = test.get();
    if (shown === undefined || whole !== seen) {
      const next = rigOf(whole, shown);
      seen = whole;
      shown = next;
    }
    return shown;
  };
  return {
    get,
    subscribe: test.subscribe,
    update: (change) =>
      test.update((whole) => {
        const before = get();
        const after = change(before);
        return after === before ? whole : withRig(whole, before, after);
      }),
  };
}

function rigOf(whole: Place, before: Place | undefined): Place {
  const document = isRecord(whole.document.rig) ? whole.document.rig : NO_RIG;
  const unread = Object.fromEntries(
    Object.entries(whole.unread).flatMap(([key, waiting]) =>
      key.startsWith(PREFIX) ? [[key.slice(PREFIX.length), waiting]] : [],
    ),
  );
  // The same texts are the same object, so that who watches them sees that nothing changed.
  const isSame =
    before !== undefined &&
    Object.keys(unread).length === Object.keys(before.unread).length &&
    Object.entries(unread).every(([key, waiting]) => before.unread[key] === waiting);
  return { ...whole, document, unread: isSame ? before.unread : unread };
}

function withRig(whole: Place, before: Place, after: Place): Place {
  const others = Object.entries(whole.unread).filter(([key]) => !key.startsWith(PREFIX));
  const mine = Object.entries(after.unread).map(
    ([key, waiting]) => [PREFIX + key, waiting] as const,
  );
  const unread = Object.fromEntries([...others, ...mine]);
  const isStep = after.past !== before.past;
  const { document: rig } = after;
  const { rig: _rig, ...rest } = whole.document;
  const document =
    rig === before.document
      ? whole.document
      : Object.keys(rig).length === 0
        ? rest
        : { ...whole.document, rig };
  return {
    ...whole,
    document,
    unread,
    ...(after.lastChanged === undefined ? {} : { lastChanged: after.lastChanged }),
    ...(isStep
      ? {
          past: [...whole.past, { document: whole.document, unread: whole.unread }].slice(
            -MOST_REMEMBERED,
          ),
        }
      : {}),
    future: after.future === before.future ? whole.future : [],
  };
}

/** Problems of the test under the names that the fields of the rig look for. */
export function rigProblems(state: SiteAnswerState): SiteAnswerState {
  return {
    ...state,
    problems: state.problems.map((problem) =>
      problem.field.startsWith(PREFIX)
        ? { ...problem, field: problem.field.slice(PREFIX.length) }
        : problem,
    ),
  };
}
