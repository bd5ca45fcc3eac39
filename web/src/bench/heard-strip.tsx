/** What was heard along the seconds, with each beat marked; a person takes beats out and puts others in, by pointer, finger or keys. */
import type { BeatCorrection, Rhythm } from '@fallwright/engine';
import { correctedBeats } from '@fallwright/engine';
import { NONE_IN_WORDS, rhythmInWords, UNSURE } from '@fallwright/papers';
import { useRef, useState } from 'react';
import { useWidth } from '../beat/use-width.ts';
import type { HeardView } from './heard-view.ts';
import { outlineBetween } from './heard-view.ts';
import { marksOf, nextToLookAt, spanFor } from './marks.ts';
import { PutSaid } from './put-said.tsx';
import { rateFigures } from './rate-entry.ts';

const HEIGHT = 96;
const NO_CORRECTIONS: readonly BeatCorrection[] = [];

export function HeardStrip({
  view,
  isLive,
  put,
  said,
}: {
  readonly view: HeardView;
  /** Still listening: the end is shown, and nothing is corrected yet. */
  readonly isLive: boolean;
  readonly put: (rhythm: Rhythm) => void;
  readonly said: string;
}) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const marksAt = useRef<HTMLFieldSetElement>(null);
  const [corrections, setCorrections] = useState(NO_CORRECTIONS);
  const [wantedFrom, setFrom] = useState(0);
  const { trace, heard, timeSpread } = view;
  const begins = trace.start - trace.step / 2;
  const ends = begins + trace.high.length * trace.step;
  const found = heard.kind === 'heard' ? heard.beats : [];
  const { beats, rhythm } = correctedBeats(found, isLive ? NO_CORRECTIONS : corrections, {
    timeSpread,
  });
  const others = heard.kind === 'heard' ? heard.others : [];
  const span = Math.min(ends - begins, spanFor(width, rhythm));
  const last = Math.max(begins, ends - span);
  const from = isLive ? last : Math.min(Math.max(begins, wantedFrom), last);
  const to = from + span;
  const place = (time: number): number => ((time - from) / span) * width;
  const marks = marksOf({ beats, others, rhythm, from, to });
  const correct = (correction: BeatCorrection): void => {
    setCorrections([...corrections, correction]);
    // The mark is gone or another one now: the keyboard stays in the strip.
    marksAt.current?.focus();
  };
  const none = heard.kind === 'none' && beats.length === 0;
  const figures = rhythm === undefined ? undefined : rateFigures(rhythm);
  const step = (by: number): void => setFrom(from + by * span);
  return (
    <div className="heard">
      {none && heard.kind === 'none' ? (
        <p className="slip" role="status">
          <strong>{isLive ? 'No beat yet.' : 'No beats.'}</strong>{' '}
          {isLive && heard.why !== 'silent'
            ? 'Hold the phone nearer to the ram, away from the falling water.'
            : NONE_IN_WORDS[view.of][heard.why]}
        </p>
      ) : (
        <p className="heard-rate" role="status">
          <b>{figures?.rate ?? '–'}</b>
          <span>
            {figures === undefined
              ? 'too few beats for a rate'
              : `± ${figures.spread} beats a minute`}
          </span>
        </p>
      )}
      <div ref={ref} className="heard-picture">
        {width > 0 && (
          // The keyboard has the marks and the form below; the sheet itself is for finger and pointer.
          // biome-ignore lint/a11y/useKeyWithClickEvents: as said above
          // biome-ignore lint/a11y/noStaticElementInteractions: as said above
          <div
            className="heard-sheet"
            onClick={(event) => {
              if (isLive || isOnMark(event.target)) return;
              const { left } = event.currentTarget.getBoundingClientRect();
              correct({ kind: 'add', time: from + ((event.clientX - left) / width) * span });
            }}
          >
            <svg
              width={width}
              height={HEIGHT}
              viewBox={`0 0 ${width} ${HEIGHT}`}
              role="img"
              aria-label={`${view.of === 'log' ? 'Head' : 'Loudness'} from ${from.toFixed(1)} s to ${to.toFixed(1)} s, ${marks.filter(({ kind }) => kind === 'beat').length} beats marked`}
            >
              <path
                className="heard-trace"
                d={outlineBetween(trace, { from, to, width, height: HEIGHT })}
              />
              {marks.map(({ kind, time }) => (
                <path
                  key={`${kind} ${time}`}
                  className={`heard-mark of-${kind}`}
                  d={`M${place(time).toFixed(1)} 0V${HEIGHT}`}
                />
              ))}
            </svg>
            {!isLive && (
              <fieldset ref={marksAt} className="heard-marks" tabIndex={-1}>
                <legend className="for-ears">Marks</legend>
                {marks.map(({ kind, time, isSure }) => (
                  <button
                    key={`${kind} ${time}`}
                    type="button"
                    className={`mark-button of-${kind}${isSure ? '' : ' is-unsure'}`}
                    style={{ left: place(time) }}
                    title={MARK_WORDS[kind](time, isSure)}
                    aria-label={MARK_WORDS[kind](time, isSure)}
                    onClick={() =>
                      correct(kind === 'beat' ? { kind: 'remove', time } : { kind: 'add', time })
                    }
                  >
                    <span aria-hidden="true">{kind === 'beat' ? (isSure ? '' : '?') : '+'}</span>
                  </button>
                ))}
              </fieldset>
            )}
          </div>
        )}
        <div className="heard-times" aria-hidden="true">
          <span>{from.toFixed(1)} s</span>
          <span>{to.toFixed(1)} s</span>
        </div>
      </div>
      {!isLive && (
        <>
          {last > begins && (
            <div className="heard-moves">
              <button type="button" className="button" onClick={() => step(-0.9)}>
                Back
              </button>
              <input
                type="range"
                aria-label="Shown from, seconds"
                min={begins}
                max={last}
                step="any"
                value={from}
                aria-valuetext={`${from.toFixed(1)} s`}
                onChange={(event) => setFrom(event.target.valueAsNumber)}
              />
              <button type="button" className="button" onClick={() => step(0.9)}>
                On
              </button>
            </div>
          )}
          <p className="note heard-how">
            Touch a mark to take its beat out. Touch between them, or a +, to put one in.
          </p>
          <div className="row count-acts">
            <button
              type="button"
              className="button main"
              aria-disabled={rhythm === undefined}
              onClick={() => rhythm !== undefined && put(rhythm)}
            >
              Put into the reading
            </button>
            <NextOdd
              onClick={() => {
                const next = nextToLookAt({ beats, others, rhythm }, to);
                if (next !== undefined) setFrom(next - span / 2);
              }}
              count={oddOnes(rhythm, beats)}
            />
            {corrections.length > 0 && (
              <button
                type="button"
                className="button"
                onClick={() => setCorrections(corrections.slice(0, -1))}
              >
                Undo the last mark
              </button>
            )}
          </div>
          <PutSaid words={said} />
          <AddAt
            add={(time) => {
              correct({ kind: 'add', time });
              if (time < from || time > to) setFrom(time - span / 2);
            }}
            range={[begins, ends]}
          />
        </>
      )}
      <ul className="heard-words">
        {rhythm !== undefined &&
          rhythmInWords(rhythm, others.length).map((words) => <li key={words}>{words}</li>)}
        {[view.about, ...view.notes].map((words) => (
          <li key={words} className="note">
            {words}
          </li>
        ))}
        {view.of === 'sound' && heard.kind === 'heard' && !isLive && (
          <li className="note">
            Music and machines beat regularly too and are counted as a ram would be. Record with
            none near.
          </li>
        )}
      </ul>
    </div>
  );
}

