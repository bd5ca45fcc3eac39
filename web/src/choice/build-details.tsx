/** One build in full: what it gives and how surely, how far it is from each limit, what to buy, and the way onto the sheet. */
import { useId } from 'react';
import { Link } from 'wouter';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { undo } from '../state/place.ts';
import type { ProposalView } from './choice-view.ts';
import { putCalled, putIntoPlace } from './put-into-place.ts';

export function BuildDetails({
  proposal,
  isOld,
}: {
  readonly proposal: ProposalView;
  readonly isOld: boolean;
}) {
  const id = useId();
  const { names, summary, chance, nearestLimit, margins, advice, sizes, missing } = proposal;
  return (
    <section className="build" aria-labelledby={`${id}-title`}>
      <h3 id={`${id}-title`}>{names.length === 0 ? 'Another build' : capital(names.join(', '))}</h3>
      <div className="build-head">
        <div>
          <p className="build-summary">{summary}</p>
          {chance !== undefined && <p>{chance}</p>}
          <p>{nearestLimit}</p>
        </div>
        <Putting proposal={proposal} isOld={isOld} />
      </div>
      {missing.length > 0 && (
        <div className="slip provisos">
          <p>
            <strong>Without a price:</strong> {missing.join('; ')}.{' '}
            <Link href="/prices">To the price list</Link>
          </p>
        </div>
      )}
      <div className="build-columns">
        <div>
          <h4>To spare</h4>
          <dl className="pairs">
            {margins.map(({ what, margin, isTight }) => (
              <div key={what} className={isTight ? 'is-tight' : undefined}>
                <dt>{what}</dt>
                <dd>{margin}</dd>
              </div>
            ))}
          </dl>
        </div>
        <div>
          <h4>Sizes and pressures</h4>
          <dl className="pairs wide">
            {sizes.map(({ what, size }) => (
              <div key={`${what} ${size}`}>
                <dt>{what}</dt>
                <dd>{size}</dd>
              </div>
            ))}
          </dl>
        </div>
      </div>
      {advice.length > 0 && (
        <>
          <h4>Outside what is usual in the trade</h4>
          <ul className="advice">
            {advice.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </>
      )}
      <PartsList proposal={proposal} />
      <p className="note">
        A prediction, not a promise. Prices are those of the list on its day. Local codes and
        licensed practice come first.
      </p>
    </section>
  );
}

const WHY_NOT_PUT = {
  severalRams: 'The sheet holds one ram: a build of several cannot be put there yet.',
  fed: 'The sheet holds no feeder and standpipe yet, so this build cannot be put there.',
} as const;

function Putting({
  proposal,
  isOld,
}: {
  readonly proposal: ProposalView;
  readonly isOld: boolean;
}) {
  const { place } = useNotebook();
  const { putting, what } = proposal;
  const isThere = useStore(place, ({ lastChanged }) => lastChanged === putCalled(what));
  if (putting.kind !== 'site') return <p className="slip putting">{WHY_NOT_PUT[putting.kind]}</p>;
  return (
    <div className="putting">
      {isThere ? (
        <>
          <p role="status">
            <strong>It is on the sheet now.</strong>
          </p>
          <button type="button" className="button" onClick={() => place.update(undo)}>
            Undo
          </button>
        </>
      ) : (
        <>
          <button
            type="button"
            className="button main"
            onClick={() =>
              place.update((state) => putIntoPlace(state, { fields: putting.fields, what }))
            }
          >
            Put this into the place
          </button>
          {isOld && <p className="note">It was chosen before something was changed.</p>}
        </>
      )}
    </div>
  );
}

function PartsList({ proposal }: { readonly proposal: ProposalView }) {
  const { parts, total } = proposal;
  const groups = [...new Set(parts.map(({ group }) => group))];
  const hasMoney = parts.some(({ sum }) => sum !== '');
  return (
    <>
      <h4>What to buy and do</h4>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls on a phone, and the keyboard must reach it */}
      <section className="parts-scroll" tabIndex={0} aria-label="Parts and work">
        <table className="parts">
          <thead>
            <tr>
              <th scope="col">part</th>
              <th scope="col">quantity</th>
              {hasMoney && (
                <>
                  <th scope="col" className="is-number">
                    each
                  </th>
                  <th scope="col" className="is-number">
                    together
                  </th>
                </>
              )}
            </tr>
          </thead>
          {groups.map((group) => (
            <tbody key={group}>
              <tr className="of-group">
                <th scope="rowgroup" colSpan={hasMoney ? 4 : 2}>
                  {group}
                </th>
              </tr>
              {parts
                .filter((row) => row.group === group)
                .map((row) => (
                  <tr key={`${row.what} ${row.note} ${row.quantity}`}>
                    <th scope="row">
                      {row.what}
                      {row.size !== '' && <span className="note"> {row.size}</span>}
                      {row.note !== '' && <span className="note of-part">{row.note}</span>}
                    </th>
                    <td>{row.quantity}</td>
                    {hasMoney && (
                      <>
                        <td className="is-number">{row.each}</td>
                        <td className="is-number">{row.sum}</td>
                      </>
                    )}
                  </tr>
                ))}
            </tbody>
          ))}
          {total !== undefined && (
            <tfoot>
              <tr>
                <th scope="row">Total</th>
                <td />
                <td />
                <td className="is-number">{total}</td>
              </tr>
            </tfoot>
          )}
        </table>
      </section>
    </>
  );
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
