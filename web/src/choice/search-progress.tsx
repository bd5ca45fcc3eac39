/** How far the search has come: count, time left, a filling bar, Stop; then what it took. */
import type { SearchState } from './search.ts';

const DOING = {
  run: 'combinations are decided',
  judge: 'have been judged on what is not sure',
  quote: 'are worked out on the fine grid',
} as const;

export function SearchProgress({
  state,
  onStop,
  onAgain,
}: {
  readonly state: SearchState<number>;
  readonly onStop: () => void;
  readonly onAgain: () => void;
}) {
  const { phase, doing, done, wanted, left, reasons, elapsed, progress } = state;
  if (phase === 'idle') return null;
  if (phase === 'refused' || phase === 'failed') {
    return (
      <div className="slip danger" role="alert">
        <p>
          <strong>
            {phase === 'refused' ? 'Nothing can be chosen yet.' : 'The search broke off.'}
          </strong>{' '}
          Nothing of the place is lost.
        </p>
        <ul>
          {reasons.map((reason) => (
            <li key={reason}>{reason}</li>
          ))}
        </ul>
        {phase === 'failed' && (
          <button type="button" className="button" onClick={onAgain}>
            Try again
          </button>
        )}
      </div>
    );
  }
  const shown = wanted.toLocaleString('en');
  if (phase === 'running' || phase === 'stopping') {
    return (
      <div className="search-progress">
        <progress aria-label="How far the search is" max={Math.max(1, wanted)} value={done} />
        <span>
          {phase === 'stopping'
            ? 'Stopping with what is done.'
            : wanted === 0
              ? 'Putting the combinations together.'
              : `${done.toLocaleString('en')} of ${shown} ${DOING[doing]}${
                  left === undefined ? '' : `; about ${secondsInWords(left)} left`
                }.`}
        </span>
        <button
          type="button"
          className="button"
          aria-disabled={phase === 'stopping'}
          onClick={onStop}
        >
          Stop
        </button>
      </div>
    );
  }
  const all = progress?.combinations ?? 0;
  return (
    <p className="search-progress note" role="status">
      {phase === 'stopped' && 'Stopped before the end: better may be left. '}
      {progress !== undefined &&
        `${all.toLocaleString('en')} combinations in ${secondsInWords(elapsed)}: ${share(progress.rejected, all)} turned away by limits, ${share(progress.pruned, all)} beaten without a run, ${progress.runs.toLocaleString('en')} simulated.`}
    </p>
  );
}

function share(part: number, whole: number): string {
  return `${Math.round((100 * part) / Math.max(1, whole))} %`;
}

/** Judgement: nobody counts on the seconds of a minute that is only guessed. */
function secondsInWords(seconds: number): string {
  if (seconds < 90) return `${Math.max(1, Math.round(seconds))} s`;
  return `${Math.round(seconds / 60)} min`;
}
