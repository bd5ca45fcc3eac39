/** The site file: saved, copied, opened. A file that cannot be read is refused with its reasons and changes nothing. */
import { useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { SiteProblem } from '../answer/site-answer.ts';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { FileChooser, RECORD_FILES } from '../fields/file-chooser.tsx';
import { EmptyPlaceButton } from './empty-place-button.tsx';
import { UndoButtons } from './undo-buttons.tsx';

type Said =
  | { readonly kind: 'nothing' }
  | { readonly kind: 'done'; readonly words: string }
  | { readonly kind: 'refused'; readonly file: string; readonly problems: readonly SiteProblem[] };

export function FileActions() {
  const { place, files, workshop } = useNotebook();
  const [, goTo] = useLocation();
  const [said, setSaid] = useState<Said>({ kind: 'nothing' });
  const chooser = useRef<HTMLInputElement>(null);
  const isDemo = useStore(place, (state) => state.isDemo);

  const open = async (file: File): Promise<void> => {
    const read = await files.read(file);
    if (!read.ok) {
      setSaid({ kind: 'refused', file: file.name, problems: read.problems });
      return;
    }
    goTo(`/places/${await workshop.begin(read.value)}`);
  };

  const save = async (): Promise<void> => {
    const { document: site, unread } = place.get();
    await files.save(site);
    setSaid({ kind: 'done', words: `Saved as a file.${leftOut(Object.keys(unread).length)}` });
  };

  const copy = async (): Promise<void> => {
    const { document: site, unread } = place.get();
    await files.copy(site);
    setSaid({
      kind: 'done',
      words: `The text of the file is copied.${leftOut(Object.keys(unread).length)}`,
    });
  };

  const guarded = (action: Promise<void>): void => {
    action.catch((error: unknown) => {
      const why = error instanceof Error ? error.message : String(error);
      setSaid({ kind: 'done', words: `That did not work: ${why}. Nothing was changed.` });
    });
  };

  return (
    <>
      <div className="file-actions row buttons">
        {!isDemo && <EmptyPlaceButton />}
        <button type="button" className="button" onClick={() => chooser.current?.click()}>
          <span>
            Open<span className="longer"> a file</span>
          </span>
        </button>
        <button type="button" className="button" onClick={() => guarded(save())}>
          <span>
            Save<span className="longer"> as a file</span>
          </span>
        </button>
        <button type="button" className="button plain" onClick={() => guarded(copy())}>
          <span>
            Copy<span className="longer"> its text</span>
          </span>
        </button>
        <UndoButtons />
        <FileChooser
          chooser={chooser}
          label="Site file"
          accept={RECORD_FILES}
          take={(file) => guarded(open(file))}
        />
      </div>
      <div className="file-news" role="status">
        {said.kind === 'done' && <p className="note">{said.words}</p>}
        {said.kind === 'refused' && (
          <div className="slip danger">
            <p>
              <strong>{said.file} was not opened.</strong> Nothing here was changed.
            </p>
            <ul>
              {said.problems.map((problem) => (
                <li key={`${problem.line} ${problem.field} ${problem.message}`}>
                  {problem.line !== undefined && `Line ${problem.line}: `}
                  {problem.message}
                </li>
              ))}
            </ul>
          </div>
        )}
      </div>
    </>
  );
}

function leftOut(count: number): string {
  if (count === 0) return '';
  return count === 1
    ? ' One box that cannot be read yet is left out; the file has its last good value, if there was one.'
    : ` ${count} boxes that cannot be read yet are left out; the file has their last good values.`;
}
