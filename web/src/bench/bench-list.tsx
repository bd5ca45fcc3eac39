/** All bench tests: each with its ram, its rig and what came of it, and one ram over all its tests. */
import { againstInWords, ramPicture } from '@fallwright/papers';
import { formatQuantity } from '@fallwright/units';
import { useEffect, useMemo, useState } from 'react';
import { Link, useLocation } from 'wouter';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { useWidth } from '../beat/use-width.ts';
import { Drawn } from '../drawn/drawn.tsx';
import { today } from '../measure/dimension-field.tsx';
import { isRetired, ramsIn } from '../range/range-document.ts';
import { SIZES } from '../range/sizes.ts';
import { NotebookHead } from '../screens/notebook-head.tsx';
import { WorkshopTabs } from '../shared/workshop-tabs.tsx';
import { textOf } from '../state/entry.ts';
import type { Plain } from '../state/site-document.ts';
import type { SiteRecord } from '../state/site-record.ts';
import { listed } from '../state/workshop.ts';
import { DeletedRecords } from '../workshop/deleted-records.tsx';
import { type Acts, useAct, WorkshopNews } from '../workshop/workshop-acts.tsx';
import { answerTo, askedOf, pointOf, signedPerCent, worstDelivery } from './against.ts';
import { useBenchRoom } from './bench-room.ts';
import { newTest, ramOfTest, rigInWords, titleOfTest } from './test-document.ts';
import { TestFiles } from './test-files.tsx';
import type { ReadTest } from './test-reading.ts';
import { readTestOnPage } from './test-reading.ts';

const NONE: readonly never[] = [];

export function BenchList() {
  const { workshop } = useNotebook();
  const state = useStore(workshop.state, (now) => now);
  const acts = useAct();
  const tests = state.phase === 'open' ? state.tests : NONE;
  return (
    <>
      <NotebookHead />
      <main className="page">
        <WorkshopTabs leaf="bench" />
        <div className="place-title">
          <h1 className="grow">Bench</h1>
          <TestFiles acts={acts}>
            <NewTest tests={tests} />
          </TestFiles>
        </div>
        <WorkshopNews acts={acts} />
        {state.phase === 'failed' && (
          <div className="slip danger" role="alert">
            <p>
              <strong>The tests could not be read: {state.why}.</strong> Load the page again.
            </p>
          </div>
        )}
        {state.phase === 'open' && <Tests tests={tests} acts={acts} />}
      </main>
      <footer className="notebook-foot">
        A prediction beside a measurement proves neither. Local codes and licensed practice come
        first. Tests are kept in this browser and travel in the file of the whole workshop. The demo
        workshop is invented.
      </footer>
    </>
  );
}

/** A test begins with its ram: one of the range, or a typical one. The rig is that of the last test. */
function NewTest({ tests }: { readonly tests: readonly SiteRecord[] }) {
  const { workshop } = useNotebook();
  const [, goTo] = useLocation();
  const rams = useStore(workshop.state, (state) =>
    state.phase === 'open' && state.shared.range !== undefined
      ? ramsIn(state.shared.range.document)
      : NONE,
  );
  const made = rams.filter((ram) => !isRetired(ram));
  const [last] = listed(tests, '');
  const [chosen, setChosen] = useState('');
  const [trouble, setTrouble] = useState('');
  const [first] = made;
  const ram = chosen || (first === undefined ? 'DN25' : `range ${textOf(first.id)}`);

  const begin = async (): Promise<void> => {
    const id = ram.startsWith('range ') ? ram.slice('range '.length) : undefined;
    const entry = id === undefined ? ram : await ofRange(id);
    if (entry === undefined) {
      setTrouble(
        'This ram of the range is not whole yet, so it cannot be tested against anything.',
      );
      return;
    }
    const document = newTest(last?.document, { ram: entry, date: today() });
    goTo(`/bench/${await workshop.beginTest(document, 'begun')}`);
  };

  const ofRange = async (id: string): Promise<Plain | undefined> => {
    const { entryFor, offeredRams, readableRange } = await import('../range/ram-of-place.ts');
    const range = readableRange(rams);
    const offered = range && offeredRams(range).find((one) => one.id === id);
    const [tuning] = offered?.tunings ?? [];
    return range === undefined || tuning === undefined ? undefined : entryFor(range, id, tuning);
  };

  return (
    <>
      <div className="new-test">
        <label>
          <span className="for-ears">Ram of the new test</span>
          <select value={ram} onChange={(event) => setChosen(event.target.value)}>
            {made.map((one) => (
              <option key={textOf(one.id)} value={`range ${textOf(one.id)}`}>
                {textOf(one.name) || textOf(one.id)}
              </option>
            ))}
            {SIZES.map((size) => (
              <option key={size.value} value={size.value}>
                typical {size.label}
              </option>
            ))}
          </select>
        </label>
        <button
          type="button"
          className="button main"
          onClick={() => {
            begin().catch((error: unknown) =>
              setTrouble(error instanceof Error ? error.message : String(error)),
            );
          }}
        >
          Begin a test
        </button>
      </div>
      {trouble !== '' && (
        <p className="fault" role="alert">
          {trouble}
        </p>
      )}
    </>
  );
}

