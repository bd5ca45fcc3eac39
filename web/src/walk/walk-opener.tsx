/** From a button or a dropped file to the leaf on which a survey is put into a line. */
import { lazy, Suspense, useRef, useState } from 'react';
import { FileChooser } from '../fields/file-chooser.tsx';
import type { LineName } from '../state/lines.ts';

/** The leaf and the readers behind it come with the first file. */
const WalkDialog = lazy(() =>
  import('./walk-dialog.tsx').then((leaf) => ({ default: leaf.WalkDialog })),
);

const WALK_FILES = '.gpx,.csv,.tsv,.txt,application/gpx+xml,text/csv';

export function WalkOpener({
  line,
  file,
  setFile,
}: {
  readonly line: LineName;
  readonly file: File | undefined;
  readonly setFile: (file: File | undefined) => void;
}) {
  const [done, setDone] = useState<string>();
  const chooser = useRef<HTMLInputElement>(null);
  const choose = (): void => chooser.current?.click();
  return (
    <>
      <button type="button" className="button plain" onClick={choose}>
        Take it from a GPX or CSV file
      </button>
      <FileChooser
        chooser={chooser}
        label={`Survey of the ${line} line`}
        accept={WALK_FILES}
        take={setFile}
      />
      <p className="note" role="status">
        {done}
      </p>
      {file !== undefined && (
        <Suspense fallback={null}>
          <WalkDialog
            line={line}
            file={file}
            close={(words) => {
              setFile(undefined);
              setDone(words);
            }}
            chooseAnother={choose}
          />
        </Suspense>
      )}
    </>
  );
}
