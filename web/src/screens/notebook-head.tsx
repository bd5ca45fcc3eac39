/** Head of the page: whose it is, how it is shown, and whether what was typed is kept. */
import { Link } from 'wouter';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Choice } from '../fields/choice.tsx';
import { OfflineLines } from '../offline/offline-lines.tsx';

const SYSTEM_OPTIONS = [
  { value: 'metric', label: 'metric' },
  { value: 'us', label: 'US' },
] as const;

const THEME_OPTIONS = [
  { value: 'system', label: 'auto' },
  { value: 'paper', label: 'paper' },
  { value: 'night', label: 'night' },
] as const;

export function NotebookHead() {
  const { settings } = useNotebook();
  const { system, theme } = useStore(settings, (state) => state);
  return (
    <>
      <header className="notebook-head">
        <Link href="/" className="name">
          Fallwright<span className="to-places"> places</span>
        </Link>
        <SavedMark />
        <div className="row">
          <Choice
            legend="Units"
            options={SYSTEM_OPTIONS}
            value={system}
            onChoose={(chosen) => settings.update((state) => ({ ...state, system: chosen }))}
          />
          <Choice
            legend="Page"
            options={THEME_OPTIONS}
            value={theme}
            onChoose={(chosen) => settings.update((state) => ({ ...state, theme: chosen }))}
          />
        </div>
      </header>
      <OfflineLines />
    </>
  );
}

function SavedMark() {
  const { saved } = useNotebook();
  const state = useStore(saved, (kept) => kept);
  if (state.kind === 'notSaved') {
    return (
      <span className="saved of-alarm" role="alert">
        Not kept in this browser ({state.why}). Save it as a file.
      </span>
    );
  }
  if (state.kind === 'toChoose') {
    return (
      <span className="saved" role="alert">
        Kept twice: <a href="#conflict-title">choose one</a>
      </span>
    );
  }
  return (
    <span className="saved">
      <svg viewBox="0 0 16 16" aria-hidden="true" focusable="false">
        <path d="M2 8.5l4 4 8-9" fill="none" stroke="currentColor" strokeWidth="2" />
      </svg>
      Kept in this browser
    </span>
  );
}
