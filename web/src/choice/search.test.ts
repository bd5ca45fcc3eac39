import type { ChoiceResult, ChoiceTask } from '@fallwright/engine';
import { choose, performTask } from '@fallwright/engine';
import { expect, test } from 'vitest';
import { rowsIn } from '../prices/price-document.ts';
import { openPlace } from '../state/place.ts';
import { createStore } from '../state/store.ts';
import { DEMO_PRICES, DEMO_RANGE } from '../workshop/demo-shared.ts';
import type { ChoiceAsked, ReadChoice } from './choice-request.ts';
import { readChoice } from './choice-request.ts';
import { choiceView, proposalView, whyNotFinder } from './chosen.ts';
import { putIntoPlace } from './put-into-place.ts';
import type { Chooser, Runner, SearchState, SearchStep } from './search.ts';
import { createSearch, NOT_ASKED } from './search.ts';
import { readWish, USUAL_WISH } from './wish-form.ts';

const PLACE = {
  fallwright: 'site@1',
  name: 'Otter Beck',
  notes: 'Surveyed by Joss.',
  source: { flow: '40 L/min ± 4 L/min' },
  fall: '2.5 m ± 0.05 m',
  drive: [{ length: '16 m' }],
  lift: '18 m',
  delivery: [{ length: '140 m' }],
  demand: '700 L/day',
};

/** Two rams, one tuning each, and a few rows of the demo's list: some dozens of combinations. */
const SMALL_RANGE = {
  ...DEMO_RANGE,
  rams: [
    { id: 'swallow-25', name: 'Swallow 25', ram: 'DN25', price: '320 GBP', setUp: '4 h' },
    { id: 'wren-20', name: 'Wren 20', ram: 'DN20', price: '210 GBP', setUp: '4 h' },
  ],
};

const PIPES = ['GI20', 'GI25', 'PE20-50', 'PE25-25', 'PE32-25'];
const SMALL_PRICES = {
  ...DEMO_PRICES,
  rows: rowsIn(DEMO_PRICES).filter(
    ({ kind, code }) =>
      (kind !== 'pipe' || PIPES.includes(String(code))) && kind !== 'vessel' && code !== 'T1000',
  ),
};

function asked(change: Partial<ChoiceAsked> = {}): ChoiceAsked {
  const read = readWish({ ...USUAL_WISH, judges: false, lengths: '16 m' });
  if (!read.ok) throw new Error('the wish should read');
  return { site: PLACE, range: SMALL_RANGE, prices: SMALL_PRICES, wish: read.wish, ...change };
}

function reading(question: ChoiceAsked): ReadChoice {
  const read = readChoice(question);
  if (!read.ok) throw new Error(read.reasons.join(' '));
  return read.value;
}

/** Everything that the page shows of it, as text. */
type Told = string;

function chooserHere(): Chooser<ChoiceAsked, Told> {
  let search: ReturnType<typeof choose> | undefined;
  let about: ReadChoice | undefined;
  const take = (step: ReturnType<ReturnType<typeof choose>['next']>): SearchStep<Told> => {
    if (step.done !== true) return { kind: 'work', ...step.value };
    const choice = step.value;
    if (about === undefined) throw new Error('begun first');
    const view = choiceView(about, choice, { system: 'metric', hasPrices: true, hasRange: true });
    const find = whyNotFinder(about, choice);
    const { runs: _counted, ...progress } = view.progress;
    return {
      kind: 'over',
      proposal: JSON.stringify({
        view: { ...view, progress },
        first: view.picks[0] && proposalView(about, choice, view.picks[0], 'metric'),
        why: find('', { from: 0, count: 5000, system: 'metric' }),
      }),
    };
  };
  return {
    begin: async (question) => {
      about = reading(question);
      search = choose(about.request, { judges: question.wish.judges });
      return take(search.next());
    },
    next: async (reply) => {
      if (search === undefined) throw new Error('begun first');
      return take(search.next(structuredClone(reply)));
    },
  };
}

/** Runners of different patience: results come in another order with every number of them. */
function runnersHere(
  count: number,
  done: (task: ChoiceTask) => void = () => {},
): Runner<ChoiceAsked>[] {
  return Array.from({ length: count }, (_, mine) => {
    let about: ReadChoice | undefined;
    return {
      prepare: async (question) => {
        about = reading(question);
      },
      perform: async (tasks) => {
        const results: ChoiceResult[] = [];
        for (const task of tasks) {
          await new Promise((resolve) => setTimeout(resolve, (mine * 7) % 5));
          if (about === undefined) throw new Error('prepared first');
          results.push(performTask(about.request.place, structuredClone(task), about.judge));
          done(task);
        }
        return results;
      },
    };
  });
}

function searchWith(runners: readonly Runner<ChoiceAsked>[]) {
  const state = createStore<SearchState<Told>>(NOT_ASKED);
  return {
    state,
    search: createSearch({ chooser: chooserHere(), runners }, state, () => performance.now()),
  };
}

test('the proposal is the same word for word whatever the number of runners', async () => {
  const told: string[] = [];
  for (const count of [1, 2, 5]) {
    const { state, search } = searchWith(runnersHere(count));
    await search.ask(asked());
    expect(state.get()).toMatchObject({ phase: 'done', reasons: [] });
    told.push(state.get().proposal ?? '');
  }
  expect(told[0]).toContain('Swallow 25');
  expect(told[1]).toBe(told[0]);
  expect(told[2]).toBe(told[0]);
}, 60_000);

