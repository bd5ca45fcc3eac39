/** Two tabs changed one place: both values of each field, and a choice. Nothing is saved until it is made. */
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import type { Difference, Side } from '../state/differences.ts';
import { chosenFrom, differencesOf } from '../state/differences.ts';
import type { Conflict } from '../state/keeper.ts';

export function ConflictPanel() {
  const { conflict } = useNotebook();
  const now = useStore(conflict, (state) => state);
  if (now === undefined) return null;
  // Other values from the other tab are another choice.
  return <Choosing key={now.theirs.site.revision} conflict={now} />;
}

function Choosing({ conflict }: { readonly conflict: Conflict }) {
  const { keeper, place } = useNotebook();
  const mine = useStore(place, (state) => state);
  const theirs = conflict.theirs.site;
  const differences = differencesOf(mine, theirs, conflict.base);
  const [chosen, setChosen] = useState<Readonly<Record<string, Side>>>({});
  const sideOf = ({ key, changedBy }: Difference): Side | undefined =>
    chosen[key] ?? (changedBy === 'both' ? undefined : changedBy);
  const choices = differences.flatMap((difference) => {
    const side = sideOf(difference);
    return side === undefined ? [] : [{ difference, side }];
  });
  const open = differences.length - choices.length;
  return (
    <section className="slip conflict no-print" aria-labelledby="conflict-title">
      <h2 id="conflict-title">Another tab changed this place too</h2>
      <p>
        Both are kept. Choose for each field; until then nothing more is saved from this tab. What
        you do not choose stays in the history.
      </p>
      {differences.map((difference) => (
        <fieldset key={difference.key}>
          <legend>
            {difference.label}
            {difference.changedBy !== 'both' && (
              <span className="note">
                {difference.changedBy === 'mine'
                  ? ' changed in this tab only'
                  : ' changed in the other tab only'}
              </span>
            )}
          </legend>
          {(['mine', 'theirs'] as const).map((side) => (
            <label key={side}>
              <input
                type="radio"
                name={`conflict ${difference.key}`}
                checked={sideOf(difference) === side}
                onChange={() => setChosen((before) => ({ ...before, [difference.key]: side }))}
              />
              <span>
                {side === 'mine' ? 'this tab: ' : 'the other tab: '}
                <b>{difference[side] === '' ? 'nothing' : difference[side]}</b>
              </span>
            </label>
          ))}
        </fieldset>
      ))}
      <div className="row">
        <button
          type="button"
          className="button main"
          aria-disabled={open > 0}
          onClick={() => {
            if (open === 0) void keeper.settle(chosenFrom(mine, theirs, choices));
          }}
        >
          Keep what is chosen
        </button>
        <span className="note" role="status">
          {open === 0
            ? ''
            : open === 1
              ? 'One choice is left to make.'
              : `${open} choices are left.`}
        </span>
      </div>
    </section>
  );
}
