import { formatQuantity } from '@fallwright/units';
import { BoreSection, outerWidth } from './bore-section.tsx';
import type { DriveRow } from './drive-rows.ts';
import type { PairView } from './pair-view.ts';

/** A drive line as its row begins: the pipe cut across, its name, and what tells it from others. */
export function RowName({ row, view }: { readonly row: DriveRow; readonly view: PairView }) {
  const widest = Math.max(...view.rows.map(({ pipe }) => outerWidth(pipe)));
  const about = [
    ...(row.isOnSheet ? ['on the sheet'] : []),
    ...row.details,
    ...(row.pipe === undefined
      ? []
      : [`bore ${formatQuantity(row.pipe.innerDiameter, 'bore', view.system)}`]),
  ];
  return (
    <span className="row-name">
      <BoreSection pipe={row.pipe} widest={widest} />
      <span className="name">{row.name}</span>
      <span className="about">{about.join(', ')}</span>
    </span>
  );
}
