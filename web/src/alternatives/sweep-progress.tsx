/** How far the run has come: count, time left, a filling bar, Stop; then what it took. */
import { useEffect, useState } from 'react';
import type { SweepState } from './sweep.ts';
import { progressInWords } from './table-words.ts';

/** LOOK: a word after 0.4 s. */
const SAY_RUNNING = 400;

export function SweepProgress({
  state,
  onStop,
  onGoOn,
}: {
  readonly state: SweepState;
  readonly onStop: () => void;
  readonly onGoOn: () => void;
}) {
  const isLong = useLong(state.phase === 'running');
  const words = progressInWords(state);
  if (state.phase === 'failed') {
    return (
      <div className="slip danger" role="alert">
        <p>
          <strong>
            {state.done} of {state.wanted} pairs are done; the others could not be run:{' '}
            {state.failure}.
          </strong>{' '}
          Nothing of the place is lost.
        </p>
        <button type="button" className="button" onClick={onGoOn}>
          Try the others again
        </button>
      </div>
    );
  }
  return (
    <div className="sweep-progress">
      {state.phase === 'running' && isLong ? (
        <>
          <progress aria-label="Pairs that are done" max={state.wanted} value={state.done} />
          <span>{words}</span>
          <button type="button" className="button" onClick={onStop}>
            Stop
          </button>
        </>
      ) : (
        <>
          <span role="status">{state.phase === 'running' ? '' : words}</span>
          {state.phase === 'stopped' && (
            <button type="button" className="button" onClick={onGoOn}>
              Run the others
            </button>
          )}
        </>
      )}
    </div>
  );
}

/** Whether something has been so for longer than a blink. */
function useLong(is: boolean): boolean {
  const [isLong, setLong] = useState(false);
  useEffect(() => {
    if (!is) {
      setLong(false);
      return;
    }
    const timer = setTimeout(() => setLong(true), SAY_RUNNING);
    return () => clearTimeout(timer);
  }, [is]);
  return isLong;
}
