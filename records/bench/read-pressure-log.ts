/**
 * A pressure log as a data logger or a spreadsheet saves it: one line a reading, its columns named with their units in the
 * first line, `time (s), pressure (bar)` or `time_s,head_m`. Times at any steps.
 *
 * A log may have a million lines, so lines are taken apart by hand; nothing in a log needs quotes.
 */
import { MOST_READINGS, type PressureLog } from '@fallwright/engine';
import { quoted, readQuantity } from '@fallwright/units';
import type { Problem, ProblemKind } from '../problem.ts';
import { decimal } from '../profile/decimal.ts';
import { ProblemList } from '../profile/survey-file.ts';

export interface PressureLogFile {
  /** Seconds, and heads in metres of water. */
  readonly log: PressureLog;
  /** The column that was read, as the file names it. */
  readonly column: string;
  /** Other columns that could be read. */
  readonly otherColumns: readonly string[];
  readonly notices: readonly Problem[];
}

export type PressureLogRead =
  | { readonly ok: true; readonly value: PressureLogFile }
  | { readonly ok: false; readonly problems: readonly Problem[] };

/** Judgement: two million lines of 30 letters. */
export const LONGEST_LOG = 64 * 1024 * 1024;

const FIRST_LINE = 'The first line names the columns with their units: time (s), pressure (bar)';

interface Column {
  readonly index: number;
  readonly called: string;
  readonly quantity: 'time' | 'head';
  readonly unit: string | undefined;
}

/** `column` names the column of pressures when there are several. Never throws on what a file holds. */
export function readPressureLog(
  text: string,
  { column: wanted }: { readonly column?: string } = {},
): PressureLogRead {
  const notALog = whyNoLog(text);
  if (notALog !== undefined) return refusal('unreadable', notALog);
  const lines = text.replace(/^\ufeff/, '').split(/\r\n|\r|\n/);
  const headAt = lines.findIndex((line) => line.trim() !== '' && !line.startsWith('#'));
  const headLine = lines[headAt] ?? '';
  const delimiter = ['\t', ';'].find((sign) => headLine.includes(sign)) ?? ',';
  const names = headLine.split(delimiter).map(bare);
  const line = headAt + 1;
  if (names.every((name) => name === '' || decimal(name) !== undefined)) {
    return refusal('wrongForm', `The first line holds numbers and no names. ${FIRST_LINE}`, line);
  }
  const columns = names.flatMap((name, index) => columnOf(name, index) ?? []);
  const time = columns.find(({ quantity }) => quantity === 'time');
  const heads = columns.filter(({ quantity }) => quantity === 'head');
  const head = chosen(heads, wanted);
  if (!time || !head) {
    const lacking = time
      ? wanted === undefined
        ? 'pressures or heads'
        : `pressures called ${quoted(wanted)}`
      : 'times';
    return refusal(
      'missing',
      `There is no column of ${lacking} among ${names.map(quoted).join(', ')}. ${FIRST_LINE}`,
      line,
    );
  }
  const factors = { time: factorOf(time, line), head: factorOf(head, line) };
  const faults = Object.values(factors).filter((factor) => typeof factor !== 'number');
  if (faults.length > 0) return { ok: false, problems: faults };
  const read = readings(lines, { from: headAt + 1, delimiter, time, head });
  if (!read.ok) return read;
  const [perTime, perHead] = [factors.time as number, factors.head as number];
  return {
    ok: true,
    value: {
      log: {
        times: read.times.map((value) => value * perTime),
        heads: read.heads.map((value) => value * perHead),
      },
      column: head.called,
      otherColumns: heads.filter((one) => one !== head).map(({ called }) => called),
      notices: noticesOf(heads, head, wanted, line),
    },
  };
}

function whyNoLog(text: string): string | undefined {
  if (text.length > LONGEST_LOG) {
    return `This file is longer than ${LONGEST_LOG / 1024 / 1024} MB. Cut out the minutes that matter.`;
  }
  // biome-ignore lint/suspicious/noControlCharactersInRegex: they are how a binary file shows
  if (/[\u0000-\u0008\u000e-\u001f\ufffd]/.test(text.slice(0, 100_000))) {
    return 'This is not a text file in UTF-8. Save the log as CSV in UTF-8.';
  }
  if (text.replace(/^\ufeff/, '').trim() === '') return `This file is empty. ${FIRST_LINE}`;
  return undefined;
}

function bare(cell: string): string {
  return cell
    .trim()
    .replace(/^"(.*)"$/, '$1')
    .trim();
}

/** Where a log has several columns, that of the ram's body tells most of its beats. */
function chosen(heads: readonly Column[], wanted: string | undefined): Column | undefined {
  if (wanted !== undefined) {
    const plain = wanted.trim().toLowerCase();
    return (
      heads.find(({ called }) => called.toLowerCase() === plain) ??
      heads.find(({ called }) => called.toLowerCase().includes(plain))
    );
  }
  return heads.find(({ called }) => /waste|body|drive|ram/i.test(called)) ?? heads[0];
}

