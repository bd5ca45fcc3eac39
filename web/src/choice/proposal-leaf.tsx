/** A finished choice: the front drawn, the picks, one build in full, and everything else with the reason why it lost. */
import { useEffect, useState } from 'react';
import { Link } from 'wouter';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { BuildDetails } from './build-details.tsx';
import type { ChoiceView, ProposalView } from './choice-view.ts';
import { FrontPicture } from './front-picture.tsx';
import type { KeptChoice } from './kept-choice.ts';
import { WhyNot } from './why-not.tsx';

export function ProposalLeaf({
  kept,
  isOld,
}: {
  readonly kept: KeptChoice;
  /** The wish, the place or the lists have changed since. */
  readonly isOld: boolean;
}) {
  const { choice, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const { room } = kept;
  const view = useAsked<ChoiceView>(() => room.look(system), `${system}`);
  const [first] = view?.picks ?? [];
  const key = kept.chosenKey ?? first;
  const proposal = useAsked<ProposalView>(
    key === undefined ? undefined : () => room.proposal(key, system),
    `${key} ${system}`,
  );
  if (view === undefined) return <p className="note">Putting it into words</p>;
  const choose = (chosenKey: string): void =>
    choice.update((now) => (now === undefined ? now : { ...now, chosenKey }));
  return (
    <div className={isOld ? 'proposal is-old' : 'proposal'}>
      {isOld && (
        <p className="note" role="status">
          This was chosen before something was changed. Choose again to have it anew.
        </p>
      )}
      <Provisos view={view} />
      {view.nothing !== undefined ? (
        <NothingWorks view={view} />
      ) : (
        <>
          <div className="front-and-picks">
            <FrontPicture view={view} system={system} chosenKey={key} onChoose={choose} />
            <Picks view={view} chosenKey={key} onChoose={choose} />
          </div>
          {proposal !== undefined && proposal.key === key && (
            <BuildDetails proposal={proposal} isOld={isOld} />
          )}
        </>
      )}
      <WhyNot room={room} system={system} total={view.progress.combinations} />
      <Assumed lines={view.assumptions} />
    </div>
  );
}

/** What a worker answers; the answer before stays until there is a new one. */
function useAsked<Value>(ask: (() => Promise<Value>) | undefined, key: string): Value | undefined {
  const [told, setTold] = useState<Value>();
  // biome-ignore lint/correctness/useExhaustiveDependencies: the key says whether the question is another
  useEffect(() => {
    let isNewest = true;
    ask?.().then(
      (value) => {
        if (isNewest) setTold(() => value);
      },
      () => {},
    );
    return () => {
      isNewest = false;
    };
  }, [key]);
  return told;
}

/** What the proposal rests on and lacks. */
function Provisos({ view }: { readonly view: ChoiceView }) {
  const { hasPrices, hasRange, isPriced, lacks, leftOut, shortfall } = view;
  const lines = [
    ...(shortfall === undefined ? [] : [shortfall]),
    ...(hasRange ? [] : ['The rams are typical ones; what is built may differ.']),
    ...(hasPrices ? [] : ['Without prices builds are compared by water alone.']),
    ...(leftOut.length === 0
      ? []
      : [`Left out because it cannot be read yet: ${leftOut.join(', ')}.`]),
  ];
  return (
    <>
      {lines.length > 0 && (
        <div className="slip provisos">
          {lines.map((line) => (
            <p key={line}>{line}</p>
          ))}
        </div>
      )}
      {hasPrices && !isPriced && lacks.length > 0 && (
        <div className="slip provisos">
          <p>
            <strong>Every build that works lacks a price</strong>, so they are compared by water
            alone. These are missing:
          </p>
          <ul>
            {lacks.slice(0, MOST_LACKS).map((lack) => (
              <li key={lack}>{lack}</li>
            ))}
          </ul>
          <p>
            {lacks.length > MOST_LACKS && `And ${lacks.length - MOST_LACKS} more. `}
            <Link href="/prices">To the price list</Link> or <Link href="/range">to the range</Link>
          </p>
        </div>
      )}
    </>
  );
}

/** Judgement: a list to work through, not to read. */
const MOST_LACKS = 12;

function Picks({
  view,
  chosenKey,
  onChoose,
}: {
  readonly view: ChoiceView;
  readonly chosenKey: string | undefined;
  readonly onChoose: (key: string) => void;
}) {
  const rows = view.picks.flatMap((key) => view.rows.filter((row) => row.key === key));
  return (
    <div className="picks">
      {rows.map((row) => (
        <button
          key={row.key}
          type="button"
          className="pick"
          aria-pressed={row.key === chosenKey}
          onClick={() => onChoose(row.key)}
        >
          <span className="pick-name">
            {capital(row.pickedAs)}
            <Pause />
          </span>
          <span className="pick-figures">
            {row.cost !== '' && (
              <b>
                {row.cost}
                <Pause />
              </b>
            )}
            <b>
              {row.water}
              <Pause />
            </b>
            {row.chance !== '' && (
              <span className="note">
                {row.chance} sure
                <Pause />
              </span>
            )}
          </span>
          <span className="pick-what">
            {row.what}
            <Pause />
          </span>
          <span className="note">{row.nearest}</span>
        </button>
      ))}
    </div>
  );
}

/** Heard between two parts of a button that stand apart to the eye. */
function Pause() {
  return <span className="for-ears">, </span>;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

function NothingWorks({ view }: { readonly view: ChoiceView }) {
  const { misses = [], changes = [] } = view.nothing ?? {};
  return (
    <section className="nothing-works" aria-labelledby="nothing-title">
      <h3 id="nothing-title">Nothing on offer works here</h3>
      <p>What stood in the way, the nearest to working first:</p>
      <ul>
        {misses.map((miss) => (
          <li key={miss}>{miss}</li>
        ))}
      </ul>
      {changes.length > 0 && (
        <>
          <h3>What would have to change</h3>
          <ul>
            {changes.map((change) => (
              <li key={change}>{change}</li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

function Assumed({ lines }: { readonly lines: readonly string[] }) {
  if (lines.length === 0) return null;
  return (
    <details className="more">
      <summary>Taken for granted, because nothing says otherwise ({lines.length})</summary>
      <ul className="assumed">
        {lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </details>
  );
}
