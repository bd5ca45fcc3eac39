/** What stands in the fold of a line's points: the table, and how points come into it. */
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import { memo, useEffect, useId, useRef, useState } from 'react';
import type { SiteProblem } from '../answer/site-answer.ts';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { fieldId } from '../fields/field-ids.ts';
import { useMeasuredMetres } from '../fields/measured-metres.ts';
import type { LineName } from '../state/lines.ts';
import { pipesOf } from '../state/lines.ts';
import { pathText } from '../state/site-document.ts';
import { VentButton } from '../walk/vent-button.tsx';
import { ventAt } from '../walk/vents.ts';
import { WalkOpener } from '../walk/walk-opener.tsx';
import { isOutOfOrder } from './change-points.ts';
import type { PointPlace } from './line-points.ts';
import { endHeights, linePoints, pipeSpans, pointPath } from './line-points.ts';
import { PointCell } from './point-cell.tsx';
import type { EndRow, PointRow, ProfileRow } from './profile-rows.ts';
import { profileRows } from './profile-rows.ts';
import { pointAdded, pointsPutInOrder, pointTakenOut } from './profile-steps.ts';
import { writtenMetres } from './written-metres.ts';

const ENDS: Readonly<Record<LineName, Readonly<Record<EndRow['end'], string>>>> = {
  drive: { upper: 'source, follows the fall', lower: 'ram' },
  delivery: { upper: 'ram', lower: 'tank, follows the lift' },
};

