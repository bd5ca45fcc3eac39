/** Where a number comes from: the line under it says it, a word says it again, and four choices change it. */
import { useId, useState } from 'react';
import type { Origin } from '../state/entry.ts';
import { Choice } from './choice.tsx';

const ORIGIN_OPTIONS = [
  { value: 'measured', label: 'measured', className: 'measured' },
  { value: 'stated', label: 'stated', className: 'stated' },
  { value: 'table', label: 'table', className: 'table' },
  { value: 'assumed', label: 'assumed', className: 'assumed' },
] as const satisfies readonly { value: Origin; label: string; className: string }[];

export function originWord(origin: Origin): string {
  return origin === 'table' ? 'from a table' : origin;
}

/** The number as it was read, on the line that tells how firm it is. */
export function Firm({
  origin,
  children,
}: {
  readonly origin: Origin;
  readonly children: React.ReactNode;
}) {
  return (
    <span className={`firm ${origin}`}>
      {children}
      <span className="for-ears"> ({originWord(origin)})</span>
    </span>
  );
}

/** A word that opens the four choices. */
export function useOriginChoice({
  origin,
  label,
  onChoose,
}: {
  readonly origin: Origin;
  readonly label: string;
  readonly onChoose: (origin: Origin) => void;
}) {
  const [isOpen, setOpen] = useState(false);
  const id = useId();
  return {
    opener: (
      <button
        type="button"
        className="origin-opener"
        aria-expanded={isOpen}
        aria-controls={isOpen ? id : undefined}
        aria-label={`${label}: ${originWord(origin)}. Say where it comes from`}
        onClick={() => setOpen(!isOpen)}
      >
        {originWord(origin)}
      </button>
    ),
    choices: isOpen && (
      <div id={id}>
        <Choice
          legend={`Where ${label} comes from`}
          className="origin-choice"
          options={ORIGIN_OPTIONS}
          value={origin}
          onChoose={onChoose}
        />
      </div>
    ),
  };
}
