/** What the workshop buys and what its work costs: rows by kind, edited in place, out and in as CSV. */
import './prices.css';
import { useDeferredValue, useEffect, useId, useMemo, useRef, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { UndoButtons } from '../screens/undo-buttons.tsx';
import { SharedDemoSlip, SharedDesk } from '../shared/shared-desk.tsx';
import { textOf } from '../state/entry.ts';
import { putDocument, putValue } from '../state/place.ts';
import { withValue } from '../state/site-document.ts';
import type { PriceFault, RowDocument } from './price-document.ts';
import { currencyIn, freeCode, readPriceDocument, rowsIn } from './price-document.ts';
import { PriceFiles } from './price-files.tsx';
import type { GroupColumn, PriceGroup } from './price-groups.ts';
import { groupOf, PRICE_GROUPS, unitOf } from './price-groups.ts';

/** Faults stand at their rows, not at fields of their own. */
const noProblems = (): readonly never[] => [];

export function PricesScreen() {
  return (
    <SharedDesk
      kind="prices"
      title="Price list"
      problemsOf={noProblems}
      whenNone="No prices yet. With what pipes, fittings, tanks, trench and labour cost, a choice for a place is compared by its price and not by water alone."
      begin="Begin a price list"
    >
      <Prices />
    </SharedDesk>
  );
}

/** Judgement: more rows at once slow a phone; a search finds the others. */
const ROWS_AT_ONCE = 60;

function Prices() {
  const { place } = useNotebook();
  const document = useStore(place, (state) => state.document);
  const rows = rowsIn(document);
  const reading = useReading(document);
  const [sought, setSought] = useState('');
  const words = sought
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== '');
  const found = rows
    .map((row, index) => ({ row, index }))
    .filter(({ row }) => {
      const text = Object.values(row).map(textOf).join(' ').toLowerCase();
      return words.every((word) => text.includes(word));
    });
  const general = reading.faults.filter(({ row }) => row === undefined);
  const faulty = new Set(reading.faults.flatMap(({ row }) => row ?? []));
  return (
    <>
      <div className="place-title">
        <h1 className="grow">Price list</h1>
        <PriceFiles>
          <UndoButtons />
        </PriceFiles>
      </div>
      <SharedDemoSlip what="Invented prices." />
      <div className="seek">
        <Currency faults={general} />
        <label>
          <span>Search</span>
          <input
            type="search"
            value={sought}
            placeholder="name, size or code"
            onChange={(event) => setSought(event.target.value)}
          />
        </label>
        <p className="note" role="status">
          {rows.length === 0
            ? 'No rows yet.'
            : `${rows.length} ${rows.length === 1 ? 'row' : 'rows'}${
                faulty.size === 0
                  ? ''
                  : `; ${faulty.size === 1 ? 'one is' : `${faulty.size} are`} left out of every choice until put right`
              }`}
        </p>
      </div>
      {PRICE_GROUPS.map((group) => (
        <Group
          key={group.id}
          group={group}
          rows={found.filter(({ row }) => groupOf(row) === group)}
          faults={reading.faults}
          isSought={words.length > 0}
        />
      ))}
    </>
  );
}

/** Typing goes before reading: the faults of a long list may come a moment later. */
function useReading(document: Parameters<typeof readPriceDocument>[0]) {
  const later = useDeferredValue(document);
  return useMemo(() => readPriceDocument(later), [later]);
}

function Currency({ faults }: { readonly faults: readonly PriceFault[] }) {
  const { place } = useNotebook();
  const currency = useStore(place, ({ document }) => currencyIn(document));
  const id = useId();
  const [isInside, setInside] = useState(false);
  const isTold = faults.length > 0 && !isInside;
  return (
    <div className={isTold ? 'currency wrong' : 'currency'}>
      <label htmlFor={id}>Currency</label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        autoCapitalize="characters"
        spellCheck={false}
        maxLength={3}
        placeholder="like EUR"
        aria-invalid={isTold}
        aria-describedby={`${id}-told`}
        value={currency}
        onFocus={() => setInside(true)}
        onBlur={() => setInside(false)}
        onChange={(event) => {
          const value = event.target.value.trim();
          place.update((state) =>
            putValue(state, {
              path: ['currency'],
              value: value === '' ? undefined : value,
              called: 'the currency',
            }),
          );
        }}
      />
      <p id={`${id}-told`} className="fault">
        {isTold && faults.map(({ message }) => message).join(' ')}
      </p>
    </div>
  );
}

interface Indexed {
  readonly row: RowDocument;
  readonly index: number;
}

