/** Why there is no answer to the newest input: what is still needed, or what cannot be true. */

import { boxFor } from '../answer/boxes.ts';
import type { SiteProblem } from '../answer/site-answer.ts';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { VerdictMark } from '../marks/verdict-mark.tsx';

export function Needs({ hasAnswer }: { readonly hasAnswer: boolean }) {
  const { answer } = useNotebook();
  const { phase, problems, failure } = useStore(answer, (state) => state);
  if (phase === 'failed') {
    return (
      <div className="slip danger" role="alert">
        <p>
          <strong>This place could not be computed.</strong> {failure}. Everything typed is kept.
          Change a value and it is tried again.
        </p>
      </div>
    );
  }
  if (phase !== 'refused') {
    return hasAnswer ? null : <p className="note">Computing the answer …</p>;
  }
  const missing = problems.filter((problem) => problem.kind === 'missing');
  const wrong = problems.filter((problem) => problem.kind !== 'missing');
  return (
    <>
      {missing.length > 0 && (
        <>
          <div className="says">
            <VerdictMark kind="notEnoughYet" width={88} />
            <h2 className="word">Not enough yet</h2>
          </div>
          <p>Still needed for an answer:</p>
          <ul className="still-needed">
            {missing.map((problem) => (
              <li key={`${problem.field} ${problem.message}`}>
                <ProblemLink problem={problem} />
              </li>
            ))}
          </ul>
        </>
      )}
      {wrong.map((problem) => (
        <div key={`${problem.field} ${problem.message}`} className="slip danger">
          <p>{problem.message}</p>
        </div>
      ))}
    </>
  );
}

function ProblemLink({ problem }: { readonly problem: SiteProblem }) {
  const { id, name } = boxFor(problem.field);
  return <a href={`#${id}`}>{name}</a>;
}
