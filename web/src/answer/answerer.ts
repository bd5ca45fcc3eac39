/**
 * Asks for answers as a person types, and lets the newest input win.
 *
 * A question goes out with the key itself, and while one is computed only the newest input waits for its turn. The early
 * answer (verdict, flows, start-up) is shown at once, then the whole one with its pressures, and only then it asks what
 * would change the verdict. An answer to an older input is thrown away. It knows nothing of workers or screens, so it is
 * tested with plain functions.
 */
import type { Store } from '../state/store.ts';

/** Who computes: in the app two workers, in tests whatever the test gives. */
export interface EngineRoom<Answered, Problem, Changes> {
  /** `whole`: nothing may be lacking; otherwise the early answer comes as soon as it can. */
  readonly answer: (
    siteText: string,
    depth: 'early' | 'whole',
  ) => Promise<Outcome<Answered, Problem>>;
  /** The early answer with what it lacks. */
  readonly complete: (siteText: string, early: Answered) => Promise<Answered>;
  /** Undefined when the search was left off. */
  readonly changes: (siteText: string) => Promise<Changes | undefined>;
  /** Stops a search for changes that nobody waits for any more. */
  readonly dropChanges: () => void;
}

export type Outcome<Answered, Problem> =
  | {
      readonly ok: true;
      readonly value: Answered;
      /** Something is still to be worked out; `complete` does it. */
      readonly isEarly?: boolean;
    }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export interface AnswerState<Answered, Problem, Changes> {
  /**
   * `slow`: it has been running long enough to say so. `early`: the newest input has its early answer. `failed`: the
   * computation itself broke.
   */
  readonly phase: 'waiting' | 'running' | 'slow' | 'early' | 'answered' | 'refused' | 'failed';
  /** The last whole answer that was good, and the text it belongs to; kept while newer input is wrong or running. */
  readonly shown?: { readonly value: Answered; readonly siteText: string };
  /** An answer to newer input than `shown`, without what takes longer; only where a whole one stands already. */
  readonly early?: Answered;
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
  /** After this long the screen says that it is running, in milliseconds. LOOK: 0.4 s. */
  readonly sayRunning: number;
  /** Rest after an answer before the search for changes: the next key would only end it again. */
  readonly beforeChanges: number;
}

/** Judgement: 250 ms is the pause between two words. */
export const USUAL_TIMING: Timing = { sayRunning: 400, beforeChanges: 250 };

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
    void run();
  };

  const stopChanges = (): void => {
    clearTimeout(resting);
    room.dropChanges();
  };

  const run = async (): Promise<void> => {
    if (isBusy) return;
    isBusy = true;
    let asked: string;
    do {
      asked = newest;
      await answerTo(asked);
    } while (asked !== newest);
    isBusy = false;
  };

  /** Leaves off as soon as newer input has come: nobody waits for this answer any more. */
  const answerTo = async (asked: string): Promise<void> => {
    // The first answer of a place comes whole: the page would jump under the reader's eyes.
    const depth = store.get().shown === undefined ? 'whole' : 'early';
    const outcome = await finished(room.answer(asked, depth));
    if (asked !== newest) return;
    if (outcome.kind === 'done' && outcome.value.ok && outcome.value.isEarly === true) {
      publishEarly(outcome.value.value);
      // Newer input need not wait for the rest of this answer.
      void completed(asked, outcome.value.value);
    } else settle(asked, outcome);
  };

  const completed = async (asked: string, early: Answered): Promise<void> => {
    const whole = room.complete(asked, early).then((value) => ({ ok: true as const, value }));
    const outcome = await finished(whole);
    if (asked === newest) settle(asked, outcome);
  };

  const settle = (asked: string, outcome: Finished<Answered, Problem>): void => {
    stopSaying();
    publish(asked, outcome);
    if (outcome.kind !== 'done' || !outcome.value.ok) return;
    resting = setTimeout(() => void findChanges(asked), timing.beforeChanges);
  };

  const stopSaying = (): void => {
    clearTimeout(sayRunning);
    sayRunning = undefined;
  };

  const finished = async (
    answering: Promise<Outcome<Answered, Problem>>,
  ): Promise<Finished<Answered, Problem>> => {
    try {
      return { kind: 'done', value: await answering };
    } catch (error) {
      return { kind: 'failed', message: error instanceof Error ? error.message : String(error) };
    }
  };

  const publishEarly = (early: Answered): void => {
    stopSaying();
    store.update(({ failure: _failure, ...state }) => ({
      ...state,
      phase: 'early',
      early,
      problems: [],
    }));
  };

  const publish = (siteText: string, outcome: Finished<Answered, Problem>): void => {
    store.update(({ failure: _failure, early: _early, ...state }) => {
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
      if (siteText !== newest || changes === undefined) return;
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
