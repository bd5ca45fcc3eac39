/** The form for who and what needs the water, under the thread and as wide: it has more boxes than a part of the thread holds. */
import { lazy, Suspense, useEffect, useRef } from 'react';
import type { Place } from '../state/place.ts';

export const NEED_PANEL = 'need-panel';

interface Form {
  readonly default: React.ComponentType;
}

/** Most places never open it. */
const NeedForm = lazy(() =>
  import('./need-form.tsx').then(
    (part): Form => ({ default: part.NeedForm }),
    (): Form => ({ default: NotFetched }),
  ),
);

function NotFetched() {
  return (
    <p className="note">
      This part could not be fetched. Load the page again where there is a connection; what was
      written is kept.
    </p>
  );
}

/** A text that cannot be read must be found again. */
export function hasWaitingText({ unread }: Place): boolean {
  return Object.keys(unread).some((key) => /^(demand\.|source\.months)/.test(key));
}

export function NeedPanel({
  isAsked,
  close,
}: {
  /** Opened by hand just now: the keyboard goes along. */
  readonly isAsked: boolean;
  readonly close: () => void;
}) {
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    if (!isAsked) return;
    heading.current?.focus({ preventScroll: true });
    heading.current?.scrollIntoView({ block: 'nearest' });
  }, [isAsked]);
  return (
    <section id={NEED_PANEL} className="need-panel" aria-labelledby="need-title">
      <div className="need-head">
        <h2 id="need-title" ref={heading} tabIndex={-1}>
          Who and what needs water
        </h2>
        <button type="button" className="button plain" onClick={close}>
          Close
        </button>
      </div>
      <Suspense fallback={<p className="note">Opening</p>}>
        <NeedForm />
      </Suspense>
    </section>
  );
}
