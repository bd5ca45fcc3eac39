/** What is compared: pipes, lengths, how the line is laid, and rams, each with a tick. */
import { findPipe, pipeNames } from '@fallwright/engine';
import type { Purpose, System } from '@fallwright/units';
import { formatQuantity, readQuantity } from '@fallwright/units';
import { useId, useState } from 'react';
import { familiesNear } from './candidates.ts';
import { isStraight, lengthOf } from './changed-line.ts';
import type { Choices } from './choices.ts';
import { OWN_PIPE, tableName, withPipeAdded, withPipeToggled, withRamToggled } from './choices.ts';
import { nameOfLine } from './drive-rows.ts';
import { ownRamLabel, tunedRams, typicalRams } from './ram-columns.ts';
import { sameText } from './same-text.ts';

export interface ChoosePanelProps {
  readonly choices: Choices;
  readonly system: System;
  readonly onChange: (change: (choices: Choices) => Choices) => void;
}

export function ChoosePanel({
  rowCount,
  columnCount,
  ...props
}: ChoosePanelProps & { readonly rowCount: number; readonly columnCount: number }) {
  return (
    <details className="choose">
      <summary>
        <strong>What is compared:</strong> {rowCount} drive {rowCount === 1 ? 'line' : 'lines'} with{' '}
        {columnCount} {columnCount === 1 ? 'ram' : 'rams'}. <u>Choose others</u>
      </summary>
      <div className="choose-parts">
        <PipeChoices {...props} />
        <div>
          <LengthChoices {...props} />
          <LaidChoices {...props} />
        </div>
        <RamChoices {...props} />
      </div>
    </details>
  );
}

function Tick({
  label,
  isOn,
  onToggle,
}: {
  readonly label: React.ReactNode;
  readonly isOn: boolean;
  readonly onToggle: () => void;
}) {
  return (
    <label className="tick">
      <input type="checkbox" checked={isOn} onChange={onToggle} />
      <span>{label}</span>
    </label>
  );
}

function PipeChoices({ choices, system, onChange }: ChoosePanelProps) {
  const own = tableName(choices.line);
  const families = familiesNear(choices.bore, system);
  const offered = families.flatMap(({ pipes }) => pipes.map(({ name }) => name));
  const others = [...new Set([...choices.added, ...choices.pipes])].filter(
    (name) => name !== OWN_PIPE && !offered.includes(name),
  );
  const tick = (name: string, label: React.ReactNode) => (
    <Tick
      key={name}
      label={label}
      isOn={choices.pipes.includes(name)}
      onToggle={() => onChange((now) => withPipeToggled(now, name))}
    />
  );
  return (
    <fieldset>
      <legend>Pipe</legend>
      {tick(OWN_PIPE, `as it is: ${nameOfLine(choices.line)}`)}
      {families.map(({ called, begins, pipes }) => (
        <div className="family of-pipes" key={called}>
          <span aria-hidden="true">{called}</span>
          {pipes
            .filter(({ name }) => name !== own)
            .map(({ name }) => tick(name, <Size name={name} begins={begins} />))}
        </div>
      ))}
      {others.length > 0 && (
        <div className="family">
          <span>Named by you</span>
          {others.map((name) => tick(name, name))}
        </div>
      )}
      <PipeAdder onAdd={(name) => onChange((now) => withPipeAdded(now, name))} />
    </fieldset>
  );
}

/** A pipe in the row of its kind: its size is seen, its whole name is heard. */
function Size({ name, begins }: { readonly name: string; readonly begins: string }) {
  const kind = begins.replace(/DN$/, '');
  return (
    <>
      <span className="for-ears">{kind}</span>
      {name.slice(kind.length)}
    </>
  );
}

/** Any other pipe of the tables, by its name. */
function PipeAdder({ onAdd }: { readonly onAdd: (name: string) => void }) {
  const id = useId();
  const [text, setText] = useState('');
  const [fault, setFault] = useState<string>();
  const add = (event: React.FormEvent): void => {
    event.preventDefault();
    const found = findPipe(text.trim());
    if (found.ok) {
      onAdd(found.pipe.name);
      setText('');
      setFault(undefined);
      return;
    }
    const near = found.suggestions.slice(0, 3).join(', ');
    setFault(
      text.trim() === ''
        ? 'Which pipe? Write its name, such as PE100 SDR11 32 or steel sch 40 1 in.'
        : `No pipe in the tables is called ${text.trim()}. ${near === '' ? 'Write a name such as PE100 SDR11 32.' : `Near it: ${near}.`}`,
    );
  };
  return (
    <form className={fault === undefined ? 'field adder' : 'field wrong adder'} onSubmit={add}>
      <label htmlFor={id}>Another pipe</label>
      <div className="row">
        <input
          id={id}
          type="text"
          list={`${id}-names`}
          autoComplete="off"
          autoCapitalize="off"
          spellCheck={false}
          placeholder="like PE100 SDR11 32"
          value={text}
          aria-invalid={fault !== undefined}
          aria-describedby={`${id}-fault`}
          onChange={(event) => {
            setText(event.target.value);
            setFault(undefined);
          }}
        />
        <button type="submit" className="button">
          Add
        </button>
      </div>
      <p id={`${id}-fault`} className="fault">
        {fault}
      </p>
      <datalist id={`${id}-names`}>
        {pipeNames().map((name) => (
          <option key={name} value={name} />
        ))}
      </datalist>
    </form>
  );
}