export function ProfileBody({
  line,
  toFocus,
  setToFocus,
  walk,
  setWalk,
}: {
  readonly line: LineName;
  /** A point whose boxes are asked for. */
  readonly toFocus: PointPlace | undefined;
  readonly setToFocus: (place: PointPlace | undefined) => void;
  /** A survey file that was dropped on the fold or opened in it. */
  readonly walk: File | undefined;
  readonly setWalk: (file: File | undefined) => void;
}) {
  const { place, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const document = useStore(place, (state) => state.document);
  const measured = useMeasuredMetres(line === 'drive' ? 'fall' : 'lift');
  const table = useRef<HTMLDivElement>(null);

  useEffect(() => {
    if (toFocus === undefined) return;
    const box = window.document.getElementById(fieldId([...pointPath(toFocus), 'height']));
    if (box === null) return;
    box.focus();
    setToFocus(undefined);
  }, [toFocus, setToFocus]);

  const add = (): void => {
    const added = pointAdded(place.get(), line, system, measured);
    if (added === undefined) return;
    place.update(() => added.state);
    setToFocus(added.place);
  };

  const remove = (row: PointPlace): void => {
    place.update((state) => pointTakenOut(state, row));
    table.current?.focus();
  };

  const canAdd =
    pipeSpans(document, line) !== undefined && endHeights(document, line, measured) !== undefined;
  return (
    <div ref={table} tabIndex={-1} className="profile-body">
      <Rows line={line} system={system} measured={measured} remove={remove} />
      <OrderButtons line={line} />
      {canAdd ? (
        <button type="button" className="button plain" onClick={add}>
          Add a point
        </button>
      ) : (
        <p className="note">
          {line === 'drive'
            ? 'Write or measure the fall, and write the length; then points can be added.'
            : 'Write or measure the lift, and write the length; then points can be added.'}
        </p>
      )}
      <WalkOpener line={line} file={walk} setFile={setWalk} />
    </div>
  );
}

function Rows({
  line,
  system,
  measured,
  remove,
}: {
  readonly line: LineName;
  readonly system: System;
  readonly measured: number | undefined;
  readonly remove: (row: PointPlace) => void;
}) {
  const { place, answer } = useNotebook();
  const document = useStore(place, (state) => state.document);
  const problems = useStore(answer, (state) => state.problems);
  const air = useStore(answer, (state) => state.shown?.value.installation.driveLine.pockets);
  const name = useId();
  // The rows keep the same function, so that a key in one box draws one row anew and not all of them.
  const latest = useRef(remove);
  latest.current = remove;
  const [removeRow] = useState(
    () =>
      (row: PointPlace): void =>
        latest.current(row),
  );
  const rows = profileRows(document, line, measured);
  const surface = endHeights(document, line, measured);
  const highest = line === 'drive' ? surface?.upper : surface?.lower;
  const told = problemsByRow(problems, line);
  const ventOf = ({ turn, station = -1 }: PointRow): RowVent => {
    if (turn !== 'crest') return { station, vent: undefined };
    if (ventAt(document, line, station) !== undefined) return { station, vent: 'there' };
    // Over the water that feeds it a vent would draw air in.
    const height = linePoints(document, line).find((point) => point.station === station)?.height;
    const isUnderWater = height !== undefined && highest !== undefined && height < highest;
    return { station, vent: isUnderWater ? 'offered' : undefined };
  };
  let number = 0;
  return (
    <>
      <p id={name} className="note">
        From the upper end of {pipesOf(document, line).length > 1 ? 'each pipe' : 'the pipe'}, and
        above the waste valve’s outlet.
      </p>
      <div className="profile-scroll">
        {/* Laid out as a grid, so the roles are named: some browsers forget them then. */}
        {/* biome-ignore-start lint/a11y/noRedundantRoles: see above */}
        <table role="table" aria-labelledby={name}>
          <thead role="rowgroup">
            <tr role="row">
              <th role="columnheader" scope="col">
                along
              </th>
              <th role="columnheader" scope="col">
                height
              </th>
              <th role="columnheader" scope="col">
                <span className="for-ears">change and take out</span>
              </th>
            </tr>
          </thead>
          <tbody role="rowgroup">
            {rows.map((row) => {
              if (row.kind !== 'point')
                return <FixedRow key={fixedKey(row)} row={row} {...{ line, system }} />;
              number += 1;
              const pocket =
                row.turn === 'crest' && line === 'drive'
                  ? air?.find(({ distance }) => Math.abs(distance - (row.station ?? -1)) < 0.5)
                  : undefined;
              return (
                <Row
                  key={row.key}
                  line={line}
                  pipe={row.pipe}
                  index={row.index}
                  number={number}
                  change={row.change}
                  turn={row.turn}
                  air={pocket?.volume}
                  {...ventOf(row)}
                  problem={told.get(pathText(pointPath(row)))}
                  system={system}
                  remove={removeRow}
                />
              );
            })}
          </tbody>
        </table>
        {/* biome-ignore-end lint/a11y/noRedundantRoles: see above */}
      </div>
    </>
  );
}

const fixedKey = (row: Exclude<ProfileRow, PointRow>): string =>
  row.kind === 'end' ? row.end : `pipe-${row.pipe}`;

function FixedRow({
  row,
  line,
  system,
}: {
  readonly row: Exclude<ProfileRow, PointRow>;
  readonly line: LineName;
  readonly system: System;
}) {
  if (row.kind === 'pipe') {
    return (
      // biome-ignore lint/a11y/noRedundantRoles: the table is laid out as a grid
      <tr role="row" className="of-pipe">
        {/* biome-ignore lint/a11y/noRedundantRoles: the table is laid out as a grid */}
        <th role="rowheader" scope="row">
          pipe {row.pipe + 1}
        </th>
      </tr>
    );
  }
  const written = (metres: number | undefined): string =>
    metres === undefined ? 'not known yet' : writtenMetres(metres, system);
  return (
    // biome-ignore-start lint/a11y/noRedundantRoles: the table is laid out as a grid
    <tr role="row" className="end">
      <td role="cell">{written(row.at)}</td>
      <td role="cell">{written(row.height)}</td>
      <td role="cell" className="reading">
        {ENDS[line][row.end]}
        {row.change !== undefined && `, ${changeInWords(row.change, system)}`}
      </td>
    </tr>
    // biome-ignore-end lint/a11y/noRedundantRoles: the table is laid out as a grid
  );
}

interface RowVent {
  /** Along the whole line. */
  readonly station: number;
  readonly vent: 'there' | 'offered' | undefined;
}

const Row = memo(function Row({
  line,
  pipe,
  index,
  number,
  change,
  turn,
  air,
  station,
  vent,
  problem,
  system,
  remove,
}: PointPlace &
  RowVent & {
    readonly number: number;
    readonly change: number | undefined;
    readonly turn: 'crest' | 'sag' | undefined;
    /** Cubic metres that the answer reckons with at this crest. */
    readonly air: number | undefined;
    readonly problem: string | undefined;
    readonly system: System;
    readonly remove: (row: PointPlace) => void;
  }) {
  const words = [
    change === undefined ? undefined : changeInWords(change, system),
    turn === undefined
      ? undefined
      : turnInWords(turn, { line, air, isVented: vent === 'there' }, system),
  ].filter((part) => part !== undefined);
  return (
    // biome-ignore-start lint/a11y/noRedundantRoles: the table is laid out as a grid
    <tr role="row">
      <PointCell place={{ line, pipe, index }} part="at" number={number} problem={problem} />
      <PointCell place={{ line, pipe, index }} part="height" number={number} problem={undefined} />
      <td role="cell" className="reading">
        <span className={turn === 'crest' ? 'crest' : undefined}>{words.join('; ')}</span>
        {vent !== undefined && (
          <VentButton {...{ line, station, number }} isVented={vent === 'there'} />
        )}
        <button
          type="button"
          className="take-out"
          aria-label={`Take out point ${number}`}
          onClick={() => remove({ line, pipe, index })}
        >
          take out
        </button>
      </td>
    </tr>
    // biome-ignore-end lint/a11y/noRedundantRoles: the table is laid out as a grid
  );
});

/** Judgement: under half a centimetre a pipe is level. */
const LEVEL = 0.005;

export function changeInWords(metres: number, system: System): string {
  if (Math.abs(metres) < LEVEL) return 'level';
  const way = metres > 0 ? 'rises' : 'falls';
  return `${way} ${writtenMetres(Math.abs(metres), system)}`;
}

function turnInWords(
  turn: 'crest' | 'sag',
  {
    line,
    air,
    isVented,
  }: {
    readonly line: LineName;
    readonly air: number | undefined;
    readonly isVented: boolean;
  },
  system: System,
): string {
  if (turn === 'sag') return 'sag';
  if (isVented) return 'crest with a vent';
  if (line === 'delivery') return 'crest: bleed it';
  return air === undefined
    ? 'crest, no air in it'
    : `crest with ${formatQuantity(air, 'smallVolume', system)} of air`;
}

function OrderButtons({ line }: { readonly line: LineName }) {
  const { place } = useNotebook();
  const document = useStore(place, (state) => state.document);
  const pipes = pipesOf(document, line);
  return [...pipes.keys()]
    .filter((pipe) => isOutOfOrder(document, line, pipe))
    .map((pipe) => (
      <button
        key={pipe}
        type="button"
        className="button"
        onClick={() => place.update((state) => pointsPutInOrder(state, line, pipe))}
      >
        Put the points {pipes.length > 1 ? `of pipe ${pipe + 1} ` : ''}in order
      </button>
    ));
}

/** What the reading of the whole place finds wrong with a point, such as one past the end of its pipe. */
function problemsByRow(problems: readonly SiteProblem[], line: LineName): Map<string, string> {
  const told = new Map<string, string>();
  for (const { kind, field, message } of problems) {
    const row = kind === 'missing' ? null : /^\w+\[\d+\]\.profile\[\d+\]/.exec(field);
    if (row !== null && field.startsWith(line) && !told.has(row[0])) told.set(row[0], message);
  }
  return told;
}
