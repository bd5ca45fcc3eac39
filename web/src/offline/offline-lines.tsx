/** Quiet lines under the head: a newer version, that the app now works offline, that it is offline. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';

export function OfflineLines() {
  const { offline } = useNotebook();
  const { isNewlyReady, isOffline, newer } = useStore(offline.state, (state) => state);
  return (
    <div className="offline-lines" role="status">
      {(newer === 'offered' || newer === 'taking') && (
        <p>
          A newer Fallwright is here.
          <span className="row">
            <button
              type="button"
              className="button plain"
              aria-disabled={newer === 'taking'}
              onClick={() => newer === 'offered' && void offline.takeNewer()}
            >
              Use it now
            </button>
            {newer === 'offered' && (
              <button type="button" className="button plain" onClick={offline.putOffNewer}>
                Later
              </button>
            )}
          </span>
        </p>
      )}
      {newer === 'unsaved' && (
        <p>
          The newer Fallwright waits: this browser does not keep what is typed here. Save it as a
          file first, then load the page again.
        </p>
      )}
      {newer === 'takenElsewhere' && (
        <p>
          Another tab uses a newer Fallwright now, and this browser does not keep what is typed
          here. Save it as a file, then load the page again.
        </p>
      )}
      {isNewlyReady && (
        <p>
          Fallwright now works offline too: all of it is kept in this browser.
          <button type="button" className="button plain" onClick={offline.waveReadyAway}>
            Good
          </button>
        </p>
      )}
      {isOffline && <p>Offline. Work goes on: everything is computed and kept in this browser.</p>}
    </div>
  );
}
