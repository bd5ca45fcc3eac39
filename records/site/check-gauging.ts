/** The measurements of a source: missing and stray readings, conditions that do not hold, figures that contradict. */
import type { Condition } from '@fallwright/engine';
import { formatQuantity, type Purpose, plainFigures, type System } from '@fallwright/units';
import type { Report } from './check-site.ts';
import { orList, startOfSentence } from './fields.ts';
import type { GaugingForm } from './gauging-fields.ts';
import { type GaugedSource, type Gauging, gaugedSource, METHOD_FIELDS } from './gauging-of.ts';
import type { SourceForm } from './source-fields.ts';

const COMMON = ['method', 'date', 'by', 'note'] as const;

export function checkGauging(source: SourceForm, system: System, report: Report): void {
  for (const [index, form] of (source.gauging ?? []).entries()) checkForm(form, index, report);
  const measured = gaugedSource(source);
  if (!measured) return;
  for (const gauging of measured.gaugings) warnOf(gauging, system, report);
  warnOfDisagreements(measured, system, report);
  warnOfStatedFlow(source, measured, system, report);
}

function checkForm(form: GaugingForm, index: number, report: Report): void {
  const at = ['source', 'gauging', index];
  const { needs, may } = METHOD_FIELDS[form.method];
  const takesTimes = needs.includes('times');
  const hasField = (field: keyof GaugingForm): boolean =>
    form[field] !== undefined || (field === 'times' && form.time !== undefined);
  const missing = needs.filter((field) => !hasField(field));
  if (form.method === 'float' && !form.area && !(form.width && form.depths)) {
    report(
      'missing',
      at,
      'The section of the stream is missing. Write its width and the depths in equal strips across it, like width: 0.6 m, depths: [0.1 m, 0.15 m], or its area, like area: 0.08 m2.',
    );
  }
  if (missing.length > 0) {
    report(
      'missing',
      at,
      `A measurement by ${form.method} needs ${orList(needs).replace(/ or (?=\w+$)/, ' and ')}. ${startOfSentence(orList(missing).replace(/ or (?=\w+$)/, ' and '))} ${missing.length === 1 ? 'is' : 'are'} missing.`,
    );
  }
  const known: readonly string[] = [...COMMON, ...needs, ...may, ...(takesTimes ? ['time'] : [])];
  for (const field of Object.keys(form).filter((name) => !known.includes(name))) {
    report(
      'contradiction',
      [...at, field],
      `A measurement by ${form.method} has no ${field}. It has ${orList([...needs, ...may]).replace(/ or (?=\w+$)/, ' and ')}.`,
    );
  }
  if (form.times && form.time) {
    report('contradiction', [...at, 'time'], 'Write time or times, not both.');
  }
  if (form.area && (form.width || form.depths) && form.method === 'float') {
    report(
      'contradiction',
      [...at, 'area'],
      'The section is written twice: as an area, and as a width with depths. Take one out.',
    );
  }
  const { width, channelWidth } = form;
  if (form.method === 'rectangular weir' && width && channelWidth) {
    if (width.value > channelWidth.value) {
      report(
        'contradiction',
        [...at, 'width'],
        `The crest is ${width.text} wide and the channel only ${channelWidth.text}. Check both.`,
      );
    }
  }
}

/** How a measurement is called in a sentence. */
const CALLED: Readonly<Record<GaugingForm['method'], string>> = {
  bucket: 'the timed container',
  'v-notch': 'the V-notch',
  'rectangular weir': 'the rectangular weir',
  float: 'the floats',
  drop: 'the drop of the store',
};

function warnOf({ index, form, gauged }: Gauging, system: System, report: Report): void {
  const at = ['source', 'gauging', index];
  const outside = gauged.outside.map((condition) => conditionInWords(condition, system));
  const isUnchecked = gauged.outside.some(({ kind }) => kind === 'approachUnknown');
  const flow = formatQuantity(gauged.flow, 'sourceFlow', system);
  if (outside.length > 0) {
    const weight =
      isUnchecked && outside.length === 1
        ? ''
        : ` The flow of ${flow} is computed all the same, outside the range of its formula, and is less sure than its spread says.`;
    report(
      'unusual',
      at,
      `${startOfSentence(CALLED[form.method])}: ${outside.join('; ')}.${weight}`,
    );
  }
  for (const doubt of gauged.doubts) {
    report(
      'unusual',
      at,
      `${startOfSentence(CALLED[form.method])}: ${conditionInWords(doubt, system)}.`,
    );
  }
}

