import { filmCsv } from './film-csv.ts';
import type { Reel } from './reel.ts';

/** Hands the film to the person as a file. */
export function offerCsv({ film, installation }: Reel): void {
  const address = URL.createObjectURL(new Blob([filmCsv(film)], { type: 'text/csv' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = `beat-${installation.ram.name.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, '-')}.csv`;
  link.click();
  // The download has begun by then; the browser keeps what it needs.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
