/** A time as people say it in their own country: date and time of day. */
const FORMAT = new Intl.DateTimeFormat(undefined, {
  day: 'numeric',
  month: 'short',
  year: 'numeric',
  hour: '2-digit',
  minute: '2-digit',
  second: '2-digit',
});

export function whenInWords(milliseconds: number): string {
  return FORMAT.format(milliseconds);
}

const DAY = new Intl.DateTimeFormat(undefined, { day: 'numeric', month: 'short', year: 'numeric' });

export function dayInWords(milliseconds: number): string {
  return DAY.format(milliseconds);
}
