/** What came of the readings: a figure with its spread, how it came about, and what speaks against it. */
import { Firm } from '../fields/origin-choice.tsx';
import type { Result } from './results.ts';

export function ResultLines({
  result,
  name,
  isBegun,
}: {
  readonly result: Result;
  /** What the figure is: `This measurement`. */
  readonly name: string;
  /** Something was written: now it is worth saying what lacks. */
  readonly isBegun: boolean;
}) {
  return (
    <div className="measure-result" aria-live="polite">
      {result.kind === 'known' ? (
        <>
          <p className="figure">
            <span className="for-ears">{name}: </span>
            <Firm origin="measured">{result.figure}</Firm>
          </p>
          <p>{result.how}</p>
          <Doubts doubts={result.doubts} />
        </>
      ) : (
        isBegun &&
        result.faults.map((fault) => (
          <p key={fault} className="waits">
            {fault}
          </p>
        ))
      )}
    </div>
  );
}

export function Doubts({ doubts }: { readonly doubts: readonly string[] }) {
  if (doubts.length === 0) return null;
  return (
    <ul className="doubts">
      {doubts.map((doubt) => (
        <li key={doubt}>{doubt}</li>
      ))}
    </ul>
  );
}
