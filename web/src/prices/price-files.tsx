/** The price list as a CSV file, out and in. Every bad row of a file is named; the good ones are kept only if the person says so. */
import type { PriceList } from '@fallwright/records';
import { readPrices } from '@fallwright/records';
import { useRef, useState } from 'react';
import { offerFile } from '../answer/site-files.ts';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { FileChooser } from '../fields/file-chooser.tsx';
import { putDocument } from '../state/place.ts';
import { priceCsv, priceDocument, rowsIn } from './price-document.ts';

type Said =
  | { readonly kind: 'done'; readonly words: string }
  | {
      readonly kind: 'faulty';
      readonly file: string;
      readonly reasons: readonly string[];
      readonly good?: PriceList;
    };

/** Judgement: more reasons at once help nobody; the count of the others is told. */
const MOST_REASONS = 30;

export function PriceFiles({
  children,
}: {
  /** What else can be done, before what is done with files. */
  readonly children: React.ReactNode;
}) {
  const { place } = useNotebook();
  const [said, setSaid] = useState<Said>();
  const chooser = useRef<HTMLInputElement>(null);
  const isEmpty = useStore(place, ({ document }) => rowsIn(document).length === 0);

  const take = (list: PriceList, file: string): void => {
    place.update((state) =>
      putDocument(state, {
        document: { ...state.document, ...priceDocument(list) },
        path: ['rows'],
        called: `the price list, from ${file}`,
      }),
    );
    const rows = list.rows.length === 1 ? 'one row' : `${list.rows.length} rows`;
    setSaid({
      kind: 'done',
      words: `The list now has ${rows} from ${file}. Undo brings back the one before.`,
    });
  };

  const open = async (file: File): Promise<void> => {
    const read = readPrices(await file.text());
    if (read.ok) {
      take(read.list, file.name);
      return;
    }
    const all = read.problems.map(({ line, message }) =>
      line === undefined ? message : `Line ${line}: ${message}`,
    );
    const beyond = all.length - MOST_REASONS;
    setSaid({
      kind: 'faulty',
      file: file.name,
      reasons: beyond > 0 ? [...all.slice(0, MOST_REASONS), `And ${beyond} more.`] : all,
      ...(read.good === undefined || read.good.rows.length === 0 ? {} : { good: read.good }),
    });
  };

  return (
    <>
      <div className="row buttons">
        {children}
        <button type="button" className="button" onClick={() => chooser.current?.click()}>
          Open a CSV file
        </button>
        <button
          type="button"
          className="button"
          aria-disabled={isEmpty}
          onClick={() => {
            if (isEmpty) {
              setSaid({ kind: 'done', words: 'There is nothing to save yet.' });
              return;
            }
            offerFile(priceCsv(place.get().document), { name: 'prices.csv', type: 'text/csv' });
            setSaid({ kind: 'done', words: 'Saved as a file, with every row as it stands here.' });
          }}
        >
          Save as CSV
        </button>
        <FileChooser
          chooser={chooser}
          label="Price list file"
          accept=".csv,.tsv,.txt,text/csv,text/*"
          take={(file) => {
            open(file).catch((error: unknown) => {
              const why = error instanceof Error ? error.message : String(error);
              setSaid({ kind: 'done', words: `That did not work: ${why}. Nothing was changed.` });
            });
          }}
        />
      </div>
      <div className="file-news" role="status">
        {said?.kind === 'done' && <p className="note">{said.words}</p>}
        {said?.kind === 'faulty' && (
          <div className="slip danger">
            <p>
              <strong>{said.file} has rows that cannot be read.</strong> Nothing here was changed
              yet.
            </p>
            <ul>
              {said.reasons.map((reason) => (
                <li key={reason}>{reason}</li>
              ))}
            </ul>
            <div className="row">
              {said.good !== undefined && (
                <button
                  type="button"
                  className="button"
                  onClick={() => said.good && take(said.good, said.file)}
                >
                  {said.good.rows.length === 1
                    ? 'Take the one good row'
                    : `Take the ${said.good.rows.length} good rows`}
                </button>
              )}
              <button
                type="button"
                className="button plain"
                onClick={() => setSaid({ kind: 'done', words: 'The list was left as it is.' })}
              >
                Leave the list as it is
              </button>
            </div>
          </div>
        )}
      </div>
    </>
  );
}
