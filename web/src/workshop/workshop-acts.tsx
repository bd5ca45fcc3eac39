/** What was done in the list, said in one line, with the way back where there is one. */
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';

export type News =
  | { readonly kind: 'done'; readonly words: string; readonly canBringBack?: readonly string[] }
  | { readonly kind: 'refused'; readonly file: string; readonly reasons: readonly string[] };

export interface Acts {
  readonly news: News | undefined;
  readonly tell: (news: News | undefined) => void;
  /** Waits for the act, then says it; a failure is said too. */
  readonly act: (act: Promise<unknown>, words: string, canBringBack?: readonly string[]) => void;
}

export function useAct(): Acts {
  const [news, tell] = useState<News>();
  return {
    news,
    tell,
    act: (act, words, canBringBack) => {
      act.then(
        () =>
          tell({ kind: 'done', words, ...(canBringBack === undefined ? {} : { canBringBack }) }),
        (error: unknown) => {
          const why = error instanceof Error ? error.message : String(error);
          tell({ kind: 'done', words: `That did not work: ${why}. Nothing was changed.` });
        },
      );
    },
  };
}

export function WorkshopNews({ acts: { news, act } }: { readonly acts: Acts }) {
  const { workshop } = useNotebook();
  return (
    <div className="file-news workshop-news" role="status">
      {news?.kind === 'done' && (
        <p className="row">
          {news.words}
          {news.canBringBack !== undefined && (
            <button
              type="button"
              className="button plain"
              onClick={() => act(workshop.bringBack(news.canBringBack ?? []), 'Brought back.')}
            >
              Undo
            </button>
          )}
        </p>
      )}
      {news?.kind === 'refused' && (
        <div className="slip danger">
          <p>
            <strong>{news.file} was not opened.</strong> Nothing here was changed.
          </p>
          <ul>
            {news.reasons.map((reason) => (
              <li key={reason}>{reason}</li>
            ))}
          </ul>
        </div>
      )}
    </div>
  );
}
