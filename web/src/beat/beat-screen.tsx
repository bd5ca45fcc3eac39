/** The beat, slowed down: the ram in section, the wave in its drive line and the traces, all on one clock. */
import './beat.css';
import type { System } from '@fallwright/units';
import { useCallback, useId, useMemo, useRef, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Choice } from '../fields/choice.tsx';
import { ClockControls, ZoomControls } from './beat-controls.tsx';
import {
  filmInWords,
  grantedInWords,
  instantInWords,
  readOuts,
  troubleInWords,
} from './beat-words.ts';
import { LineStrip } from './line-strip.tsx';
import { offerCsv } from './offer-csv.ts';
import { calmFrameOf, frameOf } from './player.ts';
import { RamSection } from './ram-section.tsx';
import type { Reel } from './reel.ts';
import { Traces } from './traces.tsx';
import { useClock } from './use-clock.ts';
import { useFilm } from './use-film.ts';
import { useKeys } from './use-keys.ts';

const BEATS_OPTIONS = [
  { value: '1', label: '1 beat' },
  { value: '2', label: '2 beats' },
  { value: '3', label: '3 beats' },
] as const;

type BeatsShown = (typeof BEATS_OPTIONS)[number]['value'];

export function BeatScreen() {
  const { answer, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const installation = useStore(answer, (state) => state.shown?.value.installation);
  const isOldAnswer = useStore(answer, (state) => state.phase !== 'answered');
  const [beats, setBeats] = useState<BeatsShown>('1');
  const { phase, reel, failure, again } = useFilm(installation, Number(beats));
  const isOld = reel !== undefined && (isOldAnswer || phase !== 'ready');
  return (
    <section className="beat" aria-labelledby="beat-title">
      <h2 id="beat-title">The beat, slowed down</h2>
      {phase === 'failed' && (
        <div className="slip danger" role="alert">
          <p>
            <strong>The beat could not be filmed: {failure}.</strong> Nothing of the place is lost.
          </p>
          <button type="button" className="button" onClick={again}>
            Film it again
          </button>
        </div>
      )}
      {reel === undefined ? (
        <div className="beat-plate empty">
          <p>{waitingInWords(installation !== undefined, phase)}</p>
        </div>
      ) : (
        <Filmed reel={reel} system={system} isOld={isOld}>
          {reel.isBeating && (
            <Choice
              className="beat-beats"
              legend="Beats in the film"
              options={BEATS_OPTIONS}
              value={beats}
              onChoose={setBeats}
            />
          )}
        </Filmed>
      )}
    </section>
  );
}

function waitingInWords(isKnown: boolean, phase: string): string {
  if (!isKnown) return 'The beat is filmed as soon as fall, lift, water and drive pipe are known.';
  return phase === 'slow' ? 'Filming the beat …' : '';
}

function Filmed({
  reel,
  system,
  isOld,
  children,
}: {
  readonly reel: Reel;
  readonly system: System;
  readonly isOld: boolean;
  readonly children: React.ReactNode;
}) {
  const screen = useRef<HTMLDivElement>(null);
  const scrubber = useRef<HTMLInputElement>(null);
  const focusScrubber = useCallback(() => scrubber.current?.focus({ preventScroll: true }), []);
  const words = useId();
  useClock(reel.player);
  useKeys(screen, reel.player);
  const trouble = troubleInWords(reel, system);
  return (
    <div ref={screen}>
      <p className="beat-what">
        {filmInWords(reel, system)}
        {isOld && <em className="beat-old"> Before the last change; it is filmed again.</em>}
      </p>
      {trouble !== undefined && (
        <p className="slip beat-trouble">
          <strong>{trouble}</strong>
        </p>
      )}
      <div className={isOld ? 'beat-plate old' : 'beat-plate'}>
        <LineStrip reel={reel} system={system} describedBy={words} />
        <div className="beat-ram">
          <RamSection reel={reel} system={system} describedBy={words} />
          <ReadOuts reel={reel} system={system} />
        </div>
        <Traces reel={reel} system={system} describedBy={words} onTouched={focusScrubber} />
      </div>
      <ClockControls reel={reel} scrubber={scrubber} />
      <div className="beat-tools no-print">
        {children}
        <ZoomControls reel={reel} />
        <button type="button" className="button" onClick={() => offerCsv(reel)}>
          Save the film as CSV
        </button>
      </div>
      <div className="beat-notes">
        <InstantWords id={words} reel={reel} system={system} />
        <Granted reel={reel} system={system} />
      </div>
    </div>
  );
}

function ReadOuts({ reel, system }: { readonly reel: Reel; readonly system: System }) {
  const frame = useStore(reel.player, frameOf);
  return (
    <dl className="beat-now">
      {readOuts(reel, frame, system).map(({ name, value }) => (
        <div key={name}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}

/** The picture in words. While it plays they change now and then, so that they can be read. */
function InstantWords({
  id,
  reel,
  system,
}: {
  readonly id: string;
  readonly reel: Reel;
  readonly system: System;
}) {
  const frame = useStore(reel.player, calmFrameOf);
  const words = useMemo(() => instantInWords(reel, frame, system), [reel, frame, system]);
  return (
    <div>
      <h3>At the cursor</h3>
      <p id={id} className="beat-instant">
        {words}
      </p>
    </div>
  );
}

function Granted({ reel, system }: { readonly reel: Reel; readonly system: System }) {
  return (
    <div className="note">
      <h3>How to read it</h3>
      <ul>
        <li className="no-print">
          Drag across the traces to zoom in, or pinch; the wheel zooms once they have been touched.
          Keys: space plays, arrows step a frame (with shift ten), + and − zoom, 0 shows all.
        </li>
        <li>
          Water is bluer as its head rises. Along the drive line the fall is dotted, and broken
          lines show the highest and lowest head so far. Grey in the traces: the waste valve is
          shut.
        </li>
        {grantedInWords(reel, system).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
    </div>
  );
}
