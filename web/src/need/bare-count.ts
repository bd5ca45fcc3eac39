/** A plain number: how many, how many years, a share of the usual. It has no unit, so a unit behind it is a fault. */
import { readNumber } from '@fallwright/units';

/** As in the site file: larger is a slip of the hand. */
const MOST = 1e6;

export type CountRead =
  | { readonly ok: true; readonly value: number }
  | { readonly ok: false; readonly fault: string };

export function readCount(text: string, called: string, example: string): CountRead {
  const read = readNumber(text);
  const start = called.charAt(0).toUpperCase() + called.slice(1);
  if (read === undefined) {
    return { ok: false, fault: `${start} cannot be read. Write a plain number, like ${example}.` };
  }
  if (read.rest !== '') {
    return {
      ok: false,
      fault: `${start} is a plain number, without words or a unit behind it. Write it like ${example}.`,
    };
  }
  if (read.value < 0) return { ok: false, fault: `${start} cannot be below nought.` };
  if (read.value > MOST) return { ok: false, fault: `${start} is far too large. Check it.` };
  return { ok: true, value: read.value };
}
