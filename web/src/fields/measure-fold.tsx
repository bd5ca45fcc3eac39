/** Measuring stands folded beside the box it fills, and its code comes when it is opened. */
import { lazy, Suspense, useState } from 'react';

const panels = () => import('../measure/panels.ts');

/** Without the code there is no panel, but the place and what was written in it stay. */
function NotFetched() {
  return (
    <span className="note">
      This part could not be fetched. Load the page again where there is a connection; readings are
      kept.
    </span>
  );
}

type Panels = Omit<Awaited<ReturnType<typeof panels>>, 'measuredMetres'>;

function fetched<Name extends keyof Panels>(name: Name) {
  return lazy(() =>
    panels().then(
      (all) => ({ default: all[name] as React.ComponentType<React.ComponentProps<Panels[Name]>> }),
      () => ({ default: NotFetched as React.ComponentType<React.ComponentProps<Panels[Name]>> }),
    ),
  );
}

export const FlowPanel = fetched('FlowPanel');
export const HeightPanel = fetched('HeightPanel');
export const MeasuredFlow = fetched('MeasuredFlow');
export const MeasuredHeight = fetched('MeasuredHeight');
export const FlowBeside = fetched('FlowBeside');
export const HeightBeside = fetched('HeightBeside');

export function WhenFetched({
  meanwhile,
  children,
}: {
  readonly meanwhile?: string;
  readonly children: React.ReactNode;
}) {
  return <Suspense fallback={meanwhile}>{children}</Suspense>;
}

export function MeasureFold({
  summary,
  isOpenAtFirst = false,
  children,
}: {
  readonly summary: string;
  readonly isOpenAtFirst?: boolean;
  readonly children: React.ReactNode;
}) {
  const [isOpen, setOpen] = useState(isOpenAtFirst);
  return (
    <details
      className="more measure"
      open={isOpen}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>{summary}</summary>
      {isOpen && <WhenFetched meanwhile="Opening">{children}</WhenFetched>}
    </details>
  );
}