test('a stop keeps what is done, and says of the others that they were not tried', async () => {
  const held: { stop?: () => void } = {};
  let done = 0;
  const { state, search } = searchWith(
    runnersHere(2, () => {
      done += 1;
      if (done === 6) held.stop?.();
    }),
  );
  held.stop = search.stop;
  await search.ask(asked());
  expect(state.get().phase).toBe('stopped');
  expect(state.get().proposal).toContain('The search was stopped before its turn.');
  expect(done).toBeLessThan(20);
}, 60_000);

test('a newer question takes the place of the one that runs', async () => {
  const { state, search } = searchWith(runnersHere(1));
  const first = search.ask(asked());
  await search.ask(asked({ site: { ...PLACE, lift: '12 m' } }));
  await first;
  expect(state.get().phase).toBe('done');
  const alone = searchWith(runnersHere(1));
  await alone.search.ask(asked({ site: { ...PLACE, lift: '12 m' } }));
  expect(state.get().proposal).toBe(alone.state.get().proposal);
}, 60_000);

test('a runner that breaks ends the search with its reason', async () => {
  const broken: Runner<ChoiceAsked> = {
    prepare: async () => {},
    perform: () => Promise.reject(new Error('out of memory')),
  };
  const { state, search } = searchWith([broken]);
  await search.ask(asked());
  expect(state.get()).toMatchObject({ phase: 'failed', reasons: ['out of memory'] });
});

test('a build goes onto the sheet in one step, and nothing else of the place is touched', async () => {
  const { state, search } = searchWith(runnersHere(2));
  await search.ask(asked());
  const { first } = JSON.parse(state.get().proposal ?? '') as {
    first: ReturnType<typeof proposalView>;
  };
  if (first.putting.kind !== 'site') throw new Error('one ram from the source was expected');
  const before = openPlace(PLACE, 'otter');
  const after = putIntoPlace(before, { fields: first.putting.fields, what: first.what });
  expect(after.past).toHaveLength(1);
  const { drive, ram, delivery, tank, ...others } = after.document;
  const { drive: _way, delivery: _line, ...kept } = PLACE;
  expect(others).toEqual(kept);
  expect(drive).toMatchObject([{ length: '16 m' }]);
  expect(delivery).toMatchObject([{ length: '140 m' }]);
  expect(JSON.stringify(ram)).toMatch(/DN2[05]/);
  expect(tank).toMatchObject({ volume: expect.stringMatching(/^\d+ L$/) });
  // What stands on the sheet then is whole: it can be answered.
  expect(readChoice(asked({ site: after.document })).ok).toBe(true);
}, 60_000);

test('a combination is found by any words of it or of its reason', () => {
  const about = reading(asked());
  const search = choose(about.request, { judges: false, quotes: false });
  let step = search.next();
  while (step.done !== true) {
    step = search.next({
      results: step.value.tasks.map((task) => performTask(about.request.place, task, about.judge)),
    });
  }
  const find = whyNotFinder(about, step.value);
  const all = find('', { from: 0, count: 3, system: 'metric' });
  expect(all.found).toBe(step.value.progress.combinations);
  expect(all.rows).toHaveLength(3);
  const some = find('wren galvanised', { from: 0, count: 1000, system: 'metric' });
  expect(some.found).toBeGreaterThan(0);
  expect(some.found).toBeLessThan(all.found);
  for (const { what, why } of some.rows) {
    expect(`${what} ${why}`.toLowerCase()).toMatch(/wren/);
    expect(`${what} ${why}`.toLowerCase()).toMatch(/galvanised/);
  }
  expect(find('no such ram', { from: 0, count: 5, system: 'metric' })).toMatchObject({ found: 0 });
}, 60_000);

test('what cannot be read is told before anything is run', () => {
  const lacking = readChoice(asked({ site: { fallwright: 'site@1', fall: '2 m' } }));
  expect(lacking.ok).toBe(false);
  const otherMoney = readChoice(asked({ prices: { ...SMALL_PRICES, currency: 'EUR' } }));
  expect(otherMoney).toMatchObject({ ok: false, reasons: [expect.stringContaining('EUR')] });
});

test('a ram or a row that cannot be read is left out and named', () => {
  const about = reading(
    asked({
      range: { ...SMALL_RANGE, rams: [...SMALL_RANGE.rams, { id: 'half', name: 'Half a ram' }] },
    }),
  );
  expect(about.leftOut).toEqual(['Half a ram']);
  expect(about.request.offers.rams.map(({ name }) => name)).toEqual(['Swallow 25', 'Wren 20']);
});

test('a wish is read as typed, with every fault at its own box', () => {
  expect(readWish({ ...USUAL_WISH, need: '900', lengths: '12 m; 1,5' })).toMatchObject({
    ok: false,
    faults: { need: expect.stringContaining('900 what'), lengths: expect.stringContaining('12 m') },
  });
  expect(readWish({ ...USUAL_WISH, lengths: '15 m, 12 m, 15 m' })).toMatchObject({
    ok: true,
    wish: { driveLengths: [12, 15] },
  });
});
