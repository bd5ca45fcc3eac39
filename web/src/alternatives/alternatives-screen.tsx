/** Which pipe, which ram: drive lines against rams at this place, in a table and a picture, any pair adopted in one action. */
import './alternatives.css';
import type { Installation } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import { formatQuantity, unitShown } from '@fallwright/units';
import { useEffect, useId, useMemo } from 'react';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Choice } from '../fields/choice.tsx';
import { undo } from '../state/place.ts';
import type { SiteDocument } from '../state/site-document.ts';
import { isRecord } from '../state/site-document.ts';
import type { Store } from '../state/store.ts';
import { adopted, adoptionOf } from './adopt.ts';
import type { Wishes } from './cells.ts';
import { cellOf, dailyUnit } from './cells.ts';
import type { Choices } from './choices.ts';
import { ramOn, withoutOpened } from './choices.ts';
import { ChoosePanel } from './choose-panel.tsx';
import { onSheet, withChoices } from './comparison.ts';
import { driveRows } from './drive-rows.ts';
import type { Comparison } from './kept-comparison.ts';
import type { Order } from './order.ts';
import { rowsInOrder } from './order.ts';
import { PairCards } from './pair-cards.tsx';
import { PairDetails } from './pair-details.tsx';
import { PairTable } from './pair-table.tsx';
import type { PairView } from './pair-view.ts';
import type { Pair } from './pairs.ts';
import { isOnTheSheet, pairAskedFor, pairName, pairsOf } from './pairs.ts';
import { PairPicture } from './picture.tsx';
import { ramColumns } from './ram-columns.ts';
import { SweepProgress } from './sweep-progress.tsx';
import { tableInWords } from './table-words.ts';
import { useMedia } from './use-media.ts';
import { usePairAnswer, useSweep } from './use-sweep.ts';

const ORDER_OPTIONS = [
  { value: 'listed', label: 'as listed' },
  { value: 'delivered', label: 'most water' },
  { value: 'taken', label: 'least taken' },
] as const satisfies readonly { value: Order; label: string }[];

/** The last good answer and the place that it is an answer to. */
interface Sheet {
  readonly document: SiteDocument;
  readonly installation: Installation;
  readonly needed?: number;
}

export function AlternativesScreen() {
  const { place, settings, comparison } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const choices = useStore(comparison, (state) => state.choices);
  const sheet = useSheet();
  useEffect(() => {
    if (sheet === undefined) return;
    const { opening } = place.get();
    comparison.update((state) => onSheet(state, { ...sheet, opening }, system));
  }, [comparison, place, sheet, system]);
  return (
    <section className="alternatives" aria-labelledby="alternatives-title">
      <h2 id="alternatives-title">Which pipe, which ram</h2>
      {sheet === undefined || choices === undefined ? (
        <p className="slip">
          Pipes and rams are compared as soon as the sheet has an answer: fall, lift, water and
          drive pipe.
        </p>
      ) : (
        <Compared sheet={sheet} choices={choices} comparison={comparison} system={system} />
      )}
    </section>
  );
}

function useSheet(): Sheet | undefined {
  const { answer } = useNotebook();
  const shown = useStore(answer, (state) => state.shown);
  return useMemo(() => {
    if (shown === undefined) return undefined;
    const document: unknown = JSON.parse(shown.siteText);
    if (!isRecord(document)) return undefined;
    const { demand } = shown.value.answer;
    return {
      document,
      installation: shown.value.installation,
      ...(demand === undefined ? {} : { needed: demand.needed }),
    };
  }, [shown]);
}

function wishesOf({ installation, needed }: Sheet): Wishes {
  const { source } = installation;
  const given = source.kind === 'steady' ? source.yield : source.inflow;
  return {
    ...(needed === undefined ? {} : { needed }),
    ...(given === undefined ? {} : { given }),
  };
}

