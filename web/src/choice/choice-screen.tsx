/** What to build here: a wish, what it is made from, and a proposal with the reason why everything else was left out. */
import './choice.css';
import { useEffect, useMemo } from 'react';
import { Link } from 'wouter';
import type { Notebook } from '../app/notebook.ts';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { createStore } from '../state/store.ts';
import type { WorkshopState } from '../state/workshop.ts';
import type { ChoiceAsked } from './choice-request.ts';
import { openChoiceRoom } from './choice-room.ts';
import type { KeptChoice } from './kept-choice.ts';
import { ProposalLeaf } from './proposal-leaf.tsx';
import type { SearchState } from './search.ts';
import { createSearch, NOT_ASKED } from './search.ts';
import { SearchProgress } from './search-progress.tsx';
import type { WishForm } from './wish-form.ts';
import { readWish, USUAL_WISH } from './wish-form.ts';
import { WishPanel } from './wish-panel.tsx';

export function ChoiceScreen() {
  const notebook = useNotebook();
  const kept = useStore(notebook.choice, (state) => state);
  const opening = useStore(notebook.place, (state) => state.opening);
  useEffect(() => {
    notebook.choice.update((state) => {
      if (state?.opening === opening) return state;
      state?.room.close();
      return newChoice(opening, state?.form);
    });
  }, [notebook.choice, opening]);
  return (
    <section className="choice" aria-labelledby="choice-title">
      <h2 id="choice-title">What to build here</h2>
      {kept !== undefined && kept.opening === opening && <Choosing kept={kept} />}
    </section>
  );
}

/** A wish is kept from place to place, but not what was needed at another one. */
function newChoice(opening: number, form: WishForm = USUAL_WISH): KeptChoice {
  const room = openChoiceRoom();
  const state = createStore<SearchState<number>>(NOT_ASKED);
  const search = createSearch(room, state, () => performance.now());
  return { opening, form: { ...form, need: '', lengths: '' }, room, state, search };
}

type Shared = (WorkshopState & { readonly phase: 'open' })['shared'];
const NOTHING_SHARED: Shared = {};

function Choosing({ kept }: { readonly kept: KeptChoice }) {
  const { choice, place, workshop } = useNotebook();
  const document = useStore(place, (state) => state.document);
  const shared = useStore(workshop.state, (state) =>
    state.phase === 'open' ? state.shared : NOTHING_SHARED,
  );
  const state = useStore(kept.state, (all) => all);
  const { form } = kept;
  const asked = useMemo(() => askedFrom(form, document, shared), [form, document, shared]);
  const askedText = asked === undefined ? undefined : JSON.stringify(asked);
  const begin = (): void => {
    if (asked === undefined || askedText === undefined) return;
    choice.update((now) => {
      if (now === undefined) return now;
      const { chosenKey: _before, ...others } = now;
      return { ...others, askedText };
    });
    void kept.search.ask(asked);
  };
  const isBusy = state.phase === 'running' || state.phase === 'stopping';
  return (
    <>
      <WishPanel
        form={form}
        hasRange={shared.range !== undefined}
        hasPrices={shared.prices !== undefined}
        isBusy={isBusy}
        isAgain={state.proposal !== undefined}
        onChange={(next) =>
          choice.update((now) => (now === undefined ? now : { ...now, form: next }))
        }
        onBegin={begin}
      />
      <SearchProgress state={state} onStop={kept.search.stop} onAgain={begin} />
      {state.proposal !== undefined && (
        <ProposalLeaf
          // One finished choice is not the next.
          key={state.proposal}
          kept={kept}
          isOld={isBusy || askedText !== kept.askedText}
        />
      )}
      {state.proposal === undefined && state.phase === 'idle' && <WhatItDoes />}
    </>
  );
}

/** Nothing while something of the wish cannot be read. */
function askedFrom(
  form: WishForm,
  site: ReturnType<Notebook['place']['get']>['document'],
  { range, prices }: Shared,
): ChoiceAsked | undefined {
  const read = readWish(form);
  if (!read.ok) return undefined;
  return {
    site,
    ...(form.rams === 'range' && range !== undefined ? { range: range.document } : {}),
    ...(form.prices === 'list' && prices !== undefined ? { prices: prices.document } : {}),
    wish: read.wish,
  };
}

function WhatItDoes() {
  return (
    <p className="slip">
      Every ram of the <Link href="/range">range</Link>, set up in every way, is tried on the pipes
      of the <Link href="/prices">price list</Link> along the ways of this place. What no limit
      turns away is simulated. Then you have the front of cost and water, three picks, and for
      everything else the reason why it was left out.
    </p>
  );
}
