/** The months that differ: what the source gives, and what is asked as a share of the usual. An empty box is the usual. */
import { MONTHS, type Month } from '@fallwright/engine';
import { monthName } from '@fallwright/papers';
import { readQuantity } from '@fallwright/units';
import { useId } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { fieldId } from '../fields/field-ids.ts';
import { entryOf, originOf, textOf } from '../state/entry.ts';
import type { Path, SiteDocument } from '../state/site-document.ts';
import { pathText, valueAt, withValue } from '../state/site-document.ts';
import { readCount } from './bare-count.ts';
import { Group } from './group.tsx';
import { needPart, withNeedPart } from './need-entry.ts';
import type { Checked } from './use-checked-box.ts';
import { useCheckedBox } from './use-checked-box.ts';
import { withUnitOfOthers } from './with-unit.ts';

type Column = 'gives' | 'asks';

const pathOf = (column: Column, month: Month): Path =>
  column === 'gives' ? ['source', 'months', month] : ['demand', 'months', month];

export function MonthTable() {
  const { place } = useNotebook();
  const isUsed = useStore(place, ({ document, unread }) =>
    [pathOf('gives', 'jan'), pathOf('asks', 'jan')].some(
      (path) =>
        valueAt(document, path.slice(0, 2)) !== undefined ||
        Object.keys(unread).some((key) => key.startsWith(pathText(path.slice(0, 2)))),
    ),
  );
  const usual = useStore(place, ({ document }) =>
    textOf(
      valueAt(document, ['source', 'flow']) ?? valueAt(document, ['source', 'inflow']),
    ).replace(/\s*(±|\+\/?-).*$/, ''),
  );
  const name = useId();
  return (
    <Group title="Month by month" isUsed={isUsed}>
      <p id={name} className="note">
        Only months that differ. The keys up and down go from month to month.
      </p>
      <table className="month-table" aria-labelledby={name}>
        <thead>
          <tr>
            <th scope="col">
              <span className="for-ears">month</span>
            </th>
            <th scope="col">source gives</th>
            <th scope="col">need, times the usual</th>
          </tr>
        </thead>
        <tbody>
          {MONTHS.map((month, index) => (
            <tr key={month}>
              <th scope="row">
                <abbr title={monthName(index)}>{monthName(index).slice(0, 3)}</abbr>
              </th>
              <MonthCell column="gives" index={index} month={month} placeholder={usual} />
              <MonthCell column="asks" index={index} month={month} placeholder="1" />
            </tr>
          ))}
        </tbody>
      </table>
    </Group>
  );
}

function MonthCell({
  column,
  month,
  index,
  placeholder,
}: {
  readonly column: Column;
  readonly month: Month;
  readonly index: number;
  readonly placeholder: string;
}) {
  const { place, answer } = useNotebook();
  const path = pathOf(column, month);
  const called =
    column === 'gives' ? `the yield in ${monthName(index)}` : `the need in ${monthName(index)}`;
  const { box, fault, isInside } = useCheckedBox({
    path,
    called,
    ...COLUMNS[column](path, called),
    ...(column === 'gives' && {
      mend: (text) => withUnitOfOthers(text, flowsIn(place.get().document), 'sourceFlow'),
    }),
  });
  const problem = useStore(answer, (state) =>
    state.problems.find(({ kind, field }) => kind !== 'missing' && field === pathText(path)),
  );
  const told = fault ?? (isInside ? undefined : problem?.message);
  const id = fieldId(path);
  return (
    <td className={told === undefined ? 'field' : 'field wrong'}>
      <input
        {...box}
        id={id}
        aria-label={`${monthName(index)}, ${column === 'gives' ? 'source gives' : 'need, times the usual'}`}
        aria-invalid={told !== undefined}
        aria-describedby={told === undefined ? undefined : `${id}-fault`}
        inputMode={column === 'asks' ? 'decimal' : undefined}
        placeholder={placeholder}
        onKeyDown={(event) => {
          const step = { ArrowUp: -1, ArrowDown: 1, Enter: 1 }[event.key];
          const next = step === undefined ? undefined : MONTHS[index + step];
          if (next === undefined) return;
          event.preventDefault();
          const other = window.document.getElementById(fieldId(pathOf(column, next)));
          if (other instanceof HTMLInputElement) other.select();
        }}
      />
      {told !== undefined && (
        <p id={`${id}-fault`} className="fault">
          {told}
        </p>
      )}
    </td>
  );
}

/** Flows that stand beside a month: those of the other months, and the usual one. */
function flowsIn(document: SiteDocument): readonly string[] {
  const usual = [valueAt(document, ['source', 'inflow']), valueAt(document, ['source', 'flow'])];
  const months = MONTHS.map((month) => valueAt(document, ['source', 'months', month]));
  return [...usual, ...months].map(textOf);
}

const COLUMNS = {
  gives: (path: Path, called: string) => ({
    check: (text: string, before: Parameters<typeof originOf>[0]): Checked => {
      const read = readQuantity(text, 'sourceFlow', called);
      return read.ok
        ? { ok: true, value: entryOf(text, originOf(before)) }
        : { ok: false, fault: read.problems.map(({ message }) => message).join(' ') };
    },
    read: (document: SiteDocument) => valueAt(document, path),
    write: (document: SiteDocument, value: Parameters<typeof originOf>[0]) =>
      withValue(document, path, value),
  }),
  asks: (path: Path, called: string) => ({
    check: (text: string): Checked => readCount(text, called, '1.2'),
    read: (document: SiteDocument) => needPart(document, path.slice(1)),
    write: (document: SiteDocument, value: Parameters<typeof originOf>[0]) =>
      withNeedPart(document, path.slice(1), value),
  }),
} as const;