function Compared({
  sheet,
  choices,
  comparison,
  system,
}: {
  readonly sheet: Sheet;
  readonly choices: Choices;
  readonly comparison: Store<Comparison>;
  readonly system: System;
}) {
  const { place } = useNotebook();
  const { document, installation } = sheet;
  const order = useStore(comparison, (state) => state.order);
  const chosenKey = useStore(comparison, (state) => state.chosenKey);
  const isCards = useMedia('(max-width: 1100px)');
  const listed = useMemo(() => driveRows(choices, document, system), [choices, document, system]);
  const columns = useMemo(
    () => ramColumns(choices, ramOn(document, installation), system),
    [choices, document, installation, system],
  );
  const pairs = useMemo(() => pairsOf(listed, columns), [listed, columns]);
  const { state, stop, goOn, answer } = useSweep(pairs);
  const wishes = useMemo(() => wishesOf(sheet), [sheet]);
  const asked = useStore(comparison, (state) => state.asked);
  const chosen =
    pairs.find(({ key }) => key === chosenKey) ??
    (asked === undefined ? undefined : pairAskedFor(pairs, asked)) ??
    pairs.find(isOnTheSheet);
  const told = usePairAnswer(chosen, answer);
  const lastChanged = useStore(place, (now) => now.lastChanged);
  const words = tableInWords(pairs, state.results, wishes, system);
  const wordsId = useId();
  const view: PairView = {
    rows: rowsInOrder(listed, columns, state.results, order),
    columns,
    pairs,
    results: state.results,
    wishes,
    system,
    chosen,
    onChoose: ({ key }) => comparison.update((now) => ({ ...now, chosenKey: key })),
    onRemove: ({ opened }) => {
      if (opened === undefined) return;
      comparison.update((now) => withChoices(now, (all) => withoutOpened(all, opened)));
    },
  };
  const flow = unitShown('sourceFlow', system);
  const caption = `At the tank in ${dailyUnit(system)} a day; taken from the source in ${flow}. Boxed: the pair that is looked at.`;
  const details = chosen !== undefined && (
    <PairDetails
      pair={chosen}
      told={told}
      system={system}
      isAdopted={lastChanged === adoptionOf(chosen)}
      onAdopt={() => place.update((now) => adopted(now, chosen))}
      onUndo={() => place.update(undo)}
    />
  );
  return (
    <>
      <p className="about-place">{placeInWords(installation, system)}</p>
      <SheetNews />
      <ChoosePanel
        choices={choices}
        system={system}
        rowCount={listed.length}
        columnCount={columns.length}
        onChange={(change) => comparison.update((now) => withChoices(now, change))}
      />
      <div className="tools">
        <SweepProgress state={state} onStop={stop} onGoOn={goOn} />
        <Choice
          legend="Order of the drive lines"
          options={ORDER_OPTIONS}
          value={order}
          onChoose={(value) => comparison.update((now) => ({ ...now, order: value }))}
        />
      </div>
      <div className={columns.length > 4 ? 'compared is-wide' : 'compared'}>
        <div className="table-and-words">
          {!isCards && <PairTable view={view} caption={caption} />}
          <TableWords id={wordsId} words={words} />
        </div>
        <div className="beside">
          <PairPicture
            view={view}
            fallOverLift={installation.fall / installation.lift}
            describedBy={wordsId}
          />
          {isCards ? chosen !== undefined && <ChosenLine pair={chosen} view={view} /> : details}
        </div>
        {isCards && <PairCards view={view} caption={caption} details={details} />}
      </div>
    </>
  );
}

/** What holds for every pair. */
function placeInWords({ fall, lift, source }: Installation, system: System): string {
  const show = (value: number, purpose: 'height' | 'sourceFlow'): string =>
    formatQuantity(value, purpose, system);
  const given = source.kind === 'steady' ? source.yield : source.inflow;
  const water =
    given === undefined ? 'a source with plenty' : `${show(given, 'sourceFlow')} from the source`;
  return `Fall ${show(fall, 'height')}, lift ${show(lift, 'height')}, ${water}. Every pair is simulated, started from cold.`;
}

/** What the table and the picture say, in sentences. */
function TableWords({ id, words }: { readonly id: string; readonly words: readonly string[] }) {
  return (
    <div className="slip table-words" id={id}>
      {words.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
    </div>
  );
}

/** While the sheet has no answer to its newest numbers, the table stands on the ones before. */
function SheetNews() {
  const { answer } = useNotebook();
  const phase = useStore(answer, (state) => state.phase);
  if (phase !== 'refused' && phase !== 'failed') return null;
  return (
    <p className="slip">
      The sheet holds something that cannot be computed yet. This table stands on the last numbers
      that could.
    </p>
  );
}

/** On the phone the details stand in the chosen card: a word under the picture leads there. */
function ChosenLine({ pair, view }: { readonly pair: Pair; readonly view: PairView }) {
  const cell = cellOf(view.results.get(pair.key), view.wishes, view.system);
  return (
    <p className="chosen-line">
      <strong>{pairName(pair)}</strong>
      {cell !== undefined && `: ${cell.spoken}.`} <a href="#chosen-pair">Details</a>
    </p>
  );
}
