/** A survey file over the page: what was read, how it would lie, and the choices that the file cannot make. */
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import { useEffect, useId, useRef, useState } from 'react';
import type { SiteAnswerState, SiteProblem } from '../answer/site-answer.ts';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Choice } from '../fields/choice.tsx';
import { hasProfile, readMetres, writtenPoints } from '../profile/line-points.ts';
import { LINE_CALLED } from '../profile/profile-steps.ts';
import type { LineName } from '../state/lines.ts';
import { pipesOf } from '../state/lines.ts';
import type { Place } from '../state/place.ts';
import type { SiteDocument } from '../state/site-document.ts';
import type { Lengths } from './put-in.ts';
import { lengthPutIn, lengthsOf, walkPutIn } from './put-in.ts';
import { useWalked, useWalkFile } from './use-walk.ts';
import './walk.css';
import type { WalkChoice, WalkedLine, WalkedRead, WalkListed } from './walk.ts';
import { WalkPreview } from './walk-preview.tsx';

export interface WalkDialogProps {
  readonly line: LineName;
  readonly file: File;
  /** What was put in, in words; nothing when it was left. */
  readonly close: (done?: string) => void;
  readonly chooseAnother: () => void;
}

export function WalkDialog({ line, file, close, chooseAnother }: WalkDialogProps) {
  const dialog = useRef<HTMLDialogElement>(null);
  const title = useId();
  const { state, room, goOn } = useWalkFile(file);
  const [failure, setFailure] = useState<string>();
  useEffect(() => {
    dialog.current?.showModal();
  }, []);
  const why = state.kind === 'failed' ? state.why : failure;
  return (
    <dialog
      ref={dialog}
      className="walk"
      aria-labelledby={title}
      onCancel={(event) => {
        event.preventDefault();
        close();
      }}
    >
      <h2 id={title}>
        {line === 'drive' ? 'Drive line' : 'Delivery line'} from {file.name}
      </h2>
      {why !== undefined ? (
        <div className="slip danger" role="alert">
          <p>That did not work: {why}. Nothing was changed; open the file again.</p>
        </div>
      ) : state.kind === 'reading' ? (
        <p role="status">Reading the file</p>
      ) : state.kind === 'refused' ? (
        <Refused name={file.name} {...state} goOn={goOn} />
      ) : state.kind === 'open' ? (
        <Opened {...{ line, room, close, file }} lines={state.lines} fail={setFailure} />
      ) : null}
      {state.kind !== 'open' && (
        <div className="row walk-foot">
          <button type="button" className="button" onClick={chooseAnother}>
            Choose another file
          </button>
          <button type="button" className="button plain" onClick={() => close()}>
            Leave it
          </button>
        </div>
      )}
    </dialog>
  );
}

function Refused({
  name,
  problems,
  readable,
  goOn,
}: {
  readonly name: string;
  readonly problems: readonly SiteProblem[];
  readonly readable?: readonly WalkListed[];
  readonly goOn: () => void;
}) {
  const count = readable?.reduce((sum, { points }) => sum + points, 0) ?? 0;
  return (
    <div className="slip danger" role="alert">
      <p>
        <strong>{name} was not taken.</strong> Nothing here was changed.
      </p>
      <Problems problems={problems} />
      {readable !== undefined && (
        <p className="row">
          {count.toLocaleString('en')} points could be read all the same.
          <button type="button" className="button" onClick={goOn}>
            Go on with them
          </button>
        </p>
      )}
    </div>
  );
}

function Problems({ problems }: { readonly problems: readonly SiteProblem[] }) {
  return (
    <ul>
      {problems.map(({ line, field, message }) => (
        <li key={`${line} ${field} ${message}`}>
          {line !== undefined && `Line ${line}: `}
          {message}
        </li>
      ))}
    </ul>
  );
}

/** Metres of ground; the empty word stands for the usual ones. */
const WINDOWS = ['', '0', '10', '40', '80'] as const;
const COUNTS = ['20', '40', '80', '200'] as const;
const USUAL_COUNT = '40';

const BEGINS = {
  drive: [
    { value: 'forward', label: 'at the source' },
    { value: 'reversed', label: 'at the ram' },
  ],
  delivery: [
    { value: 'forward', label: 'at the ram' },
    { value: 'reversed', label: 'at the tank' },
  ],
} as const;