/** A condition that does not hold, with its numbers, as part of a sentence. */
export function conditionInWords({ kind, has, bound }: Condition, system: System): string {
  const show = (value: number, purpose: Purpose): string =>
    formatQuantity(value, purpose, system, { figures: 2 });
  const share = (value: number): string => plainFigures(value, 2);
  const percent = (value: number): string => `${plainFigures(Math.round(100 * value), 3)}\u00a0%`;
  switch (kind) {
    case 'headTooSmall':
      return `the head is ${show(has, 'waterDepth')}, and under ${show(bound, 'waterDepth')} water clings to the plate`;
    case 'headTooLarge':
      return `the head is ${show(has, 'waterDepth')}, and the formula was tested up to ${show(bound, 'waterDepth')}`;
    case 'headOverCrest':
      return `the head is ${share(has)} times the height of the crest over the bed, and should be at most ${share(bound)} times it`;
    case 'headOverChannel':
      return `the head is ${share(has)} times the width of the channel, and should be at most ${share(bound)} times it`;
    case 'crestTooNearBed':
      return `the crest stands ${show(has, 'depth')} over the bed, and should stand at least ${show(bound, 'depth')} over it`;
    case 'channelTooNarrow':
      return `the channel is ${show(has, 'depth')} wide, and should be at least ${show(bound, 'depth')}`;
    case 'crestTooNarrow':
      return `the crest is ${show(has, 'depth')} wide, and should be at least ${show(bound, 'depth')}`;
    case 'sideTooNear':
      return `the side of the channel is ${show(has, 'depth')} from the end of the crest, and should be at least ${show(bound, 'depth')} away, or the crest as wide as the channel`;
    case 'angleTooSmall':
      return `the notch has ${show(has, 'angle')}, and the curve of coefficients begins at ${show(bound, 'angle')}`;
    case 'angleTooLarge':
      return `the notch has ${show(has, 'angle')}, and the curve of coefficients ends at ${show(bound, 'angle')}`;
    case 'drowned':
      return `the water below stands only ${show(has, 'waterDepth')} under the crest, and should stand ${show(bound, 'waterDepth')} under it so that air gets behind the sheet`;
    case 'approachUnknown':
      return 'without the height of the crest and the width of the channel nobody can check that bed and sides are far enough away';
    case 'floatTooQuick':
      return `the floats take ${show(has, 'time')}, and should take at least ${show(bound, 'time')}: measure a longer way`;
    case 'oneReading':
      return `one reading says nothing of how far readings scatter; take at least ${plainFigures(bound, 1)}`;
    case 'readingsDiffer':
      return `the readings lie so far apart that the flows by them spread over ${percent(has)}, more than ${percent(bound)}; look for a slip, or measure again`;
  }
}

function warnOfDisagreements(
  { gaugings, combined }: GaugedSource,
  system: System,
  report: Report,
): void {
  for (const { first, second } of combined.disagreements) {
    const [a, b] = [gaugings[first], gaugings[second]];
    if (!a || !b) continue;
    const days =
      a.form.date !== undefined && b.form.date !== undefined && a.form.date !== b.form.date;
    const advice = days
      ? 'They are of different days, so the source may have changed: write the lower as drySeason.'
      : 'One of them is off: measure again, with the surer way.';
    report(
      'unusual',
      ['source', 'gauging', b.index],
      `${startOfSentence(CALLED[a.form.method])} gave ${withSpread(a.gauged, system)} and ${CALLED[b.form.method]} ${withSpread(b.gauged, system)}, which is further apart than the two spreads together. ${advice}`,
    );
  }
}

/** Judgement: a flow that was written down without its ± is meant to a tenth. */
const STATED_SPREAD = 0.1;

function warnOfStatedFlow(
  source: SourceForm,
  { combined }: GaugedSource,
  system: System,
  report: Report,
): void {
  const field = source.store === undefined ? 'flow' : 'inflow';
  const stated = source[field];
  if (stated === undefined || stated === 'plenty') return;
  const spread = stated.spread ?? STATED_SPREAD * stated.value;
  if (Math.abs(stated.value - combined.flow) <= spread + combined.spread) return;
  report(
    'unusual',
    ['source', field],
    `The ${field} is written as ${stated.text}, and was measured as ${withSpread(combined, system)}. The written one is used. Take it out to use the measured one.`,
  );
}

function withSpread(
  { flow, spread }: { readonly flow: number; readonly spread: number },
  system: System,
): string {
  return formatQuantity(flow, 'sourceFlow', system, { spread });
}
