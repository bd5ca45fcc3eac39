/** Files of one place or of the whole workshop, in and out. A file with any fault is refused whole. */
import { useRef } from 'react';
import { useLocation } from 'wouter';
import { offerFile } from '../answer/site-files.ts';
import { useNotebook } from '../app/notebook.ts';
import { FileChooser, RECORD_FILES } from '../fields/file-chooser.tsx';
import type { SharedKind } from '../state/record-kind.ts';
import type { Brought } from '../state/workshop.ts';
import type { Acts } from './workshop-acts.tsx';

export function WorkshopFiles({ acts }: { readonly acts: Acts }) {
  const { files, workshop } = useNotebook();
  const [, goTo] = useLocation();
  const chooser = useRef<HTMLInputElement>(null);

  const open = async (file: File): Promise<void> => {
    // The reader of workshop files carries a schema: fetched when a file is there to be read.
    const { claimsToBeWorkshop, LARGEST_WORKSHOP, readWorkshop } = await import(
      './workshop-file.ts'
    );
    const isWorkshop =
      file.size <= LARGEST_WORKSHOP && claimsToBeWorkshop(await file.slice(0, 1000).text());
    if (!isWorkshop) {
      const read = await files.read(file);
      if (read.ok) goTo(`/places/${await workshop.begin(read.value)}`);
      else {
        const reasons = read.problems.map(({ line, message }) =>
          line === undefined ? message : `Line ${line}: ${message}`,
        );
        acts.tell({ kind: 'refused', file: file.name, reasons });
      }
      return;
    }
    const read = readWorkshop(await file.text());
    if (!read.ok) acts.tell({ kind: 'refused', file: file.name, reasons: read.reasons });
    else {
      const brought = await workshop.bring(read.sites);
      acts.tell({ kind: 'done', words: broughtInWords(brought) });
    }
  };

  const save = async (): Promise<void> => {
    const { workshopText } = await import('./workshop-file.ts');
    const now = Date.now();
    offerFile(workshopText(await workshop.everything(), now), {
      name: `workshop-${new Date(now).toISOString().slice(0, 10)}.json`,
      type: 'application/json',
    });
  };

  const guarded = (action: Promise<void>): void => {
    action.catch((error: unknown) => {
      const why = error instanceof Error ? error.message : String(error);
      acts.tell({ kind: 'done', words: `That did not work: ${why}. Nothing was changed.` });
    });
  };

  return (
    <>
      <button type="button" className="button" onClick={() => chooser.current?.click()}>
        Open a file
      </button>
      <button type="button" className="button plain" onClick={() => guarded(save())}>
        Save the whole workshop
      </button>
      <FileChooser
        chooser={chooser}
        label="Site or workshop file"
        accept={RECORD_FILES}
        take={(file) => guarded(open(file))}
      />
    </>
  );
}

const SHARED_WORDS: Readonly<Record<SharedKind, string>> = {
  range: 'range',
  prices: 'price list',
};

function broughtInWords({ added, same, beside, replaced }: Brought): string {
  const parts = [
    `${added === 1 ? 'One place was' : `${added} places were`} added.`,
    same === 0 ? '' : `${same === 1 ? 'One was' : `${same} were`} here already, word for word.`,
    beside === 0
      ? ''
      : `${beside === 1 ? 'One is' : `${beside} are`} here in another form; what the file says stands beside it.`,
    ...replaced.map(
      (kind) =>
        `The ${SHARED_WORDS[kind]} is now the one of the file; the one before is in its history.`,
    ),
  ];
  return parts.filter((part) => part !== '').join(' ');
}