interface ShownTest {
  readonly test: SiteRecord;
  readonly number: number;
  readonly read: ReadTest;
}

/** Read anew only when the document is another one. */
function useRead(tests: readonly SiteRecord[]): readonly ShownTest[] {
  return useMemo(() => {
    const shown = listed(tests, '');
    // Numbered as they were made, so that a picture names the same test by the same number as the list.
    const byDay = [...shown].sort(
      (a, b) =>
        textOf(a.document.date).localeCompare(textOf(b.document.date)) || a.savedAt - b.savedAt,
    );
    return [...byDay].reverse().map((test) => ({
      test,
      number: byDay.indexOf(test) + 1,
      read: readTestOnPage(test.document),
    }));
  }, [tests]);
}

function Tests({ tests, acts }: { readonly tests: readonly SiteRecord[]; readonly acts: Acts }) {
  const { answers } = useBenchRoom();
  const shown = useRead(tests);
  useEffect(() => {
    answers.want(shown.flatMap(({ read }) => askedOf(read.readings)));
  }, [answers, shown]);
  const deleted = tests.filter(({ deletedAt }) => deletedAt !== undefined);
  return (
    <>
      {shown.length === 0 ? (
        <p className="slip">
          No test yet. Choose the ram that stands on the bench and begin: its fall and pipes are
          asked once, then at each setting the beats, what is delivered and what is wasted.
        </p>
      ) : (
        <div className="bench-list">
          <section aria-labelledby="tests-title" className="tests">
            <h2 id="tests-title">Tests</h2>
            <ol>
              {shown.map((one) => (
                <TestRow key={one.test.id} {...one} acts={acts} />
              ))}
            </ol>
          </section>
          <RamOverTests shown={shown} />
        </div>
      )}
      <DeletedRecords
        deleted={deleted}
        what="test"
        titleOf={({ document }) => titleOfTest(document)}
        acts={acts}
      />
    </>
  );
}

