/** One test: its readings, told at once what cannot be in them, and measured against predicted beside them. */
import { benchCautions, findings } from '@fallwright/papers';
import { useEffect, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { UndoButtons } from '../screens/undo-buttons.tsx';
import { textOf } from '../state/entry.ts';
import { putDocument, putValue } from '../state/place.ts';
import { answerTo, askedOf } from './against.ts';
import { AgainstPanel } from './against-panel.tsx';
import { useBenchRoom } from './bench-room.ts';
import { ReadingCard } from './reading-card.tsx';
import { RigPanel } from './rig-panel.tsx';
import { readingsIn, titleOfTest, withNewReading } from './test-document.ts';
import { saveTest } from './test-files.tsx';
import type { ReadTest } from './test-reading.ts';

export function TestPage({ read }: { readonly read: ReadTest }) {
  const { place } = useNotebook();
  const { answers } = useBenchRoom();
  const document = useStore(place, (state) => state.document);
  const known = useStore(answers.outcomes, (outcomes) => outcomes);
  const count = readingsIn(document).length;
  // The last reading is the one at the bench now.
  const [open, setOpen] = useState(count - 1);
  useEffect(() => answers.want(askedOf(read.readings)), [answers, read]);
  const isRigWhole = !read.problems.some(({ field }) => /^(rig|ram)\b/.test(field));

  const add = (): void => {
    place.update((state) =>
      putDocument(state, {
        path: ['readings', count],
        called: `adding reading ${count + 1}`,
        document: withNewReading(state.document),
      }),
    );
    setOpen(count);
  };

  return (
    <>
      <Title />
      <DemoSlip />
      <div className="bench">
        <div className="bench-readings">
          <RigPanel isWhole={isRigWhole} />
          <section aria-labelledby="readings-title">
            <h2 id="readings-title">Readings</h2>
            {read.readings.map((reading, index) => (
              <ReadingCard
                // A reading is known by its place in the list: that is what its path in the file says too.
                // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is the identity
                key={index}
                index={index}
                reading={reading}
                answer={answerTo(reading, known)}
                isOpen={index === open}
                onToggle={(is) => setOpen((now) => (is ? index : now === index ? -1 : now))}
                onTakenOut={() => setOpen(-1)}
              />
            ))}
            <button type="button" className="button main add-reading" onClick={add}>
              Add a reading at another setting
            </button>
          </section>
        </div>
        <div className="bench-against">
          <AgainstPanel read={read} />
          <Findings read={read} />
        </div>
      </div>
      <section className="notes bench-notes" aria-label="Cautions">
        <div className="cautions">
          <h2>Cautions</h2>
          <ul>
            {benchCautions().map((words) => (
              <li key={words}>{words}</li>
            ))}
          </ul>
        </div>
      </section>
    </>
  );
}

function Title() {
  const { place } = useNotebook();
  const document = useStore(place, (state) => state.document);
  const [refused, setRefused] = useState<readonly string[]>([]);
  const [isSaved, setSaved] = useState(false);
  const save = async (): Promise<void> => {
    const reasons = await saveTest(place.get().document);
    setRefused(reasons);
    setSaved(reasons.length === 0);
  };
  return (
    <div className="place-title">
      <div className="grow">
        <h1>
          <input
            type="text"
            aria-label="Name of this test"
            placeholder={titleOfTest(document)}
            autoComplete="off"
            spellCheck={false}
            value={textOf(document.name)}
            onChange={(event) => {
              const written = event.target.value;
              place.update((state) =>
                putValue(state, {
                  path: ['name'],
                  value: written === '' ? undefined : written,
                  called: 'the name',
                }),
              );
            }}
          />
        </h1>
      </div>
      <div className="row buttons">
        <button
          type="button"
          className="button"
          onClick={() => {
            save().catch((error: unknown) =>
              setRefused([error instanceof Error ? error.message : String(error)]),
            );
          }}
        >
          Save as a file
        </button>
        <UndoButtons />
      </div>
      <div className="file-news" role="status">
        {isSaved && <p className="note">Saved as a file.</p>}
        {refused.length > 0 && (
          <div className="slip danger">
            <p>
              <strong>The test is not whole yet, so no file was made.</strong>
            </p>
            <ul>
              {refused.map((reason) => (
                <li key={reason}>{reason}</li>
              ))}
            </ul>
          </div>
        )}
      </div>
    </div>
  );
}

function DemoSlip() {
  const { place } = useNotebook();
  const isDemo = useStore(place, (state) => state.isDemo);
  if (!isDemo) return null;
  return (
    <div className="slip slip-row no-print">
      <span className="tag">Demo</span>
      <p>An invented test. It goes when the demo workshop is removed.</p>
    </div>
  );
}

/** What differs from the prediction, in plain words, and where to look. */
function Findings({ read }: { readonly read: ReadTest }) {
  const { settings } = useNotebook();
  const { answers } = useBenchRoom();
  const system = useStore(settings, (state) => state.system);
  const known = useStore(answers.outcomes, (outcomes) => outcomes);
  const good = read.readings.filter((reading) => reading.ok);
  const answered = good.flatMap((reading) => answerTo(reading, known) ?? []);
  const failed = good.flatMap((reading) => {
    const outcome = known.get(reading.asked);
    return outcome?.kind === 'failed' ? [outcome.why] : [];
  });
  if (good.length === 0) return null;
  return (
    <section className="findings" aria-labelledby="findings-title" aria-live="polite">
      <h2 id="findings-title">What it shows</h2>
      <ul>
        {findings(answered, system).map((words) => (
          <li key={words}>{words}</li>
        ))}
        {answered.length + failed.length < good.length && (
          <li className="note">The simulation is running.</li>
        )}
        {failed.map((why, index) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: one line for each reading that failed
          <li key={index} className="fault">
            A prediction could not be worked out: {why}. Change something, or load the page again.
          </li>
        ))}
      </ul>
    </section>
  );
}
