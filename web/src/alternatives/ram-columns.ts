/** The rams to compare, one column each: typical sizes, and the ram on the sheet tuned otherwise. */
import type { TypicalSize } from '@fallwright/engine';
import { TYPICAL_SIZES } from '@fallwright/engine';
import type { System } from '@fallwright/units';
import { textOf } from '../state/entry.ts';
import type { Plain, PlainRecord } from '../state/site-document.ts';
import { isRecord } from '../state/site-document.ts';
import { written } from './changed-line.ts';
import type { Choices } from './choices.ts';
import { LONGER, nameOf, SHORTER } from './choices.ts';
import type { OpenedAlternative } from './opened.ts';
import { sameText } from './same-text.ts';

export interface RamColumn {
  readonly key: string;
  readonly entry: Plain;
  readonly name: string;
  /** What tells it from the same ram tuned otherwise. */
  readonly detail: string;
  readonly isOnSheet: boolean;
  /** Where it was opened from, when it was not made from the choices. */
  readonly opened?: OpenedAlternative;
}

/** The rams chosen, the one on the sheet always among them, and those that were opened elsewhere. */
export function ramColumns(choices: Choices, onSheet: Plain, system: System): RamColumn[] {
  const opened = choices.opened.flatMap(
    (alternative): { entry: Plain; opened: OpenedAlternative }[] => {
      const entry = openedRam(alternative, choices.ram, system);
      return entry === undefined ? [] : [{ entry, opened: alternative }];
    },
  );
  const sheetKey = sameText(onSheet);
  const wanted = [...choices.rams.map((entry) => ({ entry })), ...opened];
  const isThere = wanted.some(({ entry }) => sameText(entry) === sheetKey);
  const columns: RamColumn[] = (isThere ? wanted : [{ entry: onSheet }, ...wanted]).map((ram) => ({
    ...ram,
    key: sameText(ram.entry),
    name: ramName(ram.entry),
    detail: detailOf(ram.entry),
    isOnSheet: sameText(ram.entry) === sheetKey,
  }));
  const unlike = columns.filter(({ key }, i) => columns.findIndex((c) => c.key === key) === i);
  return unlike.sort((a, b) => sizeRank(a.entry) - sizeRank(b.entry));
}

function openedRam(alternative: OpenedAlternative, ram: Plain, system: System): Plain | undefined {
  switch (alternative.kind) {
    case 'stroke':
      return tuned(ram, 'stroke', written(alternative.stroke, 'stroke', system));
    case 'weight':
      return tuned(ram, 'weight', written(alternative.weight, 'weight', system));
    default:
      return undefined;
  }
}

/** Typical sizes in the order of their bores; a ram with parts of its own stands where its size does. */
function sizeRank(entry: Plain): number {
  const size = isRecord(entry) ? textOf(entry.typical) : textOf(entry);
  const at = Object.keys(TYPICAL_SIZES).indexOf(size.trim());
  return at < 0 ? Number.MAX_SAFE_INTEGER : at;
}

function ramName(entry: Plain): string {
  if (!isRecord(entry)) return textOf(entry);
  const named = textOf(entry.name) || textOf(entry.typical);
  return named === '' ? `ram of ${textOf(entry.bore)}` : named;
}

function detailOf(entry: Plain): string {
  if (!isRecord(entry)) return '';
  const valve = isRecord(entry.wasteValve) ? entry.wasteValve : {};
  const stroke = textOf(entry.stroke) || textOf(valve.stroke);
  const weight = textOf(entry.weight) || textOf(valve.weight);
  return [
    ...(weight === '' ? [] : [`valve ${weight}`]),
    ...(stroke === '' ? [] : [`stroke ${stroke}`]),
  ].join(', ');
}

/** The ram with another weight or stroke of its waste valve, written where the file already has it. */
export function tuned(ram: Plain, part: 'stroke' | 'weight', text: string): Plain {
  const parts: PlainRecord = isRecord(ram) ? ram : { typical: ram };
  const valve = isRecord(parts.wasteValve) ? parts.wasteValve : undefined;
  if (part === 'weight' && valve?.weightInWater !== undefined) {
    const { weightInWater: _weight, ...others } = valve;
    return { ...parts, wasteValve: { ...others, weight: text } };
  }
  return valve?.[part] === undefined
    ? { ...parts, [part]: text }
    : { ...parts, wasteValve: { ...valve, [part]: text } };
}

export interface OfferedRam {
  readonly entry: Plain;
  readonly label: string;
}

/** The ram that the list began with, and the same one tuned four ways. */
export function tunedRams({ ram, ramNow }: Choices, system: System): OfferedRam[] {
  const { stroke, weight } = ramNow;
  const weighing = (value: number): string => written(value, 'weight', system);
  const travelling = (value: number): string => written(value, 'stroke', system);
  return [
    ...(weight === undefined
      ? []
      : [
          offer(ram, 'weight', 'lighter valve', weighing(weight * SHORTER)),
          offer(ram, 'weight', 'heavier valve', weighing(weight * LONGER)),
        ]),
    offer(ram, 'stroke', 'shorter stroke', travelling(stroke * SHORTER)),
    offer(ram, 'stroke', 'longer stroke', travelling(stroke * LONGER)),
  ];
}

function offer(ram: Plain, part: 'stroke' | 'weight', called: string, text: string): OfferedRam {
  return { entry: tuned(ram, part, text), label: `${called}, ${text}` };
}

export function typicalRams({ ram }: Choices): OfferedRam[] {
  const own = nameOf(ram);
  const sizes = Object.keys(TYPICAL_SIZES) as TypicalSize[];
  return sizes.filter((size) => size !== own).map((size) => ({ entry: size, label: size }));
}

export function ownRamLabel({ ram }: Choices): string {
  const detail = detailOf(ram);
  return detail === '' ? ramName(ram) : `${ramName(ram)}, ${detail}`;
}
