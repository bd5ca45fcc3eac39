/** The fall or the lift, measured one way: its drawing, its readings and what came of them. */
import { useEffect, useRef, useState } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { fieldId } from '../fields/field-ids.ts';
import { inWords } from '../state/differences.ts';
import { textOf } from '../state/entry.ts';
import type { HeightName, HeightWay } from '../state/measured-entry.ts';
import { HEIGHT_WAYS, heightWay, withHeightReadings } from '../state/measured-entry.ts';
import { dropUnread, putDocument } from '../state/place.ts';
import type { PlainRecord } from '../state/site-document.ts';
import { DimensionField, WhenAndWho } from './dimension-field.tsx';
import { HEIGHT_DRAWINGS } from './drawings/height-drawings.tsx';
import { useDocument, useSystem } from './edit.ts';
import { BetweenPoints, LevelBookTable } from './level-book.tsx';
import { ReadingBox } from './reading-box.tsx';
import { ReadingList } from './reading-list.tsx';
import { ResultLines } from './result.tsx';
import { heightResult } from './results.ts';
import type { Spot } from './spot.ts';
import { heightSpot, listAt } from './spot.ts';
import { WayList } from './way-list.tsx';
import { HEIGHT_WORDS } from './ways.ts';

export function HeightPanel({ height }: { readonly height: HeightName }) {
  const { place } = useNotebook();
  const document = useDocument();
  const system = useSystem();
  const spot = heightSpot(height);
  const readings = spot.read(document);
  const [chosen, setChosen] = useState<HeightWay>();
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => {
    // The button that chose it is gone: the keyboard goes on from here.
    if (chosen !== undefined) heading.current?.focus();
  }, [chosen]);
  const way = heightWay(readings) ?? chosen;
  const { result, rows, isCoarse } = heightResult(document, height, system);

  if (way === undefined) {
    return (
      <div className="measure-body">
        <p className="note">Choose a way.</p>
        <WayList
          name={`Ways to measure the ${height}`}
          ways={HEIGHT_WAYS}
          words={HEIGHT_WORDS}
          choose={setChosen}
        />
      </div>
    );
  }

  const begin = (): void => {
    setChosen(undefined);
    place.update((state) =>
      putDocument(withoutText(state, spot), {
        path: spot.path,
        called: `the way the ${height} is measured`,
        document: withHeightReadings(
          state.document,
          height,
          putAway(readings, way, result.kind === 'known' ? result.figure : undefined),
        ),
      }),
    );
  };

  const Drawing = HEIGHT_DRAWINGS[way];
  const words = HEIGHT_WORDS[way];
  const isBegun = heightWay(readings) !== undefined;
  return (
    <div className="measure-body">
      <h3 ref={heading} tabIndex={-1}>
        {words.name}
      </h3>
      <Drawing height={height} />
      <p className="guidance">{words.guidance}</p>
      <WayFields way={way} spot={spot} height={height} rows={rows} />
      {isCoarse && <p className="too-coarse">Too coarse to choose a ram by</p>}
      <ResultLines result={result} name={`The ${height}`} isBegun={isBegun} />
      <WhenAndWho spot={spot} />
      <button type="button" className="button plain" onClick={begin}>
        {isBegun ? 'Put these readings in the note, and measure another way' : 'Another way'}
      </button>
    </div>
  );
}

const withoutText = (state: Parameters<typeof dropUnread>[0], spot: Spot) =>
  dropUnread(state, spot.path);

/** A height is measured one way in a file: readings of another way go into the note, so that they are kept. */
export function putAway(
  readings: PlainRecord,
  way: HeightWay,
  figure: string | undefined,
): PlainRecord {
  const { date, by, note, ...taken } = readings;
  if (Object.keys(taken).length === 0) return readings;
  const said = `${way}${figure === undefined ? '' : `, ${figure.replaceAll('\u00a0', ' ')}`}: ${inWords(taken)}`;
  const notes = textOf(note) === '' ? said : `${textOf(note)}. ${said}`;
  return { ...(date !== undefined && { date }), ...(by !== undefined && { by }), note: notes };
}