function LengthChoices({ choices, system, onChange }: ChoosePanelProps) {
  const { lengths } = choices;
  const change = (part: Partial<Choices['lengths']>): void =>
    onChange((now) => ({ ...now, lengths: { ...now.lengths, ...part } }));
  const own = formatQuantity(lengthOf(choices.line), 'pipeLength', system);
  return (
    <fieldset>
      <legend>Length of the drive line</legend>
      <Tick
        label={`as it is: ${own}`}
        isOn={lengths.asItIs}
        onToggle={() => change({ asItIs: !lengths.asItIs })}
      />
      {(['shorter', 'longer'] as const).map((which) => (
        <TickWithAmount
          key={which}
          label={which}
          amountCalled={`how long when ${which}`}
          purpose="pipeLength"
          isOn={lengths[which].isChosen}
          text={lengths[which].text}
          onToggle={() =>
            change({ [which]: { ...lengths[which], isChosen: !lengths[which].isChosen } })
          }
          onType={(text) => change({ [which]: { isChosen: true, text } })}
        />
      ))}
    </fieldset>
  );
}

function LaidChoices({ choices, onChange }: ChoosePanelProps) {
  const { laid, line } = choices;
  const change = (part: Partial<Choices['laid']>): void =>
    onChange((now) => ({ ...now, laid: { ...now.laid, ...part } }));
  const isStraightNow = isStraight(line);
  return (
    <fieldset>
      <legend>How it is laid</legend>
      <Tick
        label={isStraightNow ? 'as it is: straight' : 'as it is'}
        isOn={laid.asItIs}
        onToggle={() => change({ asItIs: !laid.asItIs })}
      />
      {!isStraightNow && (
        <Tick
          label="straight, and bled of air"
          isOn={laid.straight}
          onToggle={() => change({ straight: !laid.straight })}
        />
      )}
      <TickWithAmount
        label="over a crest that holds air"
        amountCalled="how much air the crest holds"
        purpose="smallVolume"
        placeholder="half the bore"
        isOptional
        isOn={laid.overCrest}
        text={laid.air}
        onToggle={() => change({ overCrest: !laid.overCrest })}
        onType={(air) => change({ overCrest: true, air })}
      />
      {laid.overCrest && laid.air.trim() === '' && (
        <p className="note">
          With no amount: air that fills half the bore over ten bores (a judgement, no source).
        </p>
      )}
    </fieldset>
  );
}

/** A tick with a quantity of its own. A fault is told on leaving the box; what was typed stays. */
function TickWithAmount({
  label,
  amountCalled,
  purpose,
  placeholder,
  isOptional = false,
  isOn,
  text,
  onToggle,
  onType,
}: {
  readonly label: string;
  /** How sentences name the amount. */
  readonly amountCalled: string;
  readonly purpose: Purpose;
  readonly placeholder?: string;
  readonly isOptional?: boolean;
  readonly isOn: boolean;
  readonly text: string;
  readonly onToggle: () => void;
  readonly onType: (text: string) => void;
}) {
  const id = useId();
  const [isInside, setInside] = useState(false);
  const read = readQuantity(text, purpose, amountCalled);
  const isEmptyAllowed = isOptional && text.trim() === '';
  const fault = faultOf(read, isEmptyAllowed || isInside);
  return (
    <div className={fault === undefined ? 'field tick-amount' : 'field wrong tick-amount'}>
      <Tick label={label} isOn={isOn} onToggle={onToggle} />
      <input
        type="text"
        aria-label={amountCalled}
        aria-invalid={fault !== undefined}
        aria-describedby={`${id}-fault`}
        autoComplete="off"
        autoCapitalize="off"
        spellCheck={false}
        placeholder={placeholder}
        value={text}
        onChange={(event) => onType(event.target.value)}
        onFocus={() => setInside(true)}
        onBlur={() => setInside(false)}
      />
      <p id={`${id}-fault`} className="fault">
        {fault}
      </p>
    </div>
  );
}

function faultOf(read: ReturnType<typeof readQuantity>, isLetBe: boolean): string | undefined {
  if (isLetBe) return undefined;
  if (!read.ok) return read.problems.map(({ message }) => message).join(' ');
  return read.value.value > 0 ? undefined : 'Write more than nought.';
}

function RamChoices({ choices, system, onChange }: ChoosePanelProps) {
  const has = new Set(choices.rams.map(sameText));
  const tick = (entry: Choices['ram'], label: string) => (
    <Tick
      key={sameText(entry)}
      label={label}
      isOn={has.has(sameText(entry))}
      onToggle={() => onChange((now) => withRamToggled(now, entry))}
    />
  );
  const offered = [...tunedRams(choices, system), ...typicalRams(choices)];
  const known = new Set([choices.ram, ...offered.map(({ entry }) => entry)].map(sameText));
  const others = choices.rams.filter((ram) => !known.has(sameText(ram)));
  return (
    <fieldset>
      <legend>Ram</legend>
      {tick(choices.ram, `as it is: ${ownRamLabel(choices)}`)}
      <div className="family">
        <span>The same, tuned</span>
        {tunedRams(choices, system).map(({ entry, label }) => tick(entry, label))}
      </div>
      <div className="family">
        <span>Typical rams</span>
        {typicalRams(choices).map(({ entry, label }) => tick(entry, label))}
      </div>
      {others.length > 0 && (
        <div className="family">
          <span>Others</span>
          {others.map((entry) => tick(entry, ownRamLabel({ ...choices, ram: entry })))}
        </div>
      )}
    </fieldset>
  );
}
