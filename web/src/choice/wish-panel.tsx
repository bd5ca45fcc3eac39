/** What is wished, and what it is made from. */
import { useId, useState } from 'react';
import { Link } from 'wouter';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { textOf } from '../state/entry.ts';
import { isRecord } from '../state/site-document.ts';
import type { WishForm } from './wish-form.ts';
import { needInWords, readWish } from './wish-form.ts';

/** Judgement: more rams than this side by side want a trough and a plan of their own. */
const RAM_COUNTS = [1, 2, 3, 4, 6];
const CHANCES = [0.5, 0.8, 0.9, 0.95];

export function WishPanel({
  form,
  hasRange,
  hasPrices,
  isBusy,
  isAgain,
  onChange,
  onBegin,
}: {
  readonly form: WishForm;
  readonly hasRange: boolean;
  readonly hasPrices: boolean;
  readonly isBusy: boolean;
  readonly isAgain: boolean;
  readonly onChange: (form: WishForm) => void;
  readonly onBegin: () => void;
}) {
  const { place, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const demand = useStore(place, ({ document }) =>
    isRecord(document.demand) && document.demand.value === undefined
      ? 'what its needs on the sheet come to'
      : textOf(document.demand),
  );
  const read = readWish(form);
  const faults = read.ok ? {} : read.faults;
  const id = useId();
  const change = (part: Partial<WishForm>): void => onChange({ ...form, ...part });
  return (
    <form
      className="wish"
      aria-label="The wish"
      onSubmit={(event) => {
        event.preventDefault();
        onBegin();
      }}
    >
      <div className="wish-fields">
        <Select
          label="Rams"
          value={hasRange ? form.rams : 'typical'}
          options={[
            ...(hasRange ? [{ value: 'range', label: 'your range' }] : []),
            { value: 'typical', label: 'typical ones' },
          ]}
          onChoose={(rams) => change({ rams: rams === 'range' ? 'range' : 'typical' })}
        >
          {!hasRange && <Link href="/range">Begin a range</Link>}
        </Select>
        <Select
          label="Prices"
          value={hasPrices ? form.prices : 'none'}
          options={[
            ...(hasPrices ? [{ value: 'list', label: 'your price list' }] : []),
            { value: 'none', label: 'none: water alone' },
          ]}
          onChoose={(prices) => change({ prices: prices === 'list' ? 'list' : 'none' })}
        >
          {!hasPrices && <Link href="/prices">Begin a price list</Link>}
        </Select>
        <Box
          label="Water needed"
          placeholder={demand === '' ? 'the most there is' : demand}
          text={form.need}
          fault={faults.need}
          reading={
            needInWords(form, system) ??
            (demand === '' ? 'nothing is needed by the sheet' : 'as the sheet says')
          }
          onChange={(need) => change({ need })}
        />
        <Box
          label="Drive lengths"
          placeholder="like 12 m, 15 m"
          text={form.lengths}
          fault={faults.lengths}
          reading={form.lengths.trim() === '' ? 'the way itself, and 5, 7 and 10 falls' : ''}
          onChange={(lengths) => change({ lengths })}
        />
        <Select
          label="Rams side by side"
          value={String(form.mostRams)}
          options={RAM_COUNTS.map((count) => ({
            value: String(count),
            label: count === 1 ? 'one' : `up to ${count}`,
          }))}
          onChoose={(count) => change({ mostRams: Number(count) })}
        />
        {hasPrices && form.prices === 'list' && (
          <Select
            label="Air vessel"
            value={form.otherVessels ? 'other' : 'own'}
            options={[
              { value: 'own', label: 'the ram’s own' },
              { value: 'other', label: 'or one of the list' },
            ]}
            onChoose={(vessel) => change({ otherVessels: vessel === 'other' })}
          />
        )}
        <Select
          label="How sure, at least"
          value={form.judges ? String(form.wantedChance) : 'none'}
          options={[
            ...CHANCES.map((chance) => ({
              value: String(chance),
              label: `${Math.round(100 * chance)} %`,
            })),
            { value: 'none', label: 'not worked out' },
          ]}
          onChoose={(chance) =>
            change(
              chance === 'none'
                ? { judges: false }
                : { judges: true, wantedChance: Number(chance) },
            )
          }
        />
      </div>
      <button
        type="submit"
        className="button main"
        aria-disabled={!read.ok || isBusy}
        aria-describedby={`${id}-why`}
      >
        {isAgain ? 'Choose again' : 'Choose'}
      </button>
      <span id={`${id}-why`} className="note">
        {read.ok ? '' : ' Put the wish right first.'}
      </span>
    </form>
  );
}

function Select({
  label,
  value,
  options,
  onChoose,
  children,
}: {
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly onChoose: (value: string) => void;
  readonly children?: React.ReactNode;
}) {
  const id = useId();
  return (
    <div className="field">
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => onChoose(event.target.value)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
      <div className="reading">{children}</div>
    </div>
  );
}

function Box({
  label,
  placeholder,
  text,
  fault,
  reading,
  onChange,
}: {
  readonly label: string;
  readonly placeholder: string;
  readonly text: string;
  readonly fault: string | undefined;
  readonly reading: string;
  readonly onChange: (text: string) => void;
}) {
  const id = useId();
  const [isInside, setInside] = useState(false);
  const told = isInside ? undefined : fault;
  return (
    <div className={told === undefined ? 'field' : 'field wrong'}>
      <label htmlFor={id}>
        {label}
        <span className="may-wait"> if other</span>
      </label>
      <input
        id={id}
        type="text"
        autoComplete="off"
        spellCheck={false}
        placeholder={placeholder}
        aria-invalid={told !== undefined}
        aria-describedby={`${id}-reading`}
        value={text}
        onFocus={() => setInside(true)}
        onBlur={() => setInside(false)}
        onChange={(event) => onChange(event.target.value)}
      />
      <div className="reading" id={`${id}-reading`}>
        {told === undefined ? (
          <span>{fault === undefined ? reading : ''}</span>
        ) : (
          <p className="fault">{told}</p>
        )}
      </div>
    </div>
  );
}