const MARK_WORDS = {
  beat: (time: number, isSure: boolean): string =>
    `${isSure ? 'Beat' : 'Unsure beat'} at ${time.toFixed(2)} s: take it out`,
  missed: (time: number): string =>
    `No beat at ${time.toFixed(2)} s, where one was due: put one in`,
  other: (time: number): string => `Another sound at ${time.toFixed(2)} s: count it as a beat`,
} as const;

function oddOnes(rhythm: Rhythm | undefined, beats: readonly { confidence: number }[]): number {
  const gaps = rhythm?.gaps.filter(({ kind }) => kind !== 'regular').length ?? 0;
  return gaps + beats.filter(({ confidence }) => confidence < UNSURE).length;
}

function NextOdd({ count, onClick }: { readonly count: number; readonly onClick: () => void }) {
  if (count === 0) return null;
  return (
    <button type="button" className="button" onClick={onClick}>
      Next to look at ({count})
    </button>
  );
}

/** A beat by its second, for those who do not point. */
function AddAt({
  add,
  range: [least, most],
}: {
  readonly add: (time: number) => void;
  readonly range: readonly [number, number];
}) {
  const [text, setText] = useState('');
  const [fault, setFault] = useState('');
  return (
    <details className="more">
      <summary>Put a beat at a second</summary>
      <form
        className="add-at"
        onSubmit={(event) => {
          event.preventDefault();
          const time = Number(text.replace(/\s*s$/, '').replace(',', '.'));
          if (text.trim() === '' || !(time >= least && time <= most)) {
            setFault(`Write a second between ${least.toFixed(1)} and ${most.toFixed(1)}.`);
            return;
          }
          setFault('');
          setText('');
          add(time);
        }}
      >
        <label>
          <span>Second</span>
          <input
            type="text"
            inputMode="decimal"
            autoComplete="off"
            value={text}
            onChange={(event) => setText(event.target.value)}
          />
        </label>
        <button type="submit" className="button">
          Put it in
        </button>
        {fault !== '' && (
          <p className="fault" role="alert">
            {fault}
          </p>
        )}
      </form>
    </details>
  );
}

const isOnMark = (target: EventTarget): boolean =>
  target instanceof Element && target.closest('button') !== null;
