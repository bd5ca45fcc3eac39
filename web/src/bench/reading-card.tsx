/** One setting at the bench: what the ram delivered against, and what was read, in large boxes one under another. */
import type { ReadingAnswer, ReadingDoubt } from '@fallwright/engine';
import { isImpossible } from '@fallwright/engine';
import { doubtInWords, ratioInFigures } from '@fallwright/papers';
import { formatQuantity } from '@fallwright/units';
import { useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Choice } from '../fields/choice.tsx';
import { More } from '../fields/more.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { DimensionField } from '../measure/dimension-field.tsx';
import { ReadingList } from '../measure/reading-list.tsx';
import { readAt, writeAt } from '../measure/spot.ts';
import { Stopwatch } from '../measure/stopwatch.tsx';
import { movedUnder } from '../profile/unread-rows.ts';
import { textOf } from '../state/entry.ts';
import { dropUnread, putDocument } from '../state/place.ts';
import { valueAt, withValue } from '../state/site-document.ts';
import { watchName } from '../state/watches.ts';
import { CountPanel } from './count-panel.tsx';
import { timedSpot, writtenSpot } from './reading-spots.ts';
import {
  furtherTimed,
  type ListedQuantity,
  readingPath,
  readingsIn,
  timedIn,
  withoutReading,
} from './test-document.ts';
import type { ReadReading } from './test-reading.ts';

export function ReadingCard({
  index,
  reading,
  answer,
  isOpen,
  onToggle,
  onTakenOut,
}: {
  readonly index: number;
  readonly reading: ReadReading;
  readonly answer: ReadingAnswer | undefined;
  readonly isOpen: boolean;
  readonly onToggle: (isOpen: boolean) => void;
  readonly onTakenOut: () => void;
}) {
  const { place, watches } = useNotebook();
  const number = index + 1;
  const takeOut = (): void => {
    watches.takenOut(watchName(place.get().id, 'readings'), index);
    place.update((state) =>
      putDocument(
        {
          ...state,
          unread: movedUnder(state.unread, 'readings', (at) =>
            at === index ? undefined : at > index ? at - 1 : at,
          ),
        },
        {
          path: ['readings'],
          called: `taking out reading ${number}`,
          document: withoutReading(state.document, index),
        },
      ),
    );
    onTakenOut();
  };
  return (
    <details
      className="bench-fold reading"
      open={isOpen}
      onToggle={(event) => {
        if (event.currentTarget.open !== isOpen) onToggle(event.currentTarget.open);
      }}
    >
      <summary>
        <h3>Reading {number}</h3>
        <Summary reading={reading} index={index} />
      </summary>
      {isOpen && (
        <>
          <Outcome reading={reading} answer={answer} />
          <Against index={index} />
          <Beats index={index} />
          <Flow index={index} quantity="delivered" label="Delivered" verb="Delivered" />
          <Flow index={index} quantity="wasted" label="Wasted" verb="Wasted" />
          <OtherReadings index={index} />
          <button type="button" className="button plain" onClick={takeOut}>
            Take out reading {number}
          </button>
        </>
      )}
    </details>
  );
}

