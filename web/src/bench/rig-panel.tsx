/** What the ram stands on and what it is: folded away once both can be read. */
import { useMemo, useState } from 'react';
import { NotebookContext, useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { LinePipes } from '../fields/line-pipes.tsx';
import { More } from '../fields/more.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { RamFields } from '../screens/ram-fields.tsx';
import type { Path, Plain, SiteDocument } from '../state/site-document.ts';
import { isRecord, valueAt, withValue } from '../state/site-document.ts';
import { createStore } from '../state/store.ts';
import { rigProblems, rigStore } from './rig-desk.ts';
import { ramOfTest, rigInWords } from './test-document.ts';

export function RigPanel({ isWhole }: { readonly isWhole: boolean }) {
  const { place } = useNotebook();
  const document = useStore(place, (state) => state.document);
  // Open for a test whose rig is still to be written; later it is the person who opens it.
  const [isOpen, setOpen] = useState(!isWhole);
  return (
    <details
      className="bench-fold rig"
      open={isOpen}
      onToggle={(event) => setOpen(event.currentTarget.open)}
    >
      <summary>
        <h2>Rig and ram</h2>
        {!isOpen && (
          <span className="note">
            {rigInWords(document)}; {ramOfTest(document).name}
          </span>
        )}
      </summary>
      {isOpen && (
        <div className="rig-fields">
          <RigFields />
          <section aria-label="Ram">
            <h3>Ram</h3>
            <RamFields whenNone="choose" />
            <TextField
              path={['serial']}
              label="Serial number"
              called="the serial number"
              placeholder="like S25-031"
            />
          </section>
          <section aria-label="About the test">
            <h3>This test</h3>
            <TextField path={['date']} label="Date" called="the date" placeholder="2026-08-19" />
            <TextField path={['by']} label="By" called="who tested" />
            <TextField path={['place']} label="Where" called="where it was tested" />
            <TextField path={['notes']} label="Notes" called="the notes" />
            <Instruments />
          </section>
        </div>
      )}
    </details>
  );
}

/** The fields of a place's fall and pipes, writing into the rig of the test. */
function RigFields() {
  const notebook = useNotebook();
  const { place, answer } = notebook;
  const rig = useMemo(() => rigStore(place), [place]);
  const problems = useStore(answer, (state) => state);
  const hasMore = useStore(rig, ({ document }) =>
    ['delivery', 'temperature', 'altitude'].some((key) => document[key] !== undefined),
  );
  const value = useMemo(
    () => ({ ...notebook, place: rig, answer: createStore(rigProblems(problems)) }),
    [notebook, rig, problems],
  );
  return (
    <NotebookContext value={value}>
      <section aria-label="Rig">
        <h3>Rig</h3>
        <QuantityField
          path={['fall']}
          label="Fall"
          called="the fall"
          purpose="height"
          example={{ metric: '2.06 m ± 5 mm', us: '6.8 ft' }}
          isRequired
        />
        <h4>Drive line</h4>
        <LinePipes line="drive" called="the drive line" add="Add a drive pipe" />
        <More summary="Delivery line, temperature, height above the sea" isUsed={hasMore}>
          <p className="note">
            Only where the lift is the height of an outlet. A delivery that is throttled at the ram
            has no line.
          </p>
          <LinePipes line="delivery" called="the delivery line" add="Add a delivery pipe" />
          <QuantityField
            path={['temperature']}
            label="Water temperature"
            called="the temperature"
            purpose="temperature"
          />
          <QuantityField
            path={['altitude']}
            label="Height above the sea"
            called="the altitude"
            purpose="altitude"
          />
        </More>
      </section>
    </NotebookContext>
  );
}

const INSTRUMENTS = [
  { key: 'beats', label: 'Beats' },
  { key: 'delivered', label: 'Delivered' },
  { key: 'wasted', label: 'Wasted' },
  { key: 'supply', label: 'Supply' },
  { key: 'vesselPressure', label: 'Vessel' },
  { key: 'peakPressure', label: 'Peak' },
  { key: 'fall', label: 'Fall' },
  { key: 'lift', label: 'Lift' },
] as const;

/** What each quantity was read with, and what one reading of it is good to. */
function Instruments() {
  const { place } = useNotebook();
  const isUsed = useStore(place, ({ document }) => document.instruments !== undefined);
  return (
    <More summary="Instruments, and what they are good to" isUsed={isUsed}>
      {INSTRUMENTS.map(({ key, label }) => {
        const path: Path = ['instruments', key];
        const lower = label.toLowerCase();
        return (
          <div key={key} className="instrument">
            <TextField
              path={[...path, 'name']}
              label={`${label} by`}
              called={`the instrument for the ${lower}`}
              read={(document) => instrumentAt(document, path).name}
              write={(document, name) =>
                withInstrument(document, path, { ...instrumentAt(document, path), name })
              }
            />
            <QuantityField
              path={[...path, 'goodTo']}
              label="good to"
              called={`what the instrument for the ${lower} is good to`}
              purpose="share"
              example={{ metric: '1 %', us: '1 %' }}
              isReading
              read={(document) => instrumentAt(document, path).goodTo}
              write={(document, goodTo) =>
                withInstrument(document, path, { ...instrumentAt(document, path), goodTo })
              }
            />
          </div>
        );
      })}
    </More>
  );
}

interface Instrument {
  readonly name?: Plain | undefined;
  readonly goodTo?: Plain | undefined;
}

function instrumentAt(document: SiteDocument, path: Path): Instrument {
  const written = valueAt(document, path);
  if (isRecord(written)) return { name: written.name, goodTo: written.goodTo };
  return written === undefined ? {} : { name: written };
}

/** Words alone where nothing is said of what it is good to: a map asks for that. */
function withInstrument(
  document: SiteDocument,
  path: Path,
  { name, goodTo }: Instrument,
): SiteDocument {
  if (goodTo === undefined) return withValue(document, path, name);
  return withValue(document, path, { ...(name === undefined ? {} : { name }), goodTo });
}
