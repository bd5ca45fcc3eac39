/** A large button that is tapped at every click of the valve, by finger, pointer or key. Every tap leaves a pen stroke. */
import type { Beat, Rhythm } from '@fallwright/engine';
import { FEWEST_BEATS } from '@fallwright/engine';
import { rateFigures } from './rate-entry.ts';

/** Judgement: as many strokes as stand apart on a phone. */
const STROKES = 16;
const WIDTH = 328;
const BASE = 40;

export function TapPad({
  beats,
  rhythm,
  onTap,
}: {
  readonly beats: readonly Beat[];
  readonly rhythm: Rhythm | undefined;
  /** In seconds of the page's own clock. */
  readonly onTap: (time: number) => void;
}) {
  const figures = rhythm === undefined ? undefined : rateFigures(rhythm);
  const first = beats[0]?.time ?? 0;
  const last = beats.at(-1)?.time ?? 0;
  const tap = (event: { readonly timeStamp: number }): void => onTap(event.timeStamp / 1000);
  return (
    <>
      <button
        type="button"
        className="tap-pad"
        onPointerDown={(event) => {
          if (event.isPrimary && event.button === 0) tap(event);
        }}
        onKeyDown={(event) => {
          if (event.key !== ' ' && event.key !== 'Enter') return;
          // The key counts as it goes down, and not a second time as a click.
          event.preventDefault();
          if (!event.repeat) tap(event);
        }}
        onKeyUp={(event) => {
          if (event.key === ' ') event.preventDefault();
        }}
        onClick={(event) => {
          // A click without pointer or key comes from a program that reads the page out.
          if (event.detail === 0) tap(event);
        }}
      >
        <span className="for-ears">Tap at every beat. </span>
        <span className="tap-rate">{figures?.rate ?? '–'}</span>
        <span className="tap-unit">
          {figures === undefined ? 'beats a minute' : `beats a minute, ± ${figures.spread}`}
        </span>
        <svg viewBox={`0 0 ${WIDTH} 52`} aria-hidden="true" focusable="false">
          <path className="tap-base" d={`M8 ${BASE}H${WIDTH - 8}`} />
          <path className="tap-strokes" d={strokes(beats)} />
        </svg>
        <span className="tap-cap">
          {beats.length === 0
            ? 'tap at every click of the valve, or press the space bar'
            : beats.length < FEWEST_BEATS
              ? 'go on'
              : 'twenty beats give a good rate'}
        </span>
      </button>
      <dl className="tap-count">
        <div>
          <dt>beats</dt>
          <dd>{beats.length}</dd>
        </div>
        <div>
          <dt>in</dt>
          <dd>{(last - first).toFixed(1)} s</dd>
        </div>
        <div>
          <dt>missed</dt>
          <dd>{rhythm?.missed ?? 0}</dd>
        </div>
        <div>
          <dt>double</dt>
          <dd>{rhythm?.doubles ?? 0}</dd>
        </div>
      </dl>
    </>
  );
}

/** The last taps, to one scale of time, so that even spacing shows an even hand. */
function strokes(beats: readonly Beat[]): string {
  const shown = beats.slice(-STROKES);
  const from = shown[0]?.time ?? 0;
  const lasts = (shown.at(-1)?.time ?? 0) - from;
  const room = (WIDTH - 40) * Math.min(1, shown.length / STROKES);
  return shown
    .map(({ time }, i) => {
      const x = 20 + (lasts > 0 ? ((time - from) / lasts) * room : 0);
      const top = i === shown.length - 1 ? BASE - 32 : BASE - 20;
      return `M${x.toFixed(1)} ${BASE}V${top}`;
    })
    .join('');
}
