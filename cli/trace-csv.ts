import type { Trace } from '@fallwright/engine';

const COLUMNS = [
  ['time (s)', 'time'],
  ['head at the ram (m)', 'bodyHead'],
  ['drive flow (m3/s)', 'driveFlow'],
  ['waste flow (m3/s)', 'wasteFlow'],
  ['delivery flow (m3/s)', 'deliveryFlow'],
  ['waste valve opening (m)', 'opening'],
  ['air vessel head (m)', 'vesselHead'],
] as const satisfies readonly (readonly [string, keyof Trace])[];

/** A trace as CSV (RFC 4180): SI with the units in the head, six figures, lines ended by CR LF. */
export function traceCsv(trace: Trace): string {
  const rows = [COLUMNS.map(([head]) => head).join(',')];
  for (let sample = 0; sample < trace.time.length; sample += 1) {
    rows.push(COLUMNS.map(([, series]) => sixFigures(trace[series][sample])).join(','));
  }
  return `${rows.join('\r\n')}\r\n`;
}

function sixFigures(value: number | undefined): string {
  if (value === undefined || !Number.isFinite(value)) {
    throw new RangeError(`a trace holds finite numbers only, got ${value}`);
  }
  return String(Number(value.toPrecision(6)));
}
