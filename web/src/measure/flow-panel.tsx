/** The flow of the source, measured: one card for each measurement, and what they make together. */
import type { GaugingMethod } from '@fallwright/records';
import { GAUGING_METHODS } from '@fallwright/records';
import { useEffect, useRef, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { SelectField } from '../fields/select-field.tsx';
import { movedUnder } from '../profile/unread-rows.ts';
import { textOf } from '../state/entry.ts';
import { gaugingsOf, withGauging, withoutGauging } from '../state/measured-entry.ts';
import { putDocument } from '../state/place.ts';
import type { PlainRecord, SiteDocument } from '../state/site-document.ts';
import { pathText } from '../state/site-document.ts';
import { runsInside, watchName } from '../state/watches.ts';
import { DimensionField, today, WhenAndWho } from './dimension-field.tsx';
import { FLOW_DRAWINGS } from './drawings/flow-drawings.tsx';
import { stepName, useDocument, useSystem } from './edit.ts';
import { ReadingList } from './reading-list.tsx';
import { Doubts, ResultLines } from './result.tsx';
import { flowResult, gaugingResult } from './results.ts';
import { gaugingSpot, readAt, writeAt } from './spot.ts';
import { Stopwatch } from './stopwatch.tsx';
import { WayList } from './way-list.tsx';
import { FLOAT_COEFFICIENTS, FLOW_METHODS, FLOW_WAYS } from './ways.ts';

const PATH = ['source', 'gauging'];

export function FlowPanel() {
  const { place, watches } = useNotebook();
  const document = useDocument();
  const gaugings = gaugingsOf(document);
  const [added, setAdded] = useState<number>();
  const [isChoosing, setChoosing] = useState(false);

  const put = (next: SiteDocument, called: string): void =>
    place.update((state) => putDocument(state, { path: PATH, called, document: next }));

  const add = (method: GaugingMethod): void => {
    const index = gaugings.length;
    put(
      withGauging(place.get().document, index, { method, date: today() }),
      `adding measurement ${index + 1}`,
    );
    setAdded(index);
    setChoosing(false);
  };

  const takeOut = (index: number): void => {
    setAdded(undefined);
    place.update((state) => ({
      ...state,
      unread: movedUnder(state.unread, pathText(PATH), (at) =>
        at === index ? undefined : at > index ? at - 1 : at,
      ),
    }));
    watches.takenOut(watchName(place.get().id, pathText(PATH)), index);
    put(
      withoutGauging(place.get().document, index),
      `taking out measurement ${index + 1} of ${gaugings.length}`,
    );
  };

  return (
    <div className="measure-body">
      {gaugings.map((gauging, index) => (
        <GaugingCard
          // A measurement is known by its place in the list: that is what its path in the file says too.
          // biome-ignore lint/suspicious/noArrayIndexKey: the place in the list is the identity
          key={index}
          gauging={gauging}
          index={index}
          isOpen={added === index || gaugings.length === 1}
          isNew={added === index}
          takeOut={() => takeOut(index)}
        />
      ))}
      {gaugings.length > 1 && <Together />}
      {gaugings.length === 0 || isChoosing ? (
        <>
          <p className="note">Choose a way. Several may stand side by side.</p>
          <WayList
            name="Ways to measure the flow"
            ways={FLOW_METHODS}
            words={FLOW_WAYS}
            choose={add}
          />
        </>
      ) : (
        <button type="button" className="button" onClick={() => setChoosing(true)}>
          Measure again, or another way
        </button>
      )}
    </div>
  );
}

const isMethod = (word: string): word is GaugingMethod =>
  GAUGING_METHODS.some((method) => method === word);

function GaugingCard({
  gauging,
  index,
  isOpen,
  isNew,
  takeOut,
}: {
  readonly gauging: PlainRecord;
  readonly index: number;
  readonly isOpen: boolean;
  /** Just added: the keyboard goes to it. */
  readonly isNew: boolean;
  readonly takeOut: () => void;
}) {
  const system = useSystem();
  const { place, watches } = useNotebook();
  const [open, setOpen] = useState(
    () =>
      isOpen ||
      runsInside(watches.running.get(), watchName(place.get().id, pathText([...PATH, index]))),
  );
  const summary = useRef<HTMLElement>(null);
  useEffect(() => {
    if (isNew) summary.current?.focus();
  }, [isNew]);
  const method = textOf(gauging.method);
  const result = gaugingResult(gauging, system);
  const name = isMethod(method) ? FLOW_WAYS[method].name : method;
  return (
    <details
      className="measurement"
      open={open}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary ref={summary}>
        {index + 1}. {name}
        {result.kind === 'known' && !open && `, ${result.figure}`}
      </summary>
      {open && isMethod(method) && (
        <GaugingFields method={method} index={index} gauging={gauging} />
      )}
      {open && (
        <button type="button" className="button plain" onClick={takeOut}>
          Take out measurement {index + 1}
        </button>
      )}
    </details>
  );
}

function GaugingFields({
  method,
  index,
  gauging,
}: {
  readonly method: GaugingMethod;
  readonly index: number;
  readonly gauging: PlainRecord;
}) {
  const system = useSystem();
  const spot = gaugingSpot(index);
  const way = FLOW_WAYS[method];
  const Drawing = FLOW_DRAWINGS[method];
  const isBegun = Object.keys(gauging).some((key) => !['method', 'date'].includes(key));
  return (
    <>
      <Drawing />
      <p className="guidance">{way.guidance}</p>
      {way.dimensions.map(({ key, label, purpose, isNeeded, whenEmpty, example }) => (
        <DimensionField
          key={key}
          spot={spot}
          name={key}
          {...{ label, purpose, isNeeded, whenEmpty, example }}
        />
      ))}
      {way.alsoListed && <ReadingList spot={spot} name={way.alsoListed.key} {...way.alsoListed} />}
      {method === 'float' && (
        <SelectField
          path={[...spot.path, 'coefficient']}
          label="Mean speed over the float’s"
          called={stepName('the coefficient', spot)}
          none="0.85 is taken"
          options={FLOAT_COEFFICIENTS}
          read={readAt(spot, ['coefficient'])}
          write={(document, value) =>
            writeAt(spot, ['coefficient'])(
              document,
              value === undefined ? undefined : Number(value),
            )
          }
        />
      )}
      {way.watch && <Stopwatch spot={spot} {...way.watch} />}
      <ReadingList spot={spot} name={way.readings.key} {...way.readings} />
      <ResultLines
        result={gaugingResult(gauging, system)}
        name={`Measurement ${index + 1}`}
        isBegun={isBegun}
      />
      <WhenAndWho spot={spot} />
    </>
  );
}

function Together() {
  const system = useSystem();
  const result = flowResult(useDocument(), system);
  if (result === undefined || result.count < 2) return null;
  return (
    <div className="measure-result together" aria-live="polite">
      <p className="figure">
        <span className="for-ears">Together: </span>
        {result.figure}
      </p>
      <p>{result.how}</p>
      <Doubts doubts={shortened(result.doubts)} />
    </div>
  );
}

/** Judgement: two of them show that something is off; of five measurements ten pairs may disagree. */
const MOST_TOLD = 2;

function shortened(doubts: readonly string[]): readonly string[] {
  const more = doubts.length - MOST_TOLD;
  if (more < 2) return doubts;
  return [...doubts.slice(0, MOST_TOLD), `So do ${more} more pairs of measurements.`];
}