function columnOf(name: string, index: number): Column | undefined {
  const [, words = '', inBrackets] =
    /^([^([]*?)\s*(?:[([]\s*([^)\]]*?)\s*[)\]])?$/.exec(name) ?? [];
  const parts = words.split(/[_\s]+/).filter((part) => part !== '');
  const is = (pattern: RegExp): boolean => parts.some((part) => pattern.test(part));
  const quantity = is(/^(time|t|elapsed|timestamp|seconds)$/i)
    ? 'time'
    : is(/^(pressure|pressures|head|heads|p|h|gauge)\d*$/i)
      ? 'head'
      : undefined;
  if (quantity === undefined) return undefined;
  const unit = inBrackets || unitAtEnd(parts, quantity);
  return { index, called: name, quantity, unit };
}

/** `head_at_waste_valve_m` and `time s` say their unit without brackets, `seconds` is one. */
function unitAtEnd(parts: readonly string[], quantity: 'time' | 'head'): string | undefined {
  if (/^seconds$/i.test(parts[0] ?? '')) return 's';
  const last = parts.length > 1 ? parts.at(-1) : undefined;
  return last !== undefined && readQuantity(`1 ${last}`, quantity).ok ? last : undefined;
}

/** SI for one of the unit that the head names, or what is wrong with it. */
function factorOf({ called, quantity, unit }: Column, line: number): number | Problem {
  const example = quantity === 'time' ? 'time (s)' : 'pressure (bar)';
  if (unit === undefined) {
    const message = `The column ${quoted(called)} has no unit. Name it in the first line, such as ${example}.`;
    return { kind: 'noUnit', field: called, line, message };
  }
  const one = readQuantity(`1 ${unit}`, quantity);
  if (one.ok) return one.value.value;
  const message = `${quoted(unit)} is no unit for ${quoted(called)}. Write it like ${example}.`;
  return { kind: 'unknownUnit', field: called, line, message };
}

type Readings =
  | { readonly ok: true; readonly times: readonly number[]; readonly heads: readonly number[] }
  | { readonly ok: false; readonly problems: readonly Problem[] };

function readings(
  lines: readonly string[],
  {
    from,
    delimiter,
    time,
    head,
  }: {
    readonly from: number;
    readonly delimiter: string;
    readonly time: Column;
    readonly head: Column;
  },
): Readings {
  const problems = new ProblemList();
  const times: number[] = [];
  const heads: number[] = [];
  for (let i = from; i < lines.length; i++) {
    const text = lines[i] as string;
    if (text.trim() === '' || text.startsWith('#')) continue;
    if (times.length >= MOST_READINGS) {
      const most = MOST_READINGS.toLocaleString('en');
      return refusal(
        'outOfRange',
        `This log has more than ${most} readings. Cut out the minutes that matter.`,
        i + 1,
      ) as Readings;
    }
    const cells = text.split(delimiter);
    const at = numberIn(cells[time.index], delimiter);
    const value = numberIn(cells[head.index], delimiter);
    if (at === undefined || value === undefined) {
      const wrong = at === undefined ? time : head;
      problems.add('notANumber', wrong.called, i + 1, noNumber(cells[wrong.index], wrong));
      continue;
    }
    const last = times.at(-1);
    if (last !== undefined && at < last) {
      problems.add(
        'contradiction',
        time.called,
        i + 1,
        `The time goes back here, from ${last} to ${at}. Put the readings in order, one run in one file.`,
      );
      continue;
    }
    times.push(at);
    heads.push(value);
  }
  if (!problems.isEmpty) return { ok: false, problems: problems.all() };
  if (times.length < 2) {
    return refusal('missing', `There are fewer than two readings. ${FIRST_LINE}`) as Readings;
  }
  return { ok: true, times, heads };
}

/** Where semicolons or tabs part the cells, a comma is a decimal one. */
function numberIn(cell: string | undefined, delimiter: string): number | undefined {
  const text = bare(cell ?? '').replace(/^[−–]/, '-');
  return decimal(delimiter === ',' ? text : text.replace(',', '.'));
}

function noNumber(cell: string | undefined, { called, quantity }: Column): string {
  const written = bare(cell ?? '');
  if (written === '')
    return `Nothing stands under ${quoted(called)} in this line. Take the line out.`;
  const isClock = quantity === 'time' && /\d:\d\d/.test(written);
  return isClock
    ? `${quoted(written)} is a time of day. Write the time as seconds from the start.`
    : `${quoted(written)} is no number for ${quoted(called)}. Mend it, or take the line out.`;
}

function noticesOf(
  heads: readonly Column[],
  head: Column,
  wanted: string | undefined,
  line: number,
): readonly Problem[] {
  const notices: Problem[] = [];
  const say = (message: string): void => {
    notices.push({ kind: 'unusual', field: head.called, line, message });
  };
  if (heads.length > 1 && wanted === undefined) {
    const others = heads.filter((one) => one !== head).map(({ called }) => quoted(called));
    say(`${quoted(head.called)} was read; the log also has ${others.join(', ')}.`);
  }
  if (/abs/i.test(head.called)) {
    say(
      'This column seems to hold absolute pressures. Heads here are above the open air: take about 10.3 m off.',
    );
  }
  return notices;
}

function refusal(kind: ProblemKind, message: string, line?: number): PressureLogRead {
  return {
    ok: false,
    problems: [{ kind, field: '', ...(line !== undefined && { line }), message }],
  };
}
