/** The drawing on its plate, with what the lines under numbers mean. */
import { readQuantity } from '@fallwright/units';
import { useMemo } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Elevation } from '../drawing/elevation.tsx';
import { elevationOf } from '../drawing/elevation-of.ts';
import { textOf } from '../state/entry.ts';
import type { Plain } from '../state/site-document.ts';

export function DrawingPlate() {
  const { place, answer, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const shown = useStore(answer, (state) => state.shown?.value);
  const document = useStore(place, (state) => state.document);
  const drawn = useMemo(
    () =>
      shown === undefined
        ? undefined
        : elevationOf(shown, {
            name: textOf(document.name),
            system,
            written: { fallSpread: spreadOf(document.fall), liftSpread: spreadOf(document.lift) },
          }),
    [shown, system, document.name, document.fall, document.lift],
  );
  return (
    <figure className="plate" aria-label="The place in elevation">
      {drawn === undefined ? (
        <div className="empty">
          <p>The drawing appears here as soon as fall, lift, water and drive pipe are known.</p>
        </div>
      ) : (
        <Elevation {...drawn} />
      )}
      <figcaption>
        <span className="firmness">
          Line under a number: <span className="firm measured">measured</span>
          <span className="firm stated">stated</span>
          <span className="firm table">from a table</span>
          <span className="firm assumed">assumed</span>
        </span>
        {drawn !== undefined && (
          <span>
            {drawn.place.isDeliverySurveyed
              ? ''
              : 'Lines are drawn straight where no profile is known. '}
            Touch a part to change it.
          </span>
        )}
      </figcaption>
    </figure>
  );
}

function spreadOf(entry: Plain | undefined): number | undefined {
  const read = readQuantity(textOf(entry), 'height');
  return read.ok ? read.value.spread : undefined;
}
