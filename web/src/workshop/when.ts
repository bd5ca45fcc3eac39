/**
 * A time as people say it in their own country: date and time of day. The formats are made when first used: a browser
 * takes some time over each, and a page that opens on a place needs none.
 */
const DAY = { day: 'numeric', month: 'short', year: 'numeric' } as const;
const TIME = { hour: '2-digit', minute: '2-digit', second: '2-digit' } as const;

let moment: Intl.DateTimeFormat | undefined;
let day: Intl.DateTimeFormat | undefined;

export function whenInWords(milliseconds: number): string {
  moment ??= new Intl.DateTimeFormat(undefined, { ...DAY, ...TIME });
  return moment.format(milliseconds);
}

export function dayInWords(milliseconds: number): string {
  day ??= new Intl.DateTimeFormat(undefined, DAY);
  return day.format(milliseconds);
}
