/** What stands under a box whose value was measured: the figure with its spread, or the readings beside what was written. */
import { useNotebook } from '../app/notebook.ts';
import { Firm } from '../fields/origin-choice.tsx';
import type { FlowName, HeightName } from '../state/measured-entry.ts';
import { hasReadings, withWrittenHeight, writtenHeight } from '../state/measured-entry.ts';
import { dropUnread, putDocument } from '../state/place.ts';
import type { Path, SiteDocument } from '../state/site-document.ts';
import { valueAt, withValue } from '../state/site-document.ts';
import { useDocument, useSystem } from './edit.ts';
import { Doubts } from './result.tsx';
import { flowContradiction, flowResult, heightContradiction, heightResult } from './results.ts';

/** In an empty box of the flow. */
export function MeasuredFlow() {
  const result = flowResult(useDocument(), useSystem());
  if (result === undefined) return <>measured, not finished yet</>;
  return <Figure figure={result.figure} how={result.how} />;
}

/** In an empty box of a height. */
export function MeasuredHeight({ height }: { readonly height: HeightName }) {
  const { result } = heightResult(useDocument(), height, useSystem());
  if (result.kind === 'waits') return <>measured, not finished yet</>;
  return <Figure figure={result.figure} how={result.how} />;
}

function Figure({ figure, how }: { readonly figure: string; readonly how: string }) {
  return (
    <>
      <Firm origin="measured">{figure}</Firm> {how}
    </>
  );
}

/** Under a flow that was written although there are readings. */
export function FlowBeside({ name }: { readonly name: FlowName }) {
  const document = useDocument();
  const system = useSystem();
  const path = ['source', name];
  const result = flowResult(document, system);
  if (result === undefined || valueAt(document, path) === undefined) return null;
  return (
    <Beside
      figure={result.figure}
      doubts={flowContradiction(document, name, system)}
      path={path}
      called={`using the measured ${name}`}
      without={(from) => withValue(from, path, undefined)}
    />
  );
}

/** Under a height that was written although there are readings. */
export function HeightBeside({ height }: { readonly height: HeightName }) {
  const document = useDocument();
  const system = useSystem();
  const { result } = heightResult(document, height, system);
  const isBoth = hasReadings(document, height) && writtenHeight(document, height) !== undefined;
  if (result.kind === 'waits' || !isBoth) return null;
  return (
    <Beside
      figure={result.figure}
      doubts={heightContradiction(document, height, system)}
      path={[height]}
      called={`using the measured ${height}`}
      without={(from) => withWrittenHeight(from, height, undefined)}
    />
  );
}

function Beside({
  figure,
  doubts,
  path,
  called,
  without,
}: {
  readonly figure: string;
  readonly doubts: readonly string[];
  readonly path: Path;
  readonly called: string;
  readonly without: (document: SiteDocument) => SiteDocument;
}) {
  const { place } = useNotebook();
  return (
    <div className="beside">
      <p>
        Measured as <Firm origin="measured">{figure}</Firm>; the written one above is used.
      </p>
      <Doubts doubts={doubts} />
      <button
        type="button"
        className="button plain"
        onClick={() =>
          place.update((state) =>
            putDocument(dropUnread(state, path), {
              path,
              called,
              document: without(state.document),
            }),
          )
        }
      >
        Use the measured one
      </button>
    </div>
  );
}
