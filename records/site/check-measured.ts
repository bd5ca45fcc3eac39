/** Heights that were measured: books that do not close, and ways too coarse for what they measure. */
import { formatQuantity, type System } from '@fallwright/units';
import type { Given } from '../given.ts';
import type { Report } from './check-site.ts';
import { heightOf, type MeasuredHeight } from './height-of.ts';

export function checkMeasured(
  field: 'fall' | 'lift',
  given: Given | undefined,
  system: System,
  report: Report,
): void {
  const readings = given?.readings;
  const read = readings && heightOf(readings);
  if (!read?.ok) return;
  const { value } = read;
  if (value.kind === 'levels') warnOfClosing(field, value.book, system, report);
  if (readings?.value) {
    warnOfWritten(field, readings.value, value, system, report);
    return;
  }
  if (!value.isTooCoarse) return;
  const [height, spread] = [value.height, value.spread].map((one) =>
    formatQuantity(one, 'height', system, { figures: 2 }),
  );
  report(
    'unusual',
    [field],
    `The ${field} of ${height} is known to ± ${spread} only, ${TOO_COARSE[value.kind]}`,
  );
}

/** Judgement: a height that was written down without its ± is meant to a twentieth. */
const WRITTEN_SPREAD = 0.05;

function warnOfWritten(
  field: string,
  written: Given,
  measured: MeasuredHeight,
  system: System,
  report: Report,
): void {
  const spread = written.spread ?? WRITTEN_SPREAD * written.value;
  if (Math.abs(written.value - measured.height) <= spread + measured.spread) return;
  const byReadings = formatQuantity(measured.height, 'height', system, {
    figures: 4,
    spread: measured.spread,
  });
  report(
    'unusual',
    [field],
    `The ${field} is written as ${written.text}, and was measured as ${byReadings}. The written one is used. Take it out to use the measured one.`,
  );
}

const TOO_COARSE: Readonly<Record<MeasuredHeight['kind'], string>> = {
  levels: 'as the readings scatter. Level it again.',
  hops: 'as each hop adds its own. Take a level, or fewer and surer hops.',
  gauge: 'by the gauge’s own class. Take a gauge with a smaller range, or a level.',
  barometric: 'which is too coarse to choose a ram by. Measure it with a level, hops or a gauge.',
  satellite: 'which is too coarse to choose a ram by. Measure it with a level, hops or a gauge.',
};

function warnOfClosing(
  field: string,
  { closingError, allowedError, setUps }: Extract<MeasuredHeight, { kind: 'levels' }>['book'],
  system: System,
  report: Report,
): void {
  if (closingError === undefined || allowedError === undefined) return;
  if (Math.abs(closingError) <= allowedError) return;
  const show = (value: number): string =>
    formatQuantity(Math.abs(value), 'waterDepth', system, { figures: 2 });
  report(
    'unusual',
    [field],
    `The level book closes ${show(closingError)} out over ${setUps} set-ups, and ${show(allowedError)} are allowed. It was shared out all the same. Look for a slip in the book, or level it again.`,
  );
}
