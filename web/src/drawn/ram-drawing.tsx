/** The ram in section to scale, as wide as there is room; on a phone numbers stand in it and the words in a list. */
import type { Ram } from '@fallwright/engine';
import { ramSection } from '@fallwright/papers';
import type { System } from '@fallwright/units';
import { useMemo } from 'react';
import { useWidth } from '../beat/use-width.ts';
import { Drawn } from './drawn.tsx';

export function RamDrawing({ ram, system }: { readonly ram: Ram; readonly system: System }) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const section = useMemo(
    () => (width === 0 ? undefined : ramSection(ram, { width, system })),
    [ram, width, system],
  );
  return (
    <figure className="plate ram-drawing">
      <div ref={ref} className="ram-drawing-sheet">
        {section !== undefined && <Drawn drawing={section} name={section.spoken} />}
      </div>
      {section !== undefined && section.keys.length > 0 && (
        <ol className="drawn-keys">
          {section.keys.map((key, i) => (
            <li key={key}>
              <b aria-hidden="true">{i + 1}</b> {key}
            </li>
          ))}
        </ol>
      )}
      <figcaption>
        <span>
          To scale: bore, seat, stroke, openings and what the vessel holds. Walls, flanges and the
          vessel’s form are drawn as usual.
        </span>
      </figcaption>
    </figure>
  );
}
