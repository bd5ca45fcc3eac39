/** The answer: a mark, a word, the one great number, the reason with its numbers, and the facts behind it. */
import { useMemo } from 'react';
import { factsOf } from '../answer/facts.ts';
import type { SiteAnswer } from '../answer/site-answer.ts';
import { newestAnswer, pressuresBefore } from '../answer/site-answer.ts';
import { answerInWords, inSpeech } from '../answer/words.ts';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { VerdictMark, wordTone } from '../marks/verdict-mark.tsx';
import { DeliveryAxis } from './delivery-axis.tsx';
import { Needs } from './needs.tsx';

export function AnswerPanel() {
  const { answer, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const shown = useStore(answer, newestAnswer);
  return (
    <section className="answer" id="answer" aria-label="Answer">
      <Needs hasAnswer={shown !== undefined} />
      {shown !== undefined && <GivenAnswer shown={shown} system={system} />}
    </section>
  );
}

function GivenAnswer({
  shown,
  system,
}: {
  readonly shown: SiteAnswer;
  readonly system: 'metric' | 'us';
}) {
  const { answer, place } = useNotebook();
  const phase = useStore(answer, (state) => state.phase);
  const changed = useStore(place, (state) => state.lastChanged);
  const words = useMemo(() => answerInWords(shown, system), [shown, system]);
  const before = useStore(answer, pressuresBefore);
  const facts = useMemo(
    () => factsOf(shown.answer, shown.installation, system, before),
    [shown, system, before],
  );
  const sure = useSureness();
  const isStale = phase === 'slow' || phase === 'refused' || phase === 'failed';
  const { kind } = shown.answer.verdict;
  return (
    <div className={isStale ? 'answer-body stale' : 'answer-body'}>
      {isStale && (
        <p className="stale-word">
          {changed === undefined ? 'Before the last change' : `Before ${changed} was changed`}
          {phase === 'slow' && '; running again'}
        </p>
      )}
      <div className="says">
        <VerdictMark kind={kind} width={88} />
        <h2 className={`word ${wordTone(kind)}`}>{words.verdict}</h2>
      </div>
      {words.amount !== undefined && (
        <>
          <p className="great">
            <b>{words.amount.figure}</b>
            <span>{words.amount.unit}</span>
          </p>
          <DeliveryAxis amount={words.amount} band={sure?.value} system={system} />
        </>
      )}
      {sure === undefined ? (
        <p className="how-sure note">How sure it is: being worked out …</p>
      ) : (
        <HowSure lines={sure.value.words[system]} />
      )}
      <p>{words.reason}</p>
      <dl className="facts">
        {facts.map((fact) => (
          <div key={fact.name} className={fact.isOld === true ? 'of-before' : undefined}>
            <dt>{fact.name}</dt>
            <dd className={fact.isDanger === true ? 'of-alarm' : undefined}>
              {fact.value}
              {fact.note !== undefined && <small>{fact.note}</small>}
            </dd>
          </div>
        ))}
      </dl>
      {words.behind !== '' && <p className="behind">{words.behind}</p>}
      {words.start !== '' && (
        <p className="behind">
          <strong>To start it.</strong> {words.start}
        </p>
      )}
    </div>
  );
}

/** How sure it is, while it belongs to the answer that is shown. */
function useSureness() {
  const { answer, howSure } = useNotebook();
  const siteText = useStore(answer, ({ early, shown }) =>
    early === undefined ? shown?.siteText : undefined,
  );
  const sure = useStore(howSure, (state) => state);
  return sure?.siteText === siteText ? sure : undefined;
}

/** The band in one sentence; what lies behind it on request. */
function HowSure({ lines }: { readonly lines: readonly string[] }) {
  const [chance, band, ...others] = lines;
  const [first, ...rest] = band?.startsWith('Likely') === true ? [band, chance, ...others] : lines;
  return (
    <details className="how-sure">
      <summary>{first}</summary>
      <ul>{rest.map((line) => line !== undefined && <li key={line}>{line}</li>)}</ul>
    </details>
  );
}

/** Tells those who listen how things stand, once they have settled: the answer, what is lacking, or what cannot be. */
export function SpokenAnswer() {
  const { answer, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const state = useStore(answer, (all) => all);
  return (
    <p className="for-ears" role="status">
      {inSpeech(state, system)}
    </p>
  );
}