function WayFields({
  way,
  spot,
  height,
  rows,
}: {
  readonly way: HeightWay;
  readonly spot: Spot;
  readonly height: HeightName;
  readonly rows: Parameters<typeof LevelBookTable>[0]['worked'];
}) {
  switch (way) {
    case 'levels':
      return (
        <>
          <LevelBookTable spot={spot} worked={rows} />
          <BetweenPoints spot={spot} />
          <Each
            spot={spot}
            usual={{ metric: '2 mm on a staff', us: '0.08 in on a staff' }}
            example={{ metric: '2 mm', us: '0.1 in' }}
          />
        </>
      );
    case 'hops':
      return (
        <>
          <ReadingList
            spot={spot}
            name="hops"
            label="Hops, from the bottom up"
            one="hop"
            purpose="staff"
            example={{ metric: '1.62 m', us: '5.3 ft' }}
          />
          <Each
            spot={spot}
            usual={{ metric: '2 cm a hop', us: '0.8 in a hop' }}
            example={{ metric: '2 cm', us: '1 in' }}
          />
        </>
      );
    case 'gauge':
      return (
        <>
          <DimensionField
            spot={spot}
            name="gauge"
            label="What the gauge reads"
            purpose="pressure"
            isNeeded
            example={{ metric: '1.2 bar', us: '17 psi' }}
          />
          <DimensionField
            spot={spot}
            name="class"
            label="Class on the dial"
            purpose="gaugeClass"
            isNeeded
            example={{ metric: '1.6', us: '1.6' }}
          />
          <DimensionField
            spot={spot}
            name="range"
            label="Range of the dial"
            purpose="pressure"
            isNeeded
            example={{ metric: '2.5 bar', us: '60 psi' }}
          />
          <DimensionField
            spot={spot}
            name="gaugeHeight"
            label="Gauge above the waste valve"
            purpose="elevation"
            isNeeded={false}
            whenEmpty="middle of the dial; level with the outlet is taken"
            example={{ metric: '0.2 m', us: '8 in' }}
          />
        </>
      );
    default:
      return (
        <>
          <CoarseEnds way={way} spot={spot} height={height} />
          <Each
            spot={spot}
            usual={
              way === 'barometric'
                ? { metric: '2 m by barometer', us: '6.6 ft by barometer' }
                : { metric: '5 m by satellite', us: '16 ft by satellite' }
            }
            example={
              way === 'barometric' ? { metric: '2 m', us: '6 ft' } : { metric: '5 m', us: '16 ft' }
            }
          />
        </>
      );
  }
}

function Each({
  spot,
  usual,
  example,
}: {
  readonly spot: Spot;
  /** What is taken without it; engine/site/levels has the numbers. */
  readonly usual: { readonly metric: string; readonly us: string };
  readonly example: { readonly metric: string; readonly us: string };
}) {
  const system = useSystem();
  return (
    <DimensionField
      spot={spot}
      name="each"
      label="One reading is good to ±"
      purpose="depth"
      isNeeded={false}
      whenEmpty={`${usual[system]} is taken`}
      example={example}
    />
  );
}

const SEA_HEIGHTS = { metric: ['312 m', '288 m'], us: ['1020 ft', '940 ft'] } as const;

function CoarseEnds({
  way,
  spot,
  height,
}: {
  readonly way: 'barometric' | 'satellite';
  readonly spot: Spot;
  readonly height: HeightName;
}) {
  const texts = listAt(spot.read(useDocument()), way).map(textOf);
  const system = useSystem();
  const upper = height === 'fall' ? 'the water' : 'the tank';
  return (
    <fieldset className="reading-list" id={fieldId([...spot.path, way])}>
      <legend>Heights above the sea</legend>
      <div className="between">
        {[`At ${upper}`, 'At the ram'].map((label, index) => (
          <ReadingBox
            key={label}
            spot={spot}
            inner={[way, index]}
            label={label}
            isLabelShown
            purpose="altitude"
            example={SEA_HEIGHTS[system][index]}
            others={texts.filter((_, at) => at !== index)}
          />
        ))}
      </div>
    </fieldset>
  );
}
