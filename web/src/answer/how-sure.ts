/** How sure the answer is: asked for once everything else about the newest input is known, and left off at the next key. */
import type { System } from '@fallwright/units';
import type { Store } from '../state/store.ts';
import { createStore } from '../state/store.ts';
import type { SiteAnswerState } from './site-answer.ts';

/** The band of what reaches the tank, in SI, and the whole in words. */
export interface HowSure {
  /** One try in ten gives less than `low`, one in ten more than `high`. */
  readonly low: number;
  readonly high: number;
  readonly words: Readonly<Record<System, readonly string[]>>;
}

export interface HowSureState {
  /** The input that it belongs to. */
  readonly siteText: string;
  readonly value: HowSure;
}

export interface SureRoom {
  /** Undefined when it was left off. */
  readonly howSure: (siteText: string) => Promise<HowSure | undefined>;
}

export function createHowSure(
  answer: Store<SiteAnswerState>,
  room: SureRoom,
): Store<HowSureState | undefined> {
  const store = createStore<HowSureState | undefined>(undefined);
  let asked = '';
  answer.subscribe(() => {
    const { phase, shown, changes, areChangesRunning } = answer.get();
    if (shown === undefined) {
      // Another place: nothing of the one before may stand beside its answer.
      asked = '';
      store.update(() => undefined);
      return;
    }
    const { siteText } = shown;
    if (phase !== 'answered' || areChangesRunning || changes === undefined) {
      // A key came before it was told: it is asked for anew when the answers rest.
      if (store.get()?.siteText !== asked) asked = '';
      return;
    }
    if (asked === siteText) return;
    asked = siteText;
    room
      .howSure(siteText)
      .then((value) => {
        if (value === undefined || answer.get().shown?.siteText !== siteText) return;
        store.update(() => ({ siteText, value }));
      })
      // The answer stands without it; what broke the workers is told where answers are.
      .catch(() => {});
  });
  return store;
}
