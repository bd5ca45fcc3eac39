/** The place that the page opens with. Invented: there is no such spring, and nobody lives there. */
import type { SiteDocument } from '../state/site-document.ts';

export const EXAMPLE: SiteDocument = {
  fallwright: 'site@1',
  name: 'Larkrise spring',
  place: 'Tarn Hollow',
  source: { flow: { value: '14 L/min ± 0.5 L/min', origin: 'measured' } },
  fall: { value: '1.9 m ± 0.1 m', origin: 'measured' },
  drive: [{ pipe: 'PE100 SDR11 25', length: { value: '14 m', origin: 'measured' } }],
  ram: 'DN20',
  lift: { value: '12 m ± 0.2 m', origin: 'measured' },
  delivery: [{ pipe: 'PE100 SDR11 20', length: '160 m' }],
  demand: '900 L/day',
};
