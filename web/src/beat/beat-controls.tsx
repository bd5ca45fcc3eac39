/** The clock's controls: play, step, scrub, speed, zoom. */
import type { Ref } from 'react';
import { useStore } from '../app/use-store.ts';
import { Choice } from '../fields/choice.tsx';
import { momentSpoken, PHASE_WORDS } from './beat-words.ts';
import { phaseAt } from './phases.ts';
import type { Player, Slowness } from './player.ts';
import {
  atSlowness,
  frameOf,
  isWholeShown,
  movedToFrame,
  paused,
  playing,
  showing,
  showingAll,
  stepped,
  zoomedBy,
} from './player.ts';
import type { Reel } from './reel.ts';
import { phaseBar, shutWindow } from './scrub-bar.ts';
import { ZOOM_STEP } from './use-keys.ts';
import { useWidth } from './use-width.ts';

const SPEED_OPTIONS = [
  { value: '1', label: '1/1' },
  { value: '5', label: '1/5' },
  { value: '20', label: '1/20' },
  { value: '100', label: '1/100' },
] as const;

const SPEEDS: Readonly<Record<(typeof SPEED_OPTIONS)[number]['value'], Slowness>> = {
  '1': 1,
  '5': 5,
  '20': 20,
  '100': 100,
};

export function ClockControls({
  reel,
  scrubber,
}: {
  readonly reel: Reel;
  readonly scrubber: Ref<HTMLInputElement>;
}) {
  const { player } = reel;
  const isPlaying = useStore(player, (state) => state.isPlaying);
  const slowness = useStore(player, (state) => state.slowness);
  const chosen = SPEED_OPTIONS.find(({ value }) => SPEEDS[value] === slowness)?.value ?? '20';
  return (
    <fieldset className="beat-clock no-print">
      <legend className="for-ears">The clock of the picture and the traces</legend>
      <button
        type="button"
        className="button main beat-play"
        aria-label={isPlaying ? 'Pause' : 'Play'}
        onClick={() => player.update(isPlaying ? paused : playing)}
      >
        <svg viewBox="0 0 22 22" aria-hidden="true" focusable="false">
          <path d={isPlaying ? 'M5 3h4v16H5zM13 3h4v16h-4z' : 'M6 3v16l13-8z'} />
        </svg>
      </button>
      <StepButton reel={reel} frames={-1} name="One frame back" icon="M15 3v16L5 11zM4 3h2v16H4z" />
      <StepButton reel={reel} frames={1} name="One frame on" icon="M7 3v16l10-8zM16 3h2v16h-2z" />
      <Scrubber reel={reel} scrubber={scrubber} />
      <Choice
        className="beat-speeds"
        legend="Speed"
        options={SPEED_OPTIONS}
        value={chosen}
        onChoose={(value) => player.update((state) => atSlowness(state, SPEEDS[value]))}
      />
    </fieldset>
  );
}

function StepButton({
  reel,
  frames,
  name,
  icon,
}: {
  readonly reel: Reel;
  readonly frames: number;
  readonly name: string;
  readonly icon: string;
}) {
  return (
    <button
      type="button"
      className="button beat-step"
      aria-label={name}
      onClick={() => reel.player.update((state) => stepped(state, frames))}
    >
      <svg viewBox="0 0 22 22" aria-hidden="true" focusable="false">
        <path d={icon} />
      </svg>
    </button>
  );
}

function Scrubber({
  reel,
  scrubber,
}: {
  readonly reel: Reel;
  readonly scrubber: Ref<HTMLInputElement>;
}) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const frame = useStore(reel.player, frameOf);
  const now = phaseAt(reel.phases, frame);
  return (
    <div className="beat-scrub" ref={ref}>
      <div className="beat-phases" aria-hidden="true">
        {phaseBar(reel, width).map(({ phase, left, width: room, isNamed }) => (
          <span
            key={phase.firstFrame}
            className={`${phase.kind} ${phase === now ? 'on' : ''}`}
            style={{ left, width: room }}
          >
            {isNamed ? PHASE_WORDS[phase.kind] : ''}
          </span>
        ))}
      </div>
      <input
        ref={scrubber}
        type="range"
        min={0}
        max={reel.film.frames - 1}
        step={1}
        value={frame}
        aria-label="Time in the film"
        aria-valuetext={momentSpoken(reel, frame)}
        onChange={(event) => {
          const wanted = event.currentTarget.valueAsNumber;
          reel.player.update((state) => movedToFrame(state, wanted));
        }}
      />
    </div>
  );
}

export function ZoomControls({ reel }: { readonly reel: Reel }) {
  const { player } = reel;
  const isWhole = useStore(player, isWholeShown);
  const shut = shutWindow(reel);
  const change = (to: (state: Player) => Player) => () => player.update(to);
  return (
    <fieldset className="beat-zoom no-print">
      <legend className="for-ears">Zoom of the traces</legend>
      <button
        type="button"
        className="button"
        aria-label="Zoom out"
        aria-disabled={isWhole}
        onClick={change((state) => zoomedBy(state, 1 / ZOOM_STEP))}
      >
        −
      </button>
      <button
        type="button"
        className="button"
        aria-label="Zoom in"
        onClick={change((state) => zoomedBy(state, ZOOM_STEP))}
      >
        +
      </button>
      <button
        type="button"
        className="button"
        aria-label="0: show the whole film"
        aria-disabled={isWhole}
        onClick={change(showingAll)}
      >
        0
      </button>
      {shut !== undefined && (
        <button
          type="button"
          className="button beat-to-shut"
          onClick={change((state) => showing(state, shut))}
        >
          Zoom to the shut valve
        </button>
      )}
    </fieldset>
  );
}
