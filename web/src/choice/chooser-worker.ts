/** The worker in which a search goes on: it hands out what is to be run, takes results, and puts the finished choice into words. */
import type { Choice, ChoiceReply } from '@fallwright/engine';
import { choose } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import { expose } from 'comlink';
import type { ChoiceAsked, ReadChoice } from './choice-request.ts';
import { readChoice } from './choice-request.ts';
import type { ChoiceView, ProposalView, WhyNotPage } from './choice-view.ts';
import { choiceView, proposalView, whyNotFinder } from './chosen.ts';
import type { SearchStep } from './search.ts';

interface Made {
  readonly about: ReadChoice;
  readonly asked: ChoiceAsked;
  readonly choice: Choice;
  readonly find: ReturnType<typeof whyNotFinder>;
}

let search:
  | {
      readonly about: ReadChoice;
      readonly asked: ChoiceAsked;
      readonly steps: ReturnType<typeof choose>;
    }
  | undefined;
/** Counted, so that the page tells one finished choice from the next. */
let count = 0;
let made: Made | undefined;

/** A step in a box: comlink’s types take a bare union apart. */
interface Stepped {
  readonly step: SearchStep<number>;
}

function take(step: IteratorResult<SearchBatch, Choice>): Stepped {
  if (step.done !== true) {
    const { tasks, progress } = step.value;
    return { step: { kind: 'work', tasks, progress } };
  }
  if (search === undefined) throw new Error('a search must be begun first');
  const { about, asked } = search;
  const choice = step.value;
  made = { about, asked, choice, find: whyNotFinder(about, choice) };
  search = undefined;
  count += 1;
  return { step: { kind: 'over', proposal: count } };
}

type SearchBatch =
  ReturnType<typeof choose> extends Generator<infer Batch, unknown, unknown> ? Batch : never;

function madeNow(): Made {
  if (made === undefined) throw new Error('nothing has been chosen yet');
  return made;
}

const work = {
  begin(asked: ChoiceAsked): Stepped {
    const read = readChoice(asked);
    if (!read.ok) return { step: { kind: 'refused', reasons: read.reasons } };
    const steps = choose(read.value.request, { judges: asked.wish.judges });
    search = { about: read.value, asked, steps };
    return take(steps.next());
  },

  next(reply: ChoiceReply): Stepped {
    if (search === undefined) throw new Error('a search must be begun first');
    return take(search.steps.next(reply));
  },

  look(system: System): ChoiceView {
    const { about, asked, choice } = madeNow();
    return choiceView(about, choice, {
      system,
      hasPrices: asked.prices !== undefined,
      hasRange: asked.range !== undefined,
    });
  },

  proposal(key: string, system: System): ProposalView {
    const { about, choice } = madeNow();
    return proposalView(about, choice, key, system);
  },

  whyNot(
    sought: string,
    view: { readonly from: number; readonly count: number; readonly system: System },
  ): WhyNotPage {
    return madeNow().find(sought, view);
  },
};

export type ChooserWork = typeof work;

expose(work);