function Opened({
  line,
  lines,
  room,
  file,
  close,
  fail,
}: Pick<WalkDialogProps, 'line' | 'file' | 'close'> & {
  readonly lines: readonly WalkListed[];
  readonly room: Parameters<typeof useWalked>[0];
  readonly fail: (why: string) => void;
}) {
  const { place, answer, settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  const document = useStore(place, (state) => state.document);
  const installation = useStore(answer, (state) => state.shown?.value.installation);
  const [index, setIndex] = useState(0);
  const [begins, setBegins] = useState<'forward' | 'reversed'>();
  const [window, setWindow] = useState<string>('');
  const [count, setCount] = useState<string>(USUAL_COUNT);
  const lengths = lengthsOf(document, line);
  const [asWalked, setAsWalked] = useState(lengths.kind === 'oneOpen');
  const far = farEnd(document, line, installation);
  const bore = widestBore(line, installation);
  const choice: WalkChoice = {
    index,
    line,
    count: Number(count),
    ...(begins === undefined ? {} : { isReversed: begins === 'reversed' }),
    ...(window === '' ? {} : { window: Number(window) }),
    ...(far === undefined ? {} : { far }),
    ...(lengths.kind === 'written' && !asWalked ? { length: lengths.total } : {}),
    ...(bore === undefined ? {} : { bore }),
  };
  const walked = useWalked(room, choice, fail);
  const read = walked?.read;
  const isReversed =
    begins === undefined ? read?.ok === true && read.value.isReversed : begins === 'reversed';
  const ready = read?.ok === true ? read.value : undefined;
  return (
    <>
      <div className="walk-choices">
        {lines.length > 1 && (
          <Select
            className="field of-file"
            label={`Which of its ${lines.length} lines`}
            value={String(index)}
            options={lines.map((one, at) => ({
              value: String(at),
              label: listedInWords(one, system),
            }))}
            choose={(value) => {
              setIndex(Number(value));
              setBegins(undefined);
            }}
          />
        )}
        {read?.ok !== false && (
          <div className="field">
            <span className="field-head">The file begins</span>
            <Choice
              legend="The file begins"
              options={BEGINS[line]}
              value={isReversed ? 'reversed' : 'forward'}
              onChoose={setBegins}
            />
            {begins === undefined && ready !== undefined && (
              <p className="reading">taken from its heights</p>
            )}
          </div>
        )}
        {ready !== undefined && (
          <>
            <Select
              label="Heights averaged over"
              value={window}
              options={WINDOWS.map((value) => ({
                value,
                label: windowInWords(value, ready, system),
              }))}
              choose={setWindow}
            />
            <Select
              label="Points kept, at most"
              value={count}
              options={COUNTS.map((value) => ({ value, label: value }))}
              choose={setCount}
            />
          </>
        )}
        {ready !== undefined && lengths.kind === 'written' && lengths.pipes === 1 && (
          <div className="field">
            <span className="field-head">Length of the pipe</span>
            <Choice
              legend="Length of the pipe"
              options={[
                { value: 'written', label: `${metresInWords(lengths.total, system)}, as written` },
                {
                  value: 'walked',
                  label: `${metresInWords(ready.walkedLength, system)}, as walked`,
                },
              ]}
              value={asWalked ? 'walked' : 'written'}
              onChoose={(value) => setAsWalked(value === 'walked')}
            />
          </div>
        )}
      </div>
      {read === undefined ? (
        <p role="status">Reading the file</p>
      ) : (
        <Outcome
          {...{ line, read, system, lengths, file, close }}
          takesLength={asWalked}
          levelLength={lines[index]?.length ?? 0}
          isOld={walked?.isOld ?? false}
        />
      )}
    </>
  );
}

function Outcome({
  line,
  read,
  system,
  lengths,
  takesLength,
  levelLength,
  isOld,
  file,
  close,
}: Pick<WalkDialogProps, 'line' | 'file' | 'close'> & {
  readonly read: WalkedRead;
  readonly system: System;
  readonly lengths: Lengths;
  readonly takesLength: boolean;
  readonly levelLength: number;
  readonly isOld: boolean;
}) {
  const { place } = useNotebook();
  const document = useStore(place, (state) => state.document);
  const [wantsRise, setWantsRise] = useState<boolean>();
  const walk = read.ok ? read.value : undefined;
  const isTooCoarse = line === 'drive' && walk?.areSatelliteHeights === true;
  const lacksFar = farText(document, line) === undefined;
  const offersRise =
    walk !== undefined &&
    lacksFar &&
    walk.rise > 0 &&
    !(line === 'drive' && walk.areSatelliteHeights);
  const takesRise = offersRise && (wantsRise ?? walk?.areSatelliteHeights === false);
  const length = walk?.walkedLength ?? levelLength;

  const put = (next: Place | undefined, done: string): void => {
    if (next === undefined) return;
    place.update(() => next);
    close(done);
  };
  const putWhole = (): void => {
    if (walk === undefined) return;
    put(
      walkPutIn(place.get(), walk, { line, system, takesLength, takesRise }),
      `The profile is from ${file.name}. Undo takes it back.`,
    );
  };
  const putLength = (): void =>
    put(
      lengthPutIn(place.get(), length, { line, system }),
      `The length is from ${file.name}. Undo takes it back.`,
    );
  const obstacle = obstacleOf(lengths, takesLength, length, system);
  const canTakeLength = lengthPutIn(place.get(), length, { line, system }) !== undefined;
  return (
    <>
      {walk !== undefined && <WalkPreview walk={walk} line={line} system={system} />}
      {!read.ok && (
        <div className="slip danger" role="alert">
          <Problems problems={read.problems} />
        </div>
      )}
      {walk !== undefined && <Words words={walk.words[system]} />}
      {offersRise && (
        <label className="walk-rise">
          <input
            type="checkbox"
            checked={takesRise}
            onChange={(event) => setWantsRise(event.target.checked)}
          />
          Write {riseInWords(walk, system)} as the {line === 'drive' ? 'fall' : 'lift'}, which is
          not written yet
        </label>
      )}
      {obstacle !== undefined && <p className="slip">{obstacle}</p>}
      <div className="row walk-foot">
        {walk !== undefined && obstacle === undefined && (
          <button
            type="button"
            className={isTooCoarse ? 'button' : 'button main'}
            disabled={isOld}
            onClick={putWhole}
          >
            Put it in
          </button>
        )}
        {canTakeLength && (
          <button
            type="button"
            className={walk === undefined || isTooCoarse ? 'button main' : 'button'}
            onClick={putLength}
          >
            Take its length alone, {metresInWords(length, system)}
          </button>
        )}
        <button type="button" className="button plain" onClick={() => close()}>
          Leave it
        </button>
        {walk !== undefined && hasProfile(document, line) && (
          <p className="note">{replacesInWords(document, line)}</p>
        )}
      </div>
    </>
  );
}

function Words({ words }: { readonly words: WalkedLine['words'][System] }) {
  return (
    <>
      {words.warnings.length > 0 && (
        <div className="slip walk-warnings">
          <ul>
            {words.warnings.map((text) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </div>
      )}
      <ul className="walk-done">
        {words.done.map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
    </>
  );
}

function Select({
  label,
  value,
  options,
  choose,
  className = 'field',
}: {
  readonly className?: string;
  readonly label: string;
  readonly value: string;
  readonly options: readonly { readonly value: string; readonly label: string }[];
  readonly choose: (value: string) => void;
}) {
  const id = useId();
  return (
    <div className={className}>
      <label htmlFor={id}>{label}</label>
      <select id={id} value={value} onChange={(event) => choose(event.target.value)}>
        {options.map((option) => (
          <option key={option.value} value={option.value}>
            {option.label}
          </option>
        ))}
      </select>
    </div>
  );
}

const metresInWords = (metres: number, system: System): string =>
  formatQuantity(metres, 'pipeLength', system, { figures: 4 });

function listedInWords({ called, points, length, hasHeights }: WalkListed, system: System): string {
  const heights = hasHeights ? '' : ', no heights';
  return `${called}: ${points.toLocaleString('en')} points, ${metresInWords(length, system)}${heights}`;
}

function windowInWords(
  value: (typeof WINDOWS)[number],
  { window, isUsualWindow }: WalkedLine,
  system: System,
): string {
  const ground = (metres: number): string =>
    metres === 0
      ? 'nothing'
      : `${formatQuantity(metres, 'pipeLength', system, { figures: 2 })} of ground`;
  if (value !== '') return ground(Number(value));
  return isUsualWindow ? `${ground(window)}, as usual` : 'the usual length';
}

function riseInWords({ rise, riseSpread }: WalkedLine, system: System): string {
  const spread = riseSpread === undefined ? {} : { spread: riseSpread };
  return formatQuantity(rise, 'height', system, spread);
}

function replacesInWords(document: SiteDocument, line: LineName): string {
  const count = pipesOf(document, line).reduce(
    (sum, _, pipe) => sum + writtenPoints(document, line, pipe).length,
    0,
  );
  const points = count === 1 ? 'the one point' : `the ${count} points`;
  return `It takes the place of ${points} of ${LINE_CALLED[line]}; undo brings ${count === 1 ? 'it' : 'them'} back.`;
}

/** Why the walk cannot be laid along the pipes yet. */
function obstacleOf(
  lengths: Lengths,
  takesLength: boolean,
  walked: number,
  system: System,
): string | undefined {
  if (lengths.kind === 'open') {
    const numbers = lengths.pipes.map((pipe) => pipe + 1).join(' and ');
    return `Leave this and write the lengths of pipes ${numbers} first: the file does not say where one ends and the next begins.`;
  }
  if (lengths.kind === 'oneOpen' && takesLength && walked - lengths.others <= 0.1) {
    return `The other pipes are ${metresInWords(lengths.others, system)} long together and the walk only ${metresInWords(walked, system)}. Leave this and write the length of pipe ${lengths.pipe + 1} first.`;
  }
  return undefined;
}

const farText = (document: SiteDocument, line: LineName) =>
  line === 'drive' ? document.fall : document.lift;

type Installed = NonNullable<SiteAnswerState['shown']>['value']['installation'] | undefined;

/** The fall or the lift as it is written, or as the answer makes it from readings. */
function farEnd(
  document: SiteDocument,
  line: LineName,
  installation: Installed,
): number | undefined {
  const entry = farText(document, line);
  if (entry === undefined) return undefined;
  return readMetres(entry, 'height') ?? installation?.[line === 'drive' ? 'fall' : 'lift'];
}

function widestBore(line: LineName, installation: Installed): number | undefined {
  const segments = installation?.[line === 'drive' ? 'driveLine' : 'deliveryLine'].segments;
  return segments && Math.max(...segments.map(({ pipe }) => pipe.innerDiameter));
}
