/** The parts list as rows to print: what, how many, how it is cut, what it costs. */
import type { BoughtPiece, PartsList, PartsRow } from '@fallwright/engine';
import { plainFigures } from '@fallwright/units';
import { groupInWords, kindInWords, lineInWords, UNITS_OF_SALE } from './item-words.ts';
import { moneyInWords, type Reader, shown, sizeInWords } from './reader.ts';

export interface PrintedPart {
  readonly group: string;
  readonly what: string;
  readonly size: string;
  /** How it is cut, what it must hold, how much of it is needed when more is bought. */
  readonly note: string;
  readonly quantity: string;
  /** Both empty where the price is not known. */
  readonly each: string;
  readonly sum: string;
}

export function partsRows(list: PartsList, reader: Reader): readonly PrintedPart[] {
  return list.rows.flatMap((row) =>
    row.kind === 'pipe' && row.pieces !== undefined && row.price === undefined
      ? pipeRows(row, row.pieces, reader)
      : [itemRow(row, reader)],
  );
}

/** Absent while a price is missing: a sum of the rest would be read as the price. */
export function totalInWords({ total }: PartsList, reader: Reader): string | undefined {
  return total === undefined ? undefined : moneyInWords(total, reader);
}

function itemRow(row: PartsRow, reader: Reader): PrintedPart {
  const { price, total } = row;
  return {
    ...headOf(row, reader),
    note: noteOf(row, reader),
    quantity: amountInWords(row, row.bought, reader),
    each: price === undefined ? '' : moneyInWords(price, reader),
    sum: total === undefined ? '' : moneyInWords(total, reader),
  };
}

function headOf(row: PartsRow, reader: Reader): Pick<PrintedPart, 'group' | 'what' | 'size'> {
  return {
    group: groupInWords(row.group),
    what: row.name ?? kindInWords(row.kind),
    // A pipe's name has its own size: a PE 25 fits what is called DN 20, and both side by side would puzzle.
    size: row.size === undefined || row.kind === 'pipe' ? '' : sizeInWords(row.size, reader),
  };
}

function amountInWords({ unit }: PartsRow, amount: number, reader: Reader): string {
  if (unit === 'metre') return shown(amount, 'pipeLength', reader);
  const number = plainFigures(amount, 3);
  return unit === 'each' ? number : `${number}\u00a0${UNITS_OF_SALE[unit]}`;
}

function noteOf(row: PartsRow, reader: Reader): string {
  const { kind, group, line, name, needed, bought, holds, openArea, pieces } = row;
  const notes = [
    // In its own group a line need not be named.
    ...(line !== undefined && (group === 'work' || line === 'feeder') && kind !== 'pipe'
      ? [lineInWords(line)]
      : []),
    ...(name === undefined ? ['none on the price list that fits'] : []),
    ...(holds === undefined ? [] : [`to hold ${newtons(holds)} each`]),
    ...(openArea === undefined
      ? []
      : [`holes of ${shown(openArea, 'smallArea', reader, 2)} or more`]),
    ...(pieces ? [cutsInWords(pieces, reader)] : []),
    ...(bought > needed * (1 + 1e-9) ? [`${amountInWords(row, needed, reader)} needed`] : []),
  ];
  return notes.join('; ');
}

/** A force too large for a kitchen scale is told in newtons everywhere. */
function newtons(force: number): string {
  return `${plainFigures(force, 2)}\u00a0N`;
}

/** One row for each length that is bought of a pipe. */
function pipeRows(
  row: PartsRow,
  pieces: readonly BoughtPiece[],
  reader: Reader,
): readonly PrintedPart[] {
  const lengths = [...new Set(pieces.map(({ length }) => length))];
  return lengths.map((length) => {
    const alike = pieces.filter((piece) => piece.length === length);
    const cost = alike[0]?.cost;
    return {
      ...headOf(row, reader),
      note: cutsInWords(alike, reader),
      quantity: `${alike.length}\u00a0× ${shown(length, 'pipeLength', reader)}`,
      each: cost === undefined ? '' : moneyInWords(cost, reader),
      sum: cost === undefined ? '' : moneyInWords(cost * alike.length, reader),
    };
  });
}

/** `2 × 6 m for drive line; 1 m for drive line + 5 m over`: pieces cut alike are told together. */
function cutsInWords(pieces: readonly BoughtPiece[], reader: Reader): string {
  const told = new Map<string, number>();
  for (const piece of pieces) {
    const words = pieceInWords(piece, reader);
    told.set(words, (told.get(words) ?? 0) + 1);
  }
  return [...told]
    .map(([words, times]) => (times > 1 ? `${times}\u00a0× ${words}` : words))
    .join('; ');
}

/** Judgement: an off-cut shorter than this is waste and not told. */
const TOLD_OFF_CUT: number = 0.1;

function pieceInWords({ cuts, offCut }: BoughtPiece, reader: Reader): string {
  const parts = cuts.map(
    ({ line, number, length }) =>
      `${shown(length, 'pipeLength', reader)} for ${lineInWords(line)}${number > 1 ? ` ${number}` : ''}`,
  );
  const rest = offCut >= TOLD_OFF_CUT ? [`${shown(offCut, 'pipeLength', reader, 2)} over`] : [];
  return [...parts, ...rest].join(' + ');
}