function Group({
  group,
  rows,
  faults,
  isSought,
}: {
  readonly group: PriceGroup;
  readonly rows: readonly Indexed[];
  readonly faults: readonly PriceFault[];
  readonly isSought: boolean;
}) {
  const { place } = useNotebook();
  const [count, setCount] = useState(ROWS_AT_ONCE);
  const [fresh, setFresh] = useState<number>();
  const add = (): void => {
    const all = rowsIn(place.get().document);
    const [kind = ''] = group.kinds;
    const row = {
      code: freeCode(all, group.one.charAt(0).toUpperCase()),
      kind,
      ...(group.id === 'pipes' ? { unit: 'm' } : {}),
    };
    place.update((state) =>
      putDocument(state, {
        document: withValue(state.document, ['rows'], [...all, row]),
        path: ['rows'],
        called: `a new ${group.one}`,
      }),
    );
    setFresh(all.length);
  };
  const titleId = `prices-${group.id}`;
  if (isSought && rows.length === 0) return null;
  return (
    <section className={`prices of-${group.id}`} aria-labelledby={titleId}>
      <h2 id={titleId}>{group.title}</h2>
      {rows.length > 0 && (
        <>
          <div className="price-head" aria-hidden="true">
            {group.columns.map(({ column, label, isNumber }) => (
              <span key={column} className={isNumber ? 'is-number' : undefined}>
                {label}
              </span>
            ))}
          </div>
          <ol>
            {rows.slice(0, count).map(({ row, index }) => (
              <Row
                key={index}
                row={row}
                index={index}
                group={group}
                faults={faults.filter((fault) => fault.row === index)}
                isFresh={index === fresh}
              />
            ))}
          </ol>
        </>
      )}
      <div className="row">
        {rows.length > count && (
          <button
            type="button"
            className="button plain"
            onClick={() => setCount(count + ROWS_AT_ONCE)}
          >
            Show {Math.min(ROWS_AT_ONCE, rows.length - count)} more
          </button>
        )}
        {!isSought && (
          <button type="button" className="button plain" onClick={add}>
            Add a {group.one}
          </button>
        )}
      </div>
    </section>
  );
}

function Row({
  row,
  index,
  group,
  faults,
  isFresh,
}: {
  readonly row: RowDocument;
  readonly index: number;
  readonly group: PriceGroup;
  readonly faults: readonly PriceFault[];
  /** Just added: its name is asked first. */
  readonly isFresh: boolean;
}) {
  const { place } = useNotebook();
  const [isInside, setInside] = useState(false);
  const item = useRef<HTMLLIElement>(null);
  useEffect(() => {
    if (isFresh) item.current?.querySelector<HTMLInputElement>('input')?.focus();
  }, [isFresh]);
  const called = textOf(row.name) || textOf(row.kind) || `row ${index + 1}`;
  const told = isInside ? [] : faults;
  const hasMore = group.more.some(({ column }) => column !== 'code' && textOf(row[column]) !== '');
  const cell = (one: GroupColumn) => (
    <Cell
      key={one.column}
      one={one}
      row={row}
      index={index}
      called={called}
      isWrong={told.some(({ column }) => isAbout(column, one.column))}
      toldBy={told.length > 0 ? `price-faults-${index}` : undefined}
    />
  );
  return (
    <li
      ref={item}
      className={told.length > 0 ? 'price-row wrong' : 'price-row'}
      onFocus={() => setInside(true)}
      onBlur={(event) => {
        if (!event.currentTarget.contains(event.relatedTarget)) setInside(false);
      }}
    >
      <div className="price-cells">{group.columns.map(cell)}</div>
      <details className="price-more">
        <summary>
          More<span className="for-ears"> of {called}</span>
          {hasMore && <span aria-hidden="true"> ·</span>}
        </summary>
        <div className="price-more-cells">
          {group.more.map((one) => (
            <div key={one.column} className="more-cell">
              <span aria-hidden="true">{one.label}</span>
              {cell(one)}
            </div>
          ))}
          <button
            type="button"
            className="button plain"
            onClick={() =>
              place.update((state) =>
                putDocument(state, {
                  document: withValue(state.document, ['rows', index], undefined),
                  path: ['rows'],
                  called: `${called}, taken out`,
                }),
              )
            }
          >
            Take out<span className="for-ears"> {called}</span>
          </button>
        </div>
      </details>
      {told.length > 0 && (
        <div id={`price-faults-${index}`} className="price-faults">
          {told.map(({ message }) => (
            <p key={message} className="fault">
              {message}
            </p>
          ))}
        </div>
      )}
    </li>
  );
}

/** The reader names the price's column with its currency. */
function isAbout(field: string, column: string): boolean {
  return field === column || field.startsWith(`${column} (`);
}

function Cell({
  one,
  row,
  index,
  called,
  isWrong,
  toldBy,
}: {
  readonly one: GroupColumn;
  readonly row: RowDocument;
  readonly index: number;
  readonly called: string;
  readonly isWrong: boolean;
  readonly toldBy: string | undefined;
}) {
  const { place } = useNotebook();
  const { column, label, options, placeholder, isNumber } = one;
  const value = textOf(row[column]);
  const put = (written: string): void =>
    place.update((state) =>
      putValue(state, {
        path: ['rows', index, column],
        value: written === '' ? undefined : written,
        called: `${label.toLowerCase()} of row ${index + 1}`,
      }),
    );
  const shared = {
    'aria-label': `${label}${column === 'price' ? ` for ${unitOf(row)}` : ''}: ${called}`,
    'aria-invalid': isWrong,
    ...(isWrong && toldBy !== undefined ? { 'aria-describedby': toldBy } : {}),
  };
  return (
    <span className={`price-cell of-${column.replace(' ', '-')}`}>
      <span className="cell-label" aria-hidden="true">
        {label}
      </span>
      {options === undefined ? (
        <input
          {...shared}
          type="text"
          autoComplete="off"
          spellCheck={false}
          inputMode={isNumber ? 'decimal' : undefined}
          placeholder={placeholder}
          value={value}
          onChange={(event) => put(event.target.value)}
        />
      ) : (
        <select {...shared} value={value} onChange={(event) => put(event.target.value)}>
          {!options.some((option) => option.value === value) && (
            <option value={value}>{value === '' ? 'choose' : value}</option>
          )}
          {options.map((option) => (
            <option key={option.value} value={option.value}>
              {option.label}
            </option>
          ))}
        </select>
      )}
      {column === 'price' && <span className="price-unit">{unitOf(row)}</span>}
    </span>
  );
}
