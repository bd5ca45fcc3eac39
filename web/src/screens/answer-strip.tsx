/** The answer in one line at the foot of the screen, while the answer itself is out of sight: fields and answer stay together. */
import { useEffect, useMemo, useState } from 'react';
import { newestAnswer } from '../answer/site-answer.ts';
import { answerInWords } from '../answer/words.ts';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { VerdictMark, wordTone } from '../marks/verdict-mark.tsx';

export function AnswerStrip() {
  const { answer, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const shown = useStore(answer, newestAnswer);
  const phase = useStore(answer, (state) => state.phase);
  const lacking = useStore(
    answer,
    (state) => state.problems.filter(({ kind }) => kind === 'missing').length,
  );
  const words = useMemo(
    () => (shown === undefined ? undefined : answerInWords(shown, system)),
    [shown, system],
  );
  const isAnswerSeen = useIsSeen('answer');
  if (isAnswerSeen || (shown === undefined && phase !== 'refused')) return null;
  const isOpenQuestion = phase === 'refused';
  const kind = isOpenQuestion || shown === undefined ? 'notEnoughYet' : shown.answer.verdict.kind;
  return (
    <aside className="answer-strip no-print" aria-label="The answer in one line">
      <a href="#answer">
        <VerdictMark kind={kind} width={44} />
        {isOpenQuestion || words === undefined ? (
          <strong>
            {lacking > 0 ? `${lacking} more to fill in` : 'Something cannot be right'}
          </strong>
        ) : (
          <>
            <strong className={wordTone(kind)}>{words.verdict}</strong>
            {words.amount !== undefined && (
              <span className="amount keep">{words.amount.inWords}</span>
            )}
          </>
        )}
      </a>
    </aside>
  );
}

function useIsSeen(id: string): boolean {
  const [isSeen, setSeen] = useState(true);
  useEffect(() => {
    const element = document.getElementById(id);
    if (element === null) return;
    // A busy page hands over several looks at once: the last one counts.
    const see = (looks: readonly IntersectionObserverEntry[]): void =>
      setSeen(looks.at(-1)?.isIntersecting ?? true);
    const observer = new IntersectionObserver(see, {
      // Seen means its first lines: the word and the number.
      rootMargin: '0px 0px -120px 0px',
    });
    observer.observe(element);
    return () => observer.disconnect();
  }, [id]);
  return isSeen;
}
