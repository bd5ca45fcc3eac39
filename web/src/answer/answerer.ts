/**
 * Asks for answers as a person types, and lets the newest input win.
 *
 * It waits a moment after each change, asks for the quick answer (verdict, flows, pressures), shows it, and only then
 * asks what would change the verdict. An answer to an older input is thrown away. It knows nothing of workers or screens,
 * so it is tested with plain functions.
 */
import type { Store } from '../state/store.ts';

/** Who computes: in the app two workers, in tests whatever the test gives. */
export interface EngineRoom<Answered, Problem, Changes> {
  readonly answer: (siteText: string) => Promise<Outcome<Answered, Problem>>;
  readonly changes: (siteText: string) => Promise<Changes>;
  /** Stops a search for changes that nobody waits for any more. */
  readonly dropChanges: () => void;
}

export type Outcome<Answered, Problem> =
  | { readonly ok: true; readonly value: Answered }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export interface AnswerState<Answered, Problem, Changes> {
  /** `slow`: it has been running long enough to say so. `failed`: the computation itself broke. */
  readonly phase: 'waiting' | 'running' | 'slow' | 'answered' | 'refused' | 'failed';
  /** The last answer that was good, and the text it belongs to; kept while newer input is wrong or running. */
  readonly shown?: { readonly value: Answered; readonly siteText: string };
  readonly changes?: Changes;
  readonly areChangesRunning: boolean;
  /** Why the newest input has no answer. */
  readonly problems: readonly Problem[];
  /** What broke, when the computation failed. */
  readonly failure?: string;
}

export const NO_ANSWER_YET = {
  phase: 'waiting',
  areChangesRunning: false,
  problems: [],
} as const satisfies AnswerState<never, never, never>;

export interface Timing {
  /** Pause after a key before computing, in milliseconds. */
  readonly settle: number;
  /** After this long the screen says that it is running. LOOK: 0.4 s. */
  readonly sayRunning: number;
  /** Rest after an answer before the search for changes: the next key would only end it again. */
  readonly beforeChanges: number;
}

/** Judgement: 40 ms joins the keys of one word and is not felt as waiting; 250 ms is the pause between two of them. */
export const USUAL_TIMING: Timing = { settle: 40, sayRunning: 400, beforeChanges: 250 };

export interface Answerer {
  /** Asks about the newest input of the place in hand. */
  readonly ask: (siteText: string) => void;
  /** Forgets the answer in hand: it belongs to another place. */
  readonly forget: () => void;
}

export function createAnswerer<Answered, Problem, Changes>(
  room: EngineRoom<Answered, Problem, Changes>,
  store: Store<AnswerState<Answered, Problem, Changes>>,
  timing: Timing = USUAL_TIMING,
): Answerer {
  let newest = '';
  let isBusy = false;
  let settling: ReturnType<typeof setTimeout> | undefined;
  let resting: ReturnType<typeof setTimeout> | undefined;
  let sayRunning: ReturnType<typeof setTimeout> | undefined;

  const ask = (siteText: string): void => {
    if (siteText === newest) return;
    newest = siteText;
    stopChanges();
    store.update((state) => ({
      ...state,
      phase: state.phase === 'slow' ? 'slow' : 'running',
      areChangesRunning: false,
    }));
    sayRunning ??= setTimeout(() => {
      store.update((state) => (state.phase === 'running' ? { ...state, phase: 'slow' } : state));
    }, timing.sayRunning);
    clearTimeout(settling);
    settling = setTimeout(run, timing.settle);
  };

  const stopChanges = (): void => {
    clearTimeout(resting);
    room.dropChanges();
  };

  const run = async (): Promise<void> => {
    if (isBusy) return;
    isBusy = true;
    let asked = newest;
    let outcome = await answerOrFailure(asked);
    // Newer input came while this one was computed: nobody waits for this answer any more.
    while (asked !== newest) {
      asked = newest;
      outcome = await answerOrFailure(asked);
    }
    isBusy = false;
    clearTimeout(sayRunning);
    sayRunning = undefined;
    publish(asked, outcome);
    if (outcome.kind !== 'done' || !outcome.value.ok) return;
    resting = setTimeout(() => void findChanges(asked), timing.beforeChanges);
  };

  const answerOrFailure = async (siteText: string): Promise<Finished<Answered, Problem>> => {
    try {
      return { kind: 'done', value: await room.answer(siteText) };
    } catch (error) {
      return { kind: 'failed', message: error instanceof Error ? error.message : String(error) };
    }
  };

  const publish = (siteText: string, outcome: Finished<Answered, Problem>): void => {
    store.update(({ failure: _failure, ...state }) => {
      if (outcome.kind === 'failed') {
        return { ...state, phase: 'failed', failure: outcome.message, problems: [] };
      }
      if (!outcome.value.ok)
        return { ...state, phase: 'refused', problems: outcome.value.problems };
      return {
        ...state,
        phase: 'answered',
        shown: { value: outcome.value.value, siteText },
        areChangesRunning: true,
        problems: [],
      };
    });
  };

  const findChanges = async (siteText: string): Promise<void> => {
    try {
      const changes = await room.changes(siteText);
      if (siteText !== newest) return;
      store.update((state) => ({ ...state, changes, areChangesRunning: false }));
    } catch (error) {
      if (siteText !== newest) return;
      const failure = error instanceof Error ? error.message : String(error);
      store.update((state) => ({ ...state, areChangesRunning: false, failure }));
    }
  };

  const forget = (): void => {
    stopChanges();
    newest = '';
    store.update(() => NO_ANSWER_YET);
  };

  return { ask, forget };
}

type Finished<Answered, Problem> =
  | { readonly kind: 'done'; readonly value: Outcome<Answered, Problem> }
  | { readonly kind: 'failed'; readonly message: string };
