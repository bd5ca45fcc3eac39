/** The table as cards, one for each drive line, for a screen that is held in a hand. */
import { VerdictMark, wordTone } from '../marks/verdict-mark.tsx';
import { cellOf } from './cells.ts';
import type { DriveRow } from './drive-rows.ts';
import type { PairView } from './pair-view.ts';
import type { Pair } from './pairs.ts';
import { pairOf } from './pairs.ts';
import { RowName } from './row-name.tsx';

export function PairCards({
  view,
  caption,
  details,
}: {
  readonly view: PairView;
  readonly caption: string;
  /** Stands under the chosen pair. */
  readonly details: React.ReactNode;
}) {
  return (
    <div className="pair-cards">
      <p className="note">{caption}</p>
      {view.rows.map((row) => (
        <Card key={row.key} row={row} view={view} details={details} />
      ))}
    </div>
  );
}

function Card({
  row,
  view,
  details,
}: {
  readonly row: DriveRow;
  readonly view: PairView;
  readonly details: React.ReactNode;
}) {
  return (
    <section className="pair-card" aria-label={[row.name, ...row.details].join(', ')}>
      <RowName row={row} view={view} />
      <ul>
        {view.columns.map((column) => {
          const pair = pairOf(row, column);
          const isChosen = pair.key === view.chosen?.key;
          return (
            <li key={column.key} className={isChosen ? 'chosen' : undefined}>
              <CardPair pair={pair} view={view} isChosen={isChosen} />
              {isChosen && details}
            </li>
          );
        })}
      </ul>
      {row.opened !== undefined && (
        <button type="button" className="button plain" onClick={() => view.onRemove(row)}>
          Take this line out
        </button>
      )}
    </section>
  );
}

function CardPair({
  pair,
  view,
  isChosen,
}: {
  readonly pair: Pair;
  readonly view: PairView;
  readonly isChosen: boolean;
}) {
  const cell = cellOf(view.results.get(pair.key), view.wishes, view.system);
  const { column } = pair;
  return (
    <button
      type="button"
      className="pair"
      aria-pressed={isChosen}
      onClick={() => view.onChoose(pair)}
    >
      <VerdictMark kind={cell?.kind ?? 'notEnoughYet'} width={36} />
      <span className="ram">
        {column.name}
        {column.detail !== '' && <small>{column.detail}</small>}
        <small aria-hidden="true">{cell?.note ?? 'not run yet'}</small>
      </span>
      <span
        className={`figure ${cell === undefined || cell.isFigure ? '' : wordTone(cell.kind)}`}
        aria-hidden="true"
      >
        {cell?.figure}
      </span>
      <span className="for-ears">: {cell?.spoken ?? 'not run yet'}</span>
    </button>
  );
}
