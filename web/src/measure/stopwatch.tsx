/**
 * A watch for one hand: one large button, tapped when it begins and when it ends. Each time goes into the list at once, and
 * a watch that runs goes on while the page is away.
 */
import { useEffect, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { pathText } from '../state/site-document.ts';
import { watchName } from '../state/watches.ts';
import type { Spot } from './spot.ts';
import { listAt, withReadingAdded } from './spot.ts';

/** Judgement: a hand taps to two tenths of a second; a tenth is written so that readings can be told apart. */
const DECIMALS = 1;
/** Judgement: two taps nearer together than this are one finger that trembled. */
const SHORTEST = 0.5;
const SHOWN_EACH = 100;

export function Stopwatch({
  spot,
  start,
  stop,
}: {
  readonly spot: Spot;
  readonly start: string;
  readonly stop: string;
}) {
  const { place, watches } = useNotebook();
  const siteId = useStore(place, ({ id }) => id);
  const name = watchName(siteId, pathText(spot.path));
  const since = useStore(watches.running, (running) => running[name]);
  const [now, setNow] = useState(() => Date.now());
  const [said, setSaid] = useState('');

  useEffect(() => {
    if (since === undefined) return;
    const ticking = setInterval(() => setNow(Date.now()), SHOWN_EACH);
    return () => clearInterval(ticking);
  }, [since]);

  const tap = (): void => {
    // The clock of the day goes on while a phone sleeps, which the page's own does not everywhere.
    const tapped = Date.now();
    if (since === undefined) {
      watches.start(name, tapped);
      setNow(tapped);
      setSaid('The watch runs.');
      return;
    }
    const seconds = (tapped - since) / 1000;
    if (seconds < SHORTEST) return;
    const text = `${seconds.toFixed(DECIMALS)} s`;
    watches.stop(name);
    place.update((state) => withReadingAdded(state, spot, 'times', text));
    const count = listAt(spot.read(place.get().document), 'times').length;
    setSaid(`${text} is time ${count}.`);
  };

  const isRunning = since !== undefined;
  const shown = isRunning ? Math.max(0, now - since) / 1000 : 0;
  return (
    <div className="stopwatch">
      <button
        type="button"
        className={isRunning ? 'button watch' : 'button main watch'}
        onClick={tap}
      >
        <span>{isRunning ? stop : start}</span>
        <span className="seconds" aria-hidden="true">
          {shownTime(shown)}
        </span>
      </button>
      {isRunning && (
        <button type="button" className="button plain" onClick={() => watches.stop(name)}>
          Stop without a reading
        </button>
      )}
      <p className="for-ears" aria-live="polite">
        {said}
      </p>
    </div>
  );
}

/** `8.2 s`, `5 min 03.2 s`: as a watch shows it. What is written down stays in seconds. */
function shownTime(seconds: number): string {
  const whole = Number(seconds.toFixed(DECIMALS));
  const minutes = Math.floor(whole / 60);
  const rest = (whole - 60 * minutes).toFixed(DECIMALS);
  return minutes === 0 ? `${rest} s` : `${minutes} min ${rest.padStart(4, '0')} s`;
}
