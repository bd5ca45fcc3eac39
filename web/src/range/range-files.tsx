/** The range as a file of its own, out and in. A file with any fault is refused whole; one that is taken is one step for undo. */
import { rangeFromData } from '@fallwright/records';
import { useRef, useState } from 'react';
import { rangeDocumentOf } from '../answer/document-of.ts';
import { offerFile } from '../answer/site-files.ts';
import { useNotebook } from '../app/notebook.ts';
import { FileChooser, RECORD_FILES } from '../fields/file-chooser.tsx';
import { putDocument } from '../state/place.ts';

interface Said {
  readonly words: string;
  readonly reasons: readonly string[];
}

export function RangeFiles({
  children,
}: {
  /** What else can be done, before what is done with files. */
  readonly children: React.ReactNode;
}) {
  const { place } = useNotebook();
  const [said, setSaid] = useState<Said>();
  const chooser = useRef<HTMLInputElement>(null);

  const save = async (): Promise<void> => {
    const read = rangeFromData(place.get().document);
    if (!read.ok) {
      setSaid({
        words: 'The range is not whole yet, so no file was made.',
        reasons: read.problems.map(({ message }) => message),
      });
      return;
    }
    const { writeRange } = await import('./range-text.ts');
    offerFile(writeRange(read.range), { name: 'range.yaml', type: 'application/yaml' });
    setSaid({ words: 'Saved as a file.', reasons: [] });
  };

  const open = async (file: File): Promise<void> => {
    const { readRange } = await import('./range-text.ts');
    const read = readRange(await file.text());
    if (!read.ok) {
      setSaid({
        words: `${file.name} was not opened. Nothing here was changed.`,
        reasons: read.problems.map(({ line, message }) =>
          line === undefined ? message : `Line ${line}: ${message}`,
        ),
      });
      return;
    }
    const document = rangeDocumentOf(read.range);
    place.update((state) =>
      putDocument(state, { document, path: ['rams'], called: `the range, from ${file.name}` }),
    );
    setSaid({
      words: `The range is now that of ${file.name}. Undo brings back the one before.`,
      reasons: [],
    });
  };

  const guarded = (action: Promise<void>): void => {
    action.catch((error: unknown) => {
      const why = error instanceof Error ? error.message : String(error);
      setSaid({ words: `That did not work: ${why}. Nothing was changed.`, reasons: [] });
    });
  };

  return (
    <>
      <div className="row buttons">
        {children}
        <button type="button" className="button" onClick={() => chooser.current?.click()}>
          Open a file
        </button>
        <button type="button" className="button" onClick={() => guarded(save())}>
          Save as a file
        </button>
        <FileChooser
          chooser={chooser}
          label="Range file"
          accept={RECORD_FILES}
          take={(file) => guarded(open(file))}
        />
      </div>
      <div className="file-news" role="status">
        {said !== undefined && said.reasons.length === 0 && <p className="note">{said.words}</p>}
        {said !== undefined && said.reasons.length > 0 && (
          <div className="slip danger">
            <p>
              <strong>{said.words}</strong>
            </p>
            <ul>
              {said.reasons.map((reason) => (
                <li key={reason}>{reason}</li>
              ))}
            </ul>
          </div>
        )}
      </div>
    </>
  );
}
