/** Test files, in and out. A file with any fault is refused whole, with every reason. */
import { useRef } from 'react';
import { useLocation } from 'wouter';
import { plainOf } from '../answer/document-of.ts';
import { offerFile } from '../answer/site-files.ts';
import { useNotebook } from '../app/notebook.ts';
import { FileChooser, RECORD_FILES } from '../fields/file-chooser.tsx';
import type { SiteDocument } from '../state/site-document.ts';
import { isRecord } from '../state/site-document.ts';
import type { Acts } from '../workshop/workshop-acts.tsx';
import { titleOfTest, withListedTest } from './test-document.ts';

export function TestFiles({
  acts,
  children,
}: {
  readonly acts: Acts;
  /** What else can be done, before what is done with files. */
  readonly children: React.ReactNode;
}) {
  const { workshop } = useNotebook();
  const [, goTo] = useLocation();
  const chooser = useRef<HTMLInputElement>(null);

  const open = async (file: File): Promise<void> => {
    const { LONGEST_TEST, readTest } = await import('./test-text.ts');
    const read = readTest(await file.slice(0, LONGEST_TEST + 1).text());
    if (!read.ok) {
      const reasons = read.problems.map(({ line, message }) =>
        line === undefined ? message : `Line ${line}: ${message}`,
      );
      acts.tell({ kind: 'refused', file: file.name, reasons });
      return;
    }
    const plain = plainOf(read.test);
    if (!isRecord(plain)) return;
    goTo(`/bench/${await workshop.beginTest(withListedTest(plain), 'opened from a file')}`);
  };

  return (
    <div className="row buttons">
      {children}
      <button type="button" className="button" onClick={() => chooser.current?.click()}>
        Open a test file
      </button>
      <FileChooser
        chooser={chooser}
        label="Test file"
        accept={RECORD_FILES}
        take={(file) => {
          open(file).catch((error: unknown) => {
            const why = error instanceof Error ? error.message : String(error);
            acts.tell({ kind: 'done', words: `That did not work: ${why}. Nothing was changed.` });
          });
        }}
      />
    </div>
  );
}

/** The test as a file; one that is not whole is told why. */
export async function saveTest(document: SiteDocument): Promise<readonly string[]> {
  const { testFromData, writeTest } = await import('./test-text.ts');
  const read = testFromData(document);
  if (!read.ok) return read.problems.map(({ message }) => message);
  const name = titleOfTest(document)
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '');
  offerFile(writeTest(read.test), { name: `${name || 'test'}.yaml`, type: 'application/yaml' });
  return [];
}
