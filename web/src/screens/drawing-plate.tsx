/** The drawing on its plate, where points are moved and added, with what the lines under numbers mean. */
import { readQuantity } from '@fallwright/units';
import { useEffect, useId, useMemo, useRef, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import type { Editing } from '../drawing/editing.ts';
import { EditingContext, handleId, LINE_WORDS } from '../drawing/editing.ts';
import { Elevation } from '../drawing/elevation.tsx';
import { elevationOf } from '../drawing/elevation-of.ts';
import { MOST_HANDLES } from '../drawing/handles.ts';
import { useMeasuredMetres } from '../fields/measured-metres.ts';
import type { PointPlace } from '../profile/line-points.ts';
import { LINES, linePoints } from '../profile/line-points.ts';
import {
  pointAdded,
  pointDragged,
  pointMovedByKey,
  pointPulled,
  pointTakenOut,
} from '../profile/profile-steps.ts';
import { textOf } from '../state/entry.ts';
import type { LineName } from '../state/lines.ts';
import { putDocument, putWhole } from '../state/place.ts';
import type { Plain, SiteDocument } from '../state/site-document.ts';

export function DrawingPlate({ showPoint }: { readonly showPoint: (place: PointPlace) => void }) {
  const { place, answer, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const shown = useStore(answer, (state) => state.shown?.value);
  const document = useStore(place, (state) => state.document);
  const [preview, setPreview] = useState<SiteDocument>();
  const [inHand, setInHand] = useState<PointPlace>();
  const focus = useFocusWhenDrawn();
  const hintId = useId();
  const seen = preview ?? document;
  const drawn = useMemo(
    () =>
      shown === undefined
        ? undefined
        : elevationOf(shown, {
            document: seen,
            name: textOf(seen.name),
            system,
            written: { fallSpread: spreadOf(seen.fall), liftSpread: spreadOf(seen.lift) },
          }),
    [shown, system, seen],
  );
  const editing: Editing = {
    document,
    system,
    isDragging: preview !== undefined,
    inHand,
    takeInHand: setInHand,
    preview: setPreview,
    putPoint: (next, at, how) => {
      place.update((state) => STEPS[how](state, next, at));
      if (how === 'added') focus(handleId(at));
    },
    takeOut: (at) => {
      place.update((state) => pointTakenOut(state, at));
      setInHand(undefined);
      const left = linePoints(place.get().document, at.line);
      const next = left.find(({ pipe, index }) => pipe === at.pipe && index >= at.index);
      const nearest = next ?? left.at(-1);
      focus(nearest === undefined ? adderId(at.line) : handleId(nearest));
    },
    putLevel: (next, which, how) =>
      place.update((state) => {
        if (next === state.document) return state;
        const { [which]: _read, ...unread } = state.unread;
        const called = `the ${which}`;
        return how === 'dragged'
          ? putWhole(state, { document: next, unread }, called)
          : putDocument(state, { path: [which], called, document: next });
      }),
    showInTable: showPoint,
    hintId,
  };
  return (
    <figure className="plate" aria-label="The place in elevation">
      {drawn === undefined ? (
        <div className="empty">
          <p>The drawing appears here as soon as fall, lift, water and drive pipe are known.</p>
        </div>
      ) : (
        <EditingContext value={editing}>
          <Elevation {...drawn} />
          <p id={hintId} hidden>
            Arrow keys move it, with Shift further. Enter shows it in the table, Delete takes it
            out.
          </p>
        </EditingContext>
      )}
      <figcaption>
        <span className="firmness">
          Line under a number: <span className="firm measured">measured</span>
          <span className="firm stated">stated</span>
          <span className="firm table">from a table</span>
          <span className="firm assumed">assumed</span>
        </span>
        {drawn !== undefined && (
          <span className="drawing-tools">
            {captionOf(seen, drawn.place)} Add a point to the
            {LINES.map((line) => (
              <AddPoint key={line} line={line} onAdded={(at) => focus(handleId(at))} />
            ))}
          </span>
        )}
      </figcaption>
    </figure>
  );
}

const STEPS = { dragged: pointDragged, byKey: pointMovedByKey, added: pointPulled } as const;

const adderId = (line: LineName): string => `add-point-${line}`;

function AddPoint({
  line,
  onAdded,
}: {
  readonly line: LineName;
  readonly onAdded: (place: PointPlace) => void;
}) {
  const { place, settings } = useNotebook();
  const measured = useMeasuredMetres(line === 'drive' ? 'fall' : 'lift');
  const add = (): void => {
    const added = pointAdded(place.get(), line, settings.get().system, measured);
    // A line whose length is only assumed has no points of its own: its boxes say what to write first.
    if (added === undefined) {
      window.location.hash = line;
      return;
    }
    place.update(() => added.state);
    onAdded(added.place);
  };
  return (
    <button
      type="button"
      id={adderId(line)}
      className="add-point"
      aria-label={`Add a point to the ${LINE_WORDS[line]}`}
      onClick={add}
    >
      {LINE_WORDS[line]}
    </button>
  );
}

function captionOf(
  document: SiteDocument,
  place: { readonly isDriveSurveyed: boolean; readonly isDeliverySurveyed: boolean },
): string {
  const long = LINES.filter((line) => linePoints(document, line).length > MOST_HANDLES);
  const parts = [
    place.isDeliverySurveyed && place.isDriveSurveyed
      ? ''
      : 'Lines are drawn straight where no profile is known.',
    long.length === 0
      ? ''
      : `Of the ${long.map((line) => LINE_WORDS[line]).join(' and the ')} the crests, sags and some points between can be moved here; all stand in its table.`,
    'Touch a part to change it; drag a point or a level to move it.',
  ];
  return parts.filter((part) => part !== '').join(' ');
}

/** Focus goes to what has only just been drawn. */
function useFocusWhenDrawn(): (id: string) => void {
  const wanted = useRef<string>(undefined);
  useEffect(() => {
    if (wanted.current === undefined) return;
    const element = document.getElementById(wanted.current);
    if (element === null) return;
    wanted.current = undefined;
    element.focus();
  });
  return (id) => {
    wanted.current = id;
  };
}

function spreadOf(entry: Plain | undefined): number | undefined {
  const read = readQuantity(textOf(entry), 'height');
  return read.ok ? read.value.spread : undefined;
}
