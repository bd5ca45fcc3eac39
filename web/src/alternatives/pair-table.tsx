/** Drive lines against rams, one cell for each pair. Arrow keys go from cell to cell; one cell is the way in. */
import { VerdictMark, wordTone } from '../marks/verdict-mark.tsx';
import type { Cell } from './cells.ts';
import { cellOf } from './cells.ts';
import type { PairView } from './pair-view.ts';
import { pairName, pairOf } from './pairs.ts';
import { RowName } from './row-name.tsx';

const STEPS: Readonly<Record<string, readonly [down: number, right: number]>> = {
  ArrowUp: [-1, 0],
  ArrowDown: [1, 0],
  ArrowLeft: [0, -1],
  ArrowRight: [0, 1],
};

/** Moves the focus to the next cell, without choosing it. */
function moveFocus(event: React.KeyboardEvent<HTMLTableElement>): void {
  const step = STEPS[event.key];
  const button = event.target instanceof HTMLElement ? event.target.closest('button.pair') : null;
  const cell = button?.closest('td');
  const row = cell?.parentElement;
  if (step === undefined || !(row instanceof HTMLTableRowElement) || cell == null) return;
  const rows = event.currentTarget.tBodies[0]?.rows;
  const next = rows?.[row.sectionRowIndex + step[0]]?.cells[cell.cellIndex + step[1]];
  const target = next?.querySelector<HTMLButtonElement>('button.pair');
  if (target == null) return;
  event.preventDefault();
  target.focus();
}

export function PairTable({
  view,
  caption,
}: {
  readonly view: PairView;
  readonly caption: string;
}) {
  const { rows, columns, results, wishes, system, chosen, onChoose } = view;
  const wayIn = chosen?.key ?? view.pairs[0]?.key;
  return (
    <div className="pair-table">
      <table onKeyDown={moveFocus}>
        <caption>{caption}</caption>
        <thead>
          <tr>
            <th scope="col">
              Drive line<span className="about">bore to scale</span>
            </th>
            {columns.map((column) => (
              <th scope="col" key={column.key}>
                {column.name}
                <span className="about">
                  {[...(column.isOnSheet ? ['on the sheet'] : []), column.detail]
                    .filter((part) => part !== '')
                    .join(', ')}
                </span>
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key}>
              <th scope="row">
                <RowName row={row} view={view} />
                {row.opened !== undefined && (
                  <button type="button" className="take-out" onClick={() => view.onRemove(row)}>
                    Take out
                    <span className="for-ears"> {[row.name, ...row.details].join(', ')}</span>
                  </button>
                )}
              </th>
              {columns.map((column) => {
                const pair = pairOf(row, column);
                const isChosen = pair.key === chosen?.key;
                return (
                  <td key={column.key} className={isChosen ? 'chosen' : undefined}>
                    <button
                      type="button"
                      className="pair"
                      aria-pressed={isChosen}
                      tabIndex={pair.key === wayIn ? 0 : -1}
                      onClick={() => onChoose(pair)}
                    >
                      <PairCell
                        cell={cellOf(results.get(pair.key), wishes, system)}
                        name={pairName(pair)}
                      />
                    </button>
                  </td>
                );
              })}
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}

function PairCell({ cell, name }: { readonly cell: Cell | undefined; readonly name: string }) {
  if (cell === undefined) {
    return (
      <>
        <VerdictMark kind="notEnoughYet" width={36} />
        <span className="note">
          not run yet<span className="for-ears">: {name}</span>
        </span>
      </>
    );
  }
  return (
    <>
      <VerdictMark kind={cell.kind} width={36} />
      <span className={`figure ${cell.isFigure ? '' : wordTone(cell.kind)}`} aria-hidden="true">
        {cell.figure}
      </span>
      <span className="note" aria-hidden="true">
        {cell.note}
      </span>
      <span className="for-ears">
        {name}: {cell.spoken}
      </span>
    </>
  );
}