function Summary({ reading, index }: { readonly reading: ReadReading; readonly index: number }) {
  const { place, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const against = useStore(place, ({ document }) => {
    const form = readingsIn(document)[index];
    const lift = textOf(form?.lift);
    const back = textOf(form?.backPressure);
    return lift === '' ? (back === '' ? '' : `back pressure ${back}`) : `lift ${lift}`;
  });
  const doubts = reading.ok ? reading.doubts.filter(isImpossible).length : 0;
  const delivered = reading.ok ? reading.setting.reading.deliveryFlow : undefined;
  const parts = [
    against === '' ? 'no lift yet' : against,
    ...(delivered === undefined ? [] : [formatQuantity(delivered.value, 'sourceFlow', system)]),
  ];
  return (
    <span className="note">
      {parts.join(', ')}
      {doubts > 0 && <strong className="is-off">, cannot be so</strong>}
    </span>
  );
}

/** What is wrong with it while the rig still runs, and both efficiencies. */
function Outcome({
  reading,
  answer,
}: {
  readonly reading: ReadReading;
  readonly answer: ReadingAnswer | undefined;
}) {
  const { settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  if (!reading.ok) {
    const missing = reading.problems.filter(
      ({ kind, field }) => kind === 'missing' && field.startsWith('readings'),
    );
    return missing.length === 0 ? null : (
      <ul className="reading-missing">
        {missing.map(({ message }) => (
          <li key={message}>{withoutFileWords(message)}</li>
        ))}
      </ul>
    );
  }
  // Once the simulation has run, what the drive line can pass is known too.
  const doubts: readonly ReadingDoubt[] = answer?.doubts ?? reading.doubts;
  const { efficiencies } = reading;
  return (
    <>
      <div className="doubts" aria-live="polite">
        {doubts.map((doubt, at) => (
          <p
            // biome-ignore lint/suspicious/noArrayIndexKey: doubts stand in the order of their kinds
            key={at}
            className={isImpossible(doubt) ? 'slip danger' : 'note'}
          >
            {isImpossible(doubt) && <strong>Cannot be: </strong>}
            {doubtInWords(doubt, system)}
          </p>
        ))}
      </div>
      <dl className="efficiencies">
        <div>
          <dt>
            Rankine<span> q (h − H)/(Q H)</span>
          </dt>
          <dd>{efficiencies === undefined ? '–' : ratioInFigures(efficiencies.rankine)}</dd>
        </div>
        <div>
          <dt>
            D’Aubuisson<span> q h/((Q + q) H)</span>
          </dt>
          <dd>{efficiencies === undefined ? '–' : ratioInFigures(efficiencies.daubuisson)}</dd>
        </div>
      </dl>
      {efficiencies === undefined && (
        <p className="note">Both efficiencies need two of the three flows.</p>
      )}
    </>
  );
}

/** Sentences of the file's reader, without how a file would write it. */
function withoutFileWords(message: string): string {
  const [first = message] = message.split(/(?<=\.) Write /);
  return first;
}

const AGAINST = [
  { value: 'lift', label: 'a lift' },
  { value: 'backPressure', label: 'a throttled pressure' },
] as const;

/** The height of the outlet, or what a throttled delivery is held at: one of the two. */
function Against({ index }: { readonly index: number }) {
  const { place } = useNotebook();
  const isThrottled = useStore(
    place,
    ({ document }) => valueAt(document, readingPath(index, 'backPressure')) !== undefined,
  );
  const lastIsThrottled = useStore(place, ({ document }) => {
    const before = readingsIn(document)[index - 1];
    return before?.backPressure !== undefined;
  });
  const hasLift = useStore(
    place,
    ({ document }) => valueAt(document, readingPath(index, 'lift')) !== undefined,
  );
  const [chosen, setChosen] = useState<'lift' | 'backPressure'>();
  const kind = isThrottled
    ? 'backPressure'
    : hasLift
      ? 'lift'
      : (chosen ?? (lastIsThrottled ? 'backPressure' : 'lift'));
  const choose = (next: 'lift' | 'backPressure'): void => {
    setChosen(next);
    const from = readingPath(index, kind);
    place.update((state) => {
      const written = valueAt(state.document, from);
      if (written === undefined || next === kind) return dropUnread(state, from);
      const moved = withValue(state.document, readingPath(index, next), written);
      return putDocument(dropUnread(state, from), {
        path: readingPath(index, next),
        called: `what reading ${index + 1} delivers against`,
        document: withValue(moved, from, undefined),
      });
    });
  };
  return (
    <div className="delivers-against">
      <p className="bench-label">Delivers against</p>
      <Choice
        legend={`What reading ${index + 1} delivers against`}
        options={AGAINST}
        value={kind}
        onChoose={choose}
      />
      <QuantityField
        key={kind}
        path={readingPath(index, kind)}
        label={kind === 'lift' ? 'Lift' : 'Back pressure'}
        called={kind === 'lift' ? 'the lift' : 'the back pressure'}
        purpose="height"
        example={
          kind === 'lift' ? { metric: '12 m', us: '39 ft' } : { metric: '1.2 bar', us: '17 psi' }
        }
        isRequired
        mayBeEmptied
        isReading
      />
    </div>
  );
}

function Beats({ index }: { readonly index: number }) {
  const [isCounting, setCounting] = useState(false);
  const spot = timedSpot(index, 'beats');
  const { place } = useNotebook();
  const isCounted = useStore(
    place,
    ({ document }) => Object.keys(timedIn(readingsIn(document)[index] ?? {}, 'beats')).length > 0,
  );
  return (
    <section className="bench-quantity" aria-label={`Beats of reading ${index + 1}`}>
      <ReadingList
        spot={writtenSpot(index, 'beats')}
        name="beats"
        label="Beats"
        one="rate"
        purpose="beats"
        example={{ metric: '62/min', us: '62/min' }}
      />
      {isCounting ? (
        <CountPanel index={index} onClose={() => setCounting(false)} />
      ) : (
        <button type="button" className="button count-button" onClick={() => setCounting(true)}>
          Count beats: tap, listen, open a recording
        </button>
      )}
      <More summary="Counted with a watch" isUsed={isCounted}>
        <TextField
          path={[...spot.path, 'count']}
          label="Beats counted each time"
          called={`the count of reading ${index + 1}`}
          placeholder="60"
          read={readAt(spot, ['count'])}
          write={(document, value) => writeAt(spot, ['count'])(document, wholeNumber(value))}
        />
        <ReadingList
          spot={spot}
          name="times"
          label="Times that took"
          one="time"
          purpose="time"
          example={{ metric: '58.4 s', us: '58.4 s' }}
        />
        <Further index={index} quantity="beats" />
      </More>
    </section>
  );
}

/** A number where it is one; what is none stays as written, and the reader of the test says what to write. */
function wholeNumber<Value>(value: Value): Value | number {
  return typeof value === 'string' && /^\d{1,6}$/.test(value) ? Number(value) : value;
}

function Flow({
  index,
  quantity,
  label,
  verb,
}: {
  readonly index: number;
  readonly quantity: 'delivered' | 'wasted' | 'supply';
  readonly label: string;
  readonly verb: string;
}) {
  const { place } = useNotebook();
  const caught = timedSpot(index, quantity);
  const isCaught = useStore(
    place,
    ({ document }) => Object.keys(timedIn(readingsIn(document)[index] ?? {}, quantity)).length > 0,
  );
  const [wantsCaught, setWantsCaught] = useState(isCaught);
  return (
    <section className="bench-quantity" aria-label={`${label} of reading ${index + 1}`}>
      <ReadingList
        spot={writtenSpot(index, quantity)}
        name={quantity}
        label={label}
        one={`${label.toLowerCase()} flow`}
        purpose="sourceFlow"
        example={{ metric: '0.62 L/min', us: '0.16 gpm' }}
      />
      <details
        className="more"
        open={wantsCaught || isCaught}
        onToggle={(event) => setWantsCaught(event.currentTarget.open)}
      >
        <summary>{verb}, caught in a jug with a watch</summary>
        {(wantsCaught || isCaught) && (
          <>
            <DimensionField
              spot={caught}
              name="volume"
              label="Caught each time"
              purpose="volume"
              isNeeded
              example={{ metric: '1 L', us: '0.25 gal' }}
            />
            <Stopwatch spot={caught} start="Start as the jug goes under" stop="Full: stop" />
            <ReadingList
              spot={caught}
              name="times"
              label="Times that took"
              one="time"
              purpose="time"
              example={{ metric: '41.2 s', us: '41.2 s' }}
            />
            <Further index={index} quantity={quantity} />
          </>
        )}
      </details>
    </section>
  );
}

function Further({
  index,
  quantity,
}: {
  readonly index: number;
  readonly quantity: ListedQuantity;
}) {
  const { place } = useNotebook();
  const count = useStore(place, ({ document }) =>
    furtherTimed(readingsIn(document)[index] ?? {}, quantity),
  );
  if (count === 0) return null;
  return (
    <p className="note">
      The file has {count} more of them with {count === 1 ? 'its' : 'their'} times. They are kept
      and used.
    </p>
  );
}

const READ_TOO = [
  'supply',
  'vesselPressure',
  'peakPressure',
  'handStrokes',
  'temperature',
  'tuning',
];
const KEPT_BESIDE = ['remarks', 'photos', 'recordings', 'logs'];

function useIsUsed(index: number, keys: readonly string[]): boolean {
  const { place } = useNotebook();
  return useStore(place, ({ document }) =>
    keys.some((key) => readingsIn(document)[index]?.[key] !== undefined),
  );
}

function OtherReadings({ index }: { readonly index: number }) {
  const isReadToo = useIsUsed(index, READ_TOO);
  const isKeptBeside = useIsUsed(index, KEPT_BESIDE);
  const at = (...rest: string[]) => readingPath(index, ...rest);
  const of = `of reading ${index + 1}`;
  return (
    <>
      <More summary="Pressures, strokes to start, tuning, supply" isUsed={isReadToo}>
        <ReadingList
          spot={writtenSpot(index, 'vesselPressure')}
          name="vesselPressure"
          label="Pressure in the vessel"
          one="vessel pressure"
          purpose="height"
          example={{ metric: '0.75 bar', us: '11 psi' }}
        />
        <ReadingList
          spot={writtenSpot(index, 'peakPressure')}
          name="peakPressure"
          label="Peak pressure"
          one="peak pressure"
          purpose="height"
          example={{ metric: '2.9 bar', us: '42 psi' }}
        />
        <TextField
          path={at('handStrokes')}
          label="Hand strokes to start"
          called={`the hand strokes ${of}`}
          placeholder="11"
          write={(document, value) => withValue(document, at('handStrokes'), wholeNumber(value))}
        />
        <div className="two-fields">
          <QuantityField
            path={at('tuning', 'weight')}
            label="Valve weight here"
            called={`the weight ${of}`}
            purpose="weight"
            whenEmpty="as the ram has it"
          />
          <QuantityField
            path={at('tuning', 'stroke')}
            label="Stroke here"
            called={`the stroke ${of}`}
            purpose="stroke"
            whenEmpty="as the ram has it"
          />
        </div>
        <Flow index={index} quantity="supply" label="Supply" verb="Supply" />
        <QuantityField
          path={at('temperature')}
          label="Water temperature here"
          called={`the temperature ${of}`}
          purpose="temperature"
        />
      </More>
      <More summary="Remarks, names of photos and recordings" isUsed={isKeptBeside}>
        <TextField
          path={at('remarks')}
          label="Remarks"
          called={`the remarks ${of}`}
          placeholder="beats evenly, a dry thump"
        />
        {(['photos', 'recordings', 'logs'] as const).map((key) => (
          <TextField
            key={key}
            path={at(key)}
            label={`Names of ${key === 'logs' ? 'pressure logs' : key}`}
            called={`the ${key} ${of}`}
            placeholder={key === 'photos' ? 'swallow-1.jpg' : ''}
            isListed
          />
        ))}
      </More>
    </>
  );
}
