/** The chosen pair in full: verdict, amount, reason, beats and pressures, and the one action that puts it on the sheet. */
import type { System } from '@fallwright/units';
import { useMemo } from 'react';
import { factsOf } from '../answer/facts.ts';
import type { SiteAnswer } from '../answer/site-answer.ts';
import { answerInWords } from '../answer/words.ts';
import { VerdictMark, wordTone } from '../marks/verdict-mark.tsx';
import type { Pair } from './pairs.ts';
import { pairName } from './pairs.ts';
import type { PairAnswer } from './use-sweep.ts';

export function PairDetails({
  pair,
  told,
  system,
  isAdopted,
  onAdopt,
  onUndo,
}: {
  readonly pair: Pair;
  readonly told: PairAnswer | undefined;
  readonly system: System;
  /** Whether the last thing that was done to the sheet was to adopt this pair. */
  readonly isAdopted: boolean;
  readonly onAdopt: () => void;
  readonly onUndo: () => void;
}) {
  const isOnSheet = pair.row.isOnSheet && pair.column.isOnSheet;
  const isNew = told?.key === pair.key;
  return (
    <section className="pair-details" id="chosen-pair" aria-label="The chosen pair">
      <h3>{pairName(pair)}</h3>
      <div className={isNew ? 'told' : 'told waiting'}>
        {told?.answer !== undefined && isNew && <Told answer={told.answer} system={system} />}
        {!isNew && <p className="note">Working it out …</p>}
        {isNew && told.trouble !== undefined && <p className="of-alarm">{told.trouble}</p>}
      </div>
      <div className="adopting">
        {isOnSheet ? (
          <p role="status">
            <strong>This pair is on the sheet.</strong>
          </p>
        ) : (
          <button
            type="button"
            className="button main"
            disabled={isNew && told.trouble !== undefined}
            onClick={onAdopt}
          >
            Adopt this
          </button>
        )}
        {isAdopted && (
          <button type="button" className="button" onClick={onUndo}>
            Undo
          </button>
        )}
      </div>
    </section>
  );
}

/** The facts that tell pairs apart; the sheet has them all. */
const ASKED: ReadonlySet<string> = new Set([
  'beats',
  'water taken',
  'runs to waste',
  'line can reach',
  'valve shuts at',
  'start',
  'peak in the drive line',
  'Joukowsky bound',
  'over its rating',
]);

function Told({ answer, system }: { readonly answer: SiteAnswer; readonly system: System }) {
  const words = useMemo(() => answerInWords(answer, system), [answer, system]);
  const facts = useMemo(
    () => factsOf(answer.answer, answer.installation, system).filter(({ name }) => ASKED.has(name)),
    [answer, system],
  );
  const { kind } = answer.answer.verdict;
  return (
    <>
      <p className="says">
        <VerdictMark kind={kind} width={66} />
        <strong className={wordTone(kind)}>{words.verdict}</strong>
        {words.amount !== undefined && (
          <span>
            <b>{words.amount.figure}</b> {words.amount.unit}
          </span>
        )}
      </p>
      <p>{words.reason}</p>
      <dl className="facts">
        {facts.map((fact) => (
          <div key={fact.name}>
            <dt>{fact.name}</dt>
            <dd className={fact.isDanger === true ? 'of-alarm' : undefined}>
              {fact.value}
              {fact.note !== undefined && <small>{fact.note}</small>}
            </dd>
          </div>
        ))}
      </dl>
    </>
  );
}