function TestRow({ test, number, read, acts }: ShownTest & { readonly acts: Acts }) {
  const { workshop, settings } = useNotebook();
  const { answers } = useBenchRoom();
  const system = useStore(settings, (state) => state.system);
  const known = useStore(answers.outcomes, (outcomes) => outcomes);
  const { document } = test;
  const title = titleOfTest(document);
  const { name: ram } = ramOfTest(document);
  const serial = textOf(document.serial);
  const about = [
    `${ram}${serial === '' ? '' : `, number ${serial}`}`,
    textOf(document.date),
    textOf(document.by),
  ].filter((part) => part !== '');
  const good = read.readings.flatMap((one) => (one.ok ? [one] : []));
  const delivered = good.flatMap(({ setting }) =>
    setting.reading.deliveryFlow === undefined ? [] : [setting.reading.deliveryFlow.value],
  );
  const rankine = good.flatMap(({ efficiencies }) =>
    efficiencies === undefined ? [] : [efficiencies.rankine.value],
  );
  const answered = good.flatMap((one) => answerTo(one, known) ?? []);
  const worst = worstDelivery(answered);
  const flow = (value: number): string => formatQuantity(value, 'sourceFlow', system);
  return (
    <li>
      <span className="test-number" aria-hidden="true">
        {number}
      </span>
      <div className="who">
        <h3>
          <Link href={`/bench/${test.id}`}>{title}</Link>
          {test.isDemo && <span className="tag">Demo</span>}
        </h3>
        <p>{about.join(', ')}</p>
        <p className="note">{rigInWords(document)}</p>
      </div>
      <dl>
        <div>
          <dt>Readings</dt>
          <dd>{read.readings.length}</dd>
        </div>
        <div>
          <dt>Delivered</dt>
          <dd>{delivered.length === 0 ? '–' : fromTo(delivered, flow)}</dd>
        </div>
        <div>
          <dt>Efficiency</dt>
          <dd>{rankine.length === 0 ? '–' : fromTo(rankine, (value) => value.toFixed(2))}</dd>
        </div>
        <div>
          <dt>Off at most</dt>
          <dd className={worst?.agrees === false ? 'is-off' : undefined}>
            {worst === undefined ? '–' : signedPerCent(worst.share)}
          </dd>
        </div>
      </dl>
      <div className="row acts">
        <button
          type="button"
          className="button plain"
          onClick={() => acts.act(workshop.takeOut([test.id]), `${title} was deleted.`, [test.id])}
        >
          Delete<span className="for-ears"> {title}</span>
        </button>
      </div>
    </li>
  );
}

/** `0.37 to 1.53 L/min`: the unit once. */
function fromTo(values: readonly number[], words: (value: number) => string): string {
  const [least, most] = [words(Math.min(...values)), words(Math.max(...values))];
  if (least === most) return least;
  const [figure = least] = least.split('\u00a0');
  return `${figure} to ${most}`;
}

/** One ram over all its tests, whatever they were run on. */
function RamOverTests({ shown }: { readonly shown: readonly ShownTest[] }) {
  const { settings } = useNotebook();
  const { answers } = useBenchRoom();
  const system = useStore(settings, (state) => state.system);
  const known = useStore(answers.outcomes, (outcomes) => outcomes);
  const { ref, width } = useWidth<HTMLDivElement>();
  const rams = [
    ...new Map(
      shown.map(({ test }) => {
        const { key, name } = ramOfTest(test.document);
        return [key, name] as const;
      }),
    ),
  ];
  const [chosen, setChosen] = useState('');
  const key = rams.some(([one]) => one === chosen) ? chosen : (rams[0]?.[0] ?? '');
  const points = shown
    .filter(({ test }) => ramOfTest(test.document).key === key)
    .flatMap(({ number, read }) =>
      read.readings.flatMap((reading, index) => {
        const label = read.readings.length > 1 ? `${number}.${index + 1}` : `${number}`;
        return pointOf(reading, known, label) ?? [];
      }),
    );
  const compared = points.filter(({ predicted }) => predicted !== undefined);
  const name = rams.find(([one]) => one === key)?.[1] ?? '';
  return (
    <section className="against" aria-labelledby="over-tests-title">
      <div className="against-head">
        <h2 id="over-tests-title">One ram over its tests</h2>
        {rams.length > 1 && (
          <label>
            <span className="for-ears">Ram</span>
            <select value={key} onChange={(event) => setChosen(event.target.value)}>
              {rams.map(([one, called]) => (
                <option key={one} value={one}>
                  {called}
                </option>
              ))}
            </select>
          </label>
        )}
      </div>
      <p className="note">
        {name}: delivered, each reading beside what the simulation gives for its own rig and
        setting. Test and reading stand beside the mark.
      </p>
      <div ref={ref}>
        {width > 0 && compared.length > 0 && (
          <Drawn
            drawing={ramPicture(compared, { width, system })}
            name={againstInWords(compared, system)}
          />
        )}
      </div>
      {compared.length === 0 && (
        <p className="note" aria-live="polite">
          {points.length === 0
            ? 'No delivered flow was read yet.'
            : 'The simulation of these readings is running.'}
        </p>
      )}
    </section>
  );
}
