/** Beats counted at the bench: tapped in time, listened to, or found in a recording or a pressure log. */
import type { Rhythm } from '@fallwright/engine';
import { tappedBeats } from '@fallwright/engine';
import { useEffect, useRef, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Choice } from '../fields/choice.tsx';
import { FileChooser } from '../fields/file-chooser.tsx';
import { putDocument } from '../state/place.ts';
import type { HearRoom, Listening } from './hear-room.ts';
import { openHearRoom } from './hear-room.ts';
import type { Counted } from './hear-worker.ts';
import { HeardStrip } from './heard-strip.tsx';
import type { HeardView } from './heard-view.ts';
import { PutSaid } from './put-said.tsx';
import { rateEntry } from './rate-entry.ts';
import { TapPad } from './tap-pad.tsx';
import { type FilesOf, readingPath, withCounted } from './test-document.ts';

const MODES = [
  { value: 'tap', label: 'Tap' },
  { value: 'listen', label: 'Listen' },
  { value: 'recording', label: 'Recording' },
] as const;
type Mode = (typeof MODES)[number]['value'];

/** Judgement: a picture that moves once a second shows that it hears, and counting a long row anew each time keeps up. */
const HEARD_EACH = 1000;

interface CountedFile {
  readonly of: FilesOf;
  readonly name: string;
}

export function CountPanel({
  index,
  onClose,
}: {
  readonly index: number;
  readonly onClose: () => void;
}) {
  const { place } = useNotebook();
  const [mode, setMode] = useState<Mode>('tap');
  const [said, setSaid] = useState('');
  const [hear] = useState(openHearRoom);
  useEffect(() => hear.close, [hear]);
  const put = (rhythm: Rhythm, file?: CountedFile): void => {
    const rate = rateEntry(rhythm);
    place.update((state) =>
      putDocument(state, {
        path: readingPath(index, 'beats'),
        called: `beats counted at reading ${index + 1}`,
        document: withCounted(state.document, index, { rate, file }),
      }),
    );
    setSaid(`${rate} stands with the beats of reading ${index + 1} now.`);
  };
  return (
    <section className="count-panel" aria-label="Count beats">
      <Choice
        legend="How to count"
        className="modes"
        options={MODES}
        value={mode}
        onChoose={(next) => {
          setMode(next);
          setSaid('');
        }}
      />
      {mode === 'tap' && <Tapping put={put} said={said} />}
      {mode === 'listen' && <ListenPart hear={hear} put={put} said={said} />}
      {mode === 'recording' && (
        <FilePart hear={hear} put={put} said={said} onOpen={() => setSaid('')} />
      )}
      <button type="button" className="button plain" onClick={onClose}>
        Fold the counting away
      </button>
    </section>
  );
}

type Put = (rhythm: Rhythm, file?: CountedFile) => void;

interface Counting {
  readonly put: Put;
  /** What was put into the reading, told beside the button that did it. */
  readonly said: string;
}

function Tapping({ put, said }: Counting) {
  const [taps, setTaps] = useState<readonly number[]>([]);
  const { beats, rhythm } = tappedBeats(taps);
  return (
    <>
      <TapPad beats={beats} rhythm={rhythm} onTap={(time) => setTaps((all) => [...all, time])} />
      <div className="row count-acts">
        <button
          type="button"
          className="button main"
          aria-disabled={rhythm === undefined}
          onClick={() => rhythm !== undefined && put(rhythm)}
        >
          Put into the reading
        </button>
        <button type="button" className="button" onClick={() => setTaps([])}>
          Begin again
        </button>
      </div>
      <PutSaid words={said} />
    </>
  );
}

