/** The wish as it is typed, and what it says. What cannot be read is told at its box and keeps the choice from beginning. */
import type { System } from '@fallwright/units';
import { formatQuantity, readQuantity } from '@fallwright/units';
import type { AskedWish } from './choice-request.ts';

export interface WishForm {
  readonly rams: 'range' | 'typical';
  readonly prices: 'list' | 'none';
  /** In place of what the place needs; empty leaves it so. */
  readonly need: string;
  readonly lengths: string;
  readonly mostRams: number;
  /** Whether vessels of the price list are tried in place of the rams' own. */
  readonly otherVessels: boolean;
  /** Chance that a pick must have. */
  readonly wantedChance: number;
  readonly judges: boolean;
}

export const USUAL_WISH: WishForm = {
  rams: 'range',
  prices: 'list',
  need: '',
  lengths: '',
  mostRams: 1,
  otherVessels: false,
  // Judgement: four years in five, as on the command line.
  wantedChance: 0.8,
  judges: true,
};

/** Judgement: no way is laid out in so many lengths, and each is a run for every ram and pipe. */
const MOST_LENGTHS = 20;

export type WishRead =
  | { readonly ok: true; readonly wish: AskedWish }
  | { readonly ok: false; readonly faults: Readonly<Partial<Record<'need' | 'lengths', string>>> };

export function readWish(form: WishForm): WishRead {
  const need = form.need.trim() === '' ? undefined : readNeed(form.need);
  const lengths = form.lengths.trim() === '' ? undefined : readLengths(form.lengths);
  const faults = {
    ...(need === undefined || need.ok ? {} : { need: need.fault }),
    ...(lengths === undefined || lengths.ok ? {} : { lengths: lengths.fault }),
  };
  if (Object.keys(faults).length > 0) return { ok: false, faults };
  return {
    ok: true,
    wish: {
      ...(need?.ok === true ? { need: need.value } : {}),
      ...(lengths?.ok === true ? { driveLengths: lengths.value } : {}),
      mostRams: form.mostRams,
      otherVessels: form.otherVessels,
      wantedChance: form.wantedChance,
      judges: form.judges,
    },
  };
}

type Read<Value> =
  | { readonly ok: true; readonly value: Value }
  | { readonly ok: false; readonly fault: string };

function readNeed(text: string): Read<number> {
  const read = readQuantity(text.trim(), 'daily', 'the need');
  if (!read.ok) return { ok: false, fault: read.problems.map(({ message }) => message).join(' ') };
  return read.value.value > 0
    ? { ok: true, value: read.value.value }
    : { ok: false, fault: 'The need is nought. Write it like 900 L/day, or leave it empty.' };
}

/** A comma between figures is a decimal one. */
function readLengths(text: string): Read<readonly number[]> {
  const lengths: number[] = [];
  for (const part of text.split(/;|,(?!\d)/).filter((one) => one.trim() !== '')) {
    const read = readQuantity(part.trim(), 'pipeLength', 'a drive length');
    if (!read.ok) {
      const why = read.problems.map(({ message }) => message).join(' ');
      return { ok: false, fault: `${why} Write them like 12 m, 15 m.` };
    }
    if (!(read.value.value > 0)) {
      return { ok: false, fault: 'A length is nought. Write them like 12 m, 15 m.' };
    }
    lengths.push(read.value.value);
  }
  const different = [...new Set(lengths)].sort((a, b) => a - b);
  return different.length > MOST_LENGTHS
    ? {
        ok: false,
        fault: `These are ${different.length} lengths; at most ${MOST_LENGTHS} can be tried.`,
      }
    : { ok: true, value: different };
}

/** How a box was read, for the line under it. */
export function needInWords(form: WishForm, system: System): string | undefined {
  const read = form.need.trim() === '' ? undefined : readNeed(form.need);
  return read?.ok === true ? formatQuantity(read.value, 'daily', system) : undefined;
}
