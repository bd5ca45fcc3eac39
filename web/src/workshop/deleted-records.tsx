/** What was taken out of a list: each can be brought back, or all deleted for good. */
import { useNotebook } from '../app/notebook.ts';
import type { SiteRecord } from '../state/site-record.ts';
import type { Acts } from './workshop-acts.tsx';

export function DeletedRecords({
  deleted,
  what,
  titleOf,
  acts,
}: {
  readonly deleted: readonly SiteRecord[];
  readonly what: 'place' | 'test';
  readonly titleOf: (record: SiteRecord) => string;
  readonly acts: Acts;
}) {
  const { workshop } = useNotebook();
  if (deleted.length === 0) return null;
  const newestFirst = [...deleted].sort((a, b) => (b.deletedAt ?? 0) - (a.deletedAt ?? 0));
  const ids = newestFirst.map(({ id }) => id);
  return (
    <details className="deleted">
      <summary>
        Deleted {what}s ({ids.length})
      </summary>
      <ul>
        {newestFirst.map((record) => {
          const title = titleOf(record);
          return (
            <li key={record.id} className="row">
              <span>{title}</span>
              <button
                type="button"
                className="button plain"
                onClick={() => acts.act(workshop.bringBack([record.id]), `${title} is back.`)}
              >
                Bring back<span className="for-ears"> {title}</span>
              </button>
            </li>
          );
        })}
      </ul>
      <button
        type="button"
        className="button"
        onClick={() => {
          const question = `Delete ${ids.length === 1 ? `this ${what}` : `these ${ids.length} ${what}s`} for good, with all history? This cannot be undone.`;
          if (window.confirm(question)) acts.act(workshop.removeForGood(ids), 'Deleted for good.');
        }}
      >
        Delete these for good
      </button>
    </details>
  );
}