function ListenPart({ hear, put, said }: Counting & { readonly hear: HearRoom }) {
  const [listening, setListening] = useState<Listening>();
  const [isAsking, setAsking] = useState(false);
  const [view, setView] = useState<HeardView>();
  const [trouble, setTrouble] = useState('');
  useEffect(() => {
    if (listening === undefined) return;
    let isOver = false;
    const look = async (): Promise<void> => {
      const outcome = await listening.heard();
      if (!isOver && outcome.kind === 'counted') setView(outcome.view);
    };
    const fail = (error: unknown): void => setTrouble(whyNot(error));
    const looking = setInterval(() => void look().catch(fail), HEARD_EACH);
    return () => {
      isOver = true;
      clearInterval(looking);
      listening.stop();
    };
  }, [listening]);

  const begin = async (): Promise<void> => {
    setTrouble('');
    setView(undefined);
    setAsking(true);
    try {
      setListening(await hear.listen());
    } catch (error) {
      setTrouble(whyNot(error));
    } finally {
      setAsking(false);
    }
  };
  const stop = async (): Promise<void> => {
    if (listening === undefined) return;
    listening.stop();
    const outcome = await listening.heard();
    if (outcome.kind === 'counted') setView(outcome.view);
    setListening(undefined);
  };
  const isOn = listening !== undefined;
  return (
    <>
      <button
        type="button"
        className={isOn ? 'button listen-button' : 'button main listen-button'}
        onClick={() => {
          if (isAsking) return;
          void (isOn ? stop() : begin()).catch((error: unknown) => setTrouble(whyNot(error)));
        }}
      >
        {isAsking ? 'Waiting for the microphone' : isOn ? 'Stop listening' : 'Listen'}
      </button>
      {trouble !== '' && (
        <p className="slip danger" role="alert">
          {trouble}
        </p>
      )}
      {view === undefined ? (
        <p className="note">
          {isOn
            ? 'Listening. Hold the phone within a step of the ram, half a minute long.'
            : 'Nothing is recorded or sent: the sound is counted on this device and let go.'}
        </p>
      ) : (
        <HeardStrip view={view} isLive={isOn} put={(rhythm) => put(rhythm)} said={said} />
      )}
    </>
  );
}

/** A refusal of the browser, in words that say what to do. */
function whyNot(error: unknown): string {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'NotAllowedError') {
    return 'The microphone is not allowed for this page. Allow it in the browser’s settings of the page, or open a recording instead.';
  }
  if (name === 'NotFoundError') {
    return 'No microphone is found. Plug one in, or open a recording instead.';
  }
  if (name === 'NotReadableError') {
    return 'The microphone is taken by another program. Close that one, or open a recording instead.';
  }
  const why = error instanceof Error ? error.message : String(error);
  return `That did not work: ${why}.`;
}

function FilePart({
  hear,
  put,
  said,
  onOpen,
}: Counting & { readonly hear: HearRoom; readonly onOpen: () => void }) {
  const { settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const chooser = useRef<HTMLInputElement>(null);
  const [file, setFile] = useState<File>();
  const [isBusy, setBusy] = useState(false);
  const [outcome, setOutcome] = useState<Counted['outcome']>();

  const open = async (chosen: File, column?: string): Promise<void> => {
    onOpen();
    setFile(chosen);
    setBusy(true);
    try {
      setOutcome(await hear.file(chosen, { system, column }));
    } catch (error) {
      setOutcome({ kind: 'refused', reasons: [whyNot(error)] });
    } finally {
      setBusy(false);
    }
  };
  const view = outcome?.kind === 'counted' && !isBusy ? outcome.view : undefined;
  return (
    <>
      <button
        type="button"
        className="button main listen-button"
        onClick={() => chooser.current?.click()}
      >
        Open a recording or a pressure log
      </button>
      <FileChooser
        chooser={chooser}
        label="Recording or pressure log"
        accept="audio/*,video/*,.wav,.csv,.txt,text/csv,text/plain"
        take={(chosen) => void open(chosen)}
      />
      {outcome === undefined && !isBusy && (
        <p className="note">
          A sound recording, WAV or what this browser plays; or a log as CSV whose first line names
          its columns with their units: time (s), pressure (bar).
        </p>
      )}
      {isBusy && (
        <p className="note" role="status">
          Counting in {file?.name}.
        </p>
      )}
      {outcome?.kind === 'refused' && !isBusy && (
        <div className="slip danger" role="alert">
          <p>
            <strong>{file?.name} was not counted.</strong>
          </p>
          <ul>
            {outcome.reasons.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </div>
      )}
      {view !== undefined && file !== undefined && (
        <>
          {view.otherColumns !== undefined && view.otherColumns.length > 0 && (
            <label className="log-column">
              <span>Column</span>
              <select value={view.column} onChange={(event) => void open(file, event.target.value)}>
                {[view.column ?? '', ...view.otherColumns].map((column) => (
                  <option key={column} value={column}>
                    {column}
                  </option>
                ))}
              </select>
            </label>
          )}
          <HeardStrip
            key={`${file.name} ${view.column ?? ''}`}
            view={view}
            isLive={false}
            said={said}
            put={(rhythm) =>
              put(rhythm, { of: view.of === 'log' ? 'logs' : 'recordings', name: file.name })
            }
          />
        </>
      )}
    </>
  );
}
