/** A pipe cut across, its bore and wall to one scale for the whole table; metal, plastic and hose told apart by their walls. */
import type { MaterialName } from '@fallwright/engine';
import type { DriveRow } from './drive-rows.ts';

const METALS: ReadonlySet<MaterialName> = new Set([
  'steel',
  'galvanisedSteel',
  'castIron',
  'copper',
]);

export function BoreSection({
  pipe,
  widest,
}: {
  readonly pipe: DriveRow['pipe'];
  /** Outer width of the widest pipe in the table, in m. */
  readonly widest: number;
}) {
  if (pipe === undefined) return <span aria-hidden="true" />;
  const scale = 16 / (widest / 2);
  const bore = (pipe.innerDiameter / 2) * scale;
  const outer = (pipe.innerDiameter / 2 + pipe.wallThickness) * scale;
  const matter = METALS.has(pipe.material)
    ? 'metal'
    : pipe.material.endsWith('Hose')
      ? 'hose'
      : 'plastic';
  return (
    <svg
      className={`bore-section ${matter}`}
      width="34"
      height="34"
      viewBox="0 0 34 34"
      aria-hidden="true"
      focusable="false"
    >
      <circle className="wall" cx="17" cy="17" r={outer} />
      <circle className="bore" cx="17" cy="17" r={bore} />
    </svg>
  );
}

export function outerWidth(pipe: DriveRow['pipe']): number {
  return pipe === undefined ? 0 : pipe.innerDiameter + 2 * pipe.wallThickness;
}
