/** A watch for one hand: one large button, tapped when it begins and when it ends. Each time goes into the list at once. */
import { useEffect, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
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
  const { place } = useNotebook();
  const [since, setSince] = useState<number>();
  const [now, setNow] = useState(0);
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
      setSince(tapped);
      setNow(tapped);
      setSaid('The watch runs.');
      return;
    }
    const seconds = (tapped - since) / 1000;
    if (seconds < SHORTEST) return;
    const text = `${seconds.toFixed(DECIMALS)} s`;
    setSince(undefined);
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
          {shown.toFixed(DECIMALS)} s
        </span>
      </button>
      {isRunning && (
        <button type="button" className="button plain" onClick={() => setSince(undefined)}>
          Stop without a reading
        </button>
      )}
      <p className="for-ears" aria-live="polite">
        {said}
      </p>
    </div>
  );
}
