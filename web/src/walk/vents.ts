/** Vents of a line in the site document: cocks or air valves that let the air out of a crest, written pipe by pipe. */
import type { System } from '@fallwright/units';
import { linePoints, pipeSpans, readMetres } from '../profile/line-points.ts';
import { LINE_CALLED } from '../profile/profile-steps.ts';
import { finestStep, writtenMetres } from '../profile/written-metres.ts';
import { textOf } from '../state/entry.ts';
import type { LineName } from '../state/lines.ts';
import { pipesOf } from '../state/lines.ts';
import type { Place } from '../state/place.ts';
import { putWhole } from '../state/place.ts';
import type { Plain, SiteDocument } from '../state/site-document.ts';
import { isList, valueAt, withValue } from '../state/site-document.ts';

export interface Vent {
  readonly pipe: number;
  readonly index: number;
  /** Metres along the whole line, from its upper end. */
  readonly station: number;
}

/** Judgement: a vent written half a metre from a crest is meant for it; as air is in the drawing. */
const AT_CREST = 0.5;

const listed = (entry: Plain | undefined): readonly Plain[] =>
  entry === undefined ? [] : isList(entry) ? entry : [entry];

/** The vents that can be placed, in the order of the file. */
export function ventsOf(document: SiteDocument, line: LineName): readonly Vent[] {
  const spans = pipeSpans(document, line) ?? [];
  return pipesOf(document, line).flatMap(({ vents }, pipe) =>
    listed(vents).flatMap((entry, index): readonly Vent[] => {
      const at = readMetres(entry, 'pipeLength');
      const start = spans[pipe]?.start;
      return at === undefined || start === undefined ? [] : [{ pipe, index, station: start + at }];
    }),
  );
}

export function ventAt(document: SiteDocument, line: LineName, station: number): Vent | undefined {
  return ventsOf(document, line).find((vent) => Math.abs(vent.station - station) < AT_CREST);
}

/** A vent at a crest, written as the crest's own point is where there is one. */
export function ventPutIn(
  place: Place,
  line: LineName,
  station: number,
  system: System,
): Place | undefined {
  const { document } = place;
  const spans = pipeSpans(document, line) ?? [];
  const pipe = spans.findIndex(({ start, length }) => station <= start + length);
  const span = spans[pipe];
  if (span === undefined) return undefined;
  const near = linePoints(document, line).find(
    (point) => point.pipe === pipe && Math.abs(point.station - station) < finestStep(system),
  );
  const written = near && textOf(valueAt(document, [line, pipe, 'profile', near.index, 'at']));
  const entry = written ?? writtenMetres(station - span.start, system);
  const vents = [...listed(pipesOf(document, line)[pipe]?.vents), entry];
  const next = withValue(document, [line, pipe, 'vents'], inOrder(vents));
  return putWhole(
    place,
    { document: next, unread: place.unread },
    `the vents of ${LINE_CALLED[line]}`,
  );
}

export function ventTakenOut(place: Place, line: LineName, { pipe, index }: Vent): Place {
  const left = listed(pipesOf(place.document, line)[pipe]?.vents).toSpliced(index, 1);
  const document = withValue(
    place.document,
    [line, pipe, 'vents'],
    left.length === 0 ? undefined : left,
  );
  return putWhole(place, { document, unread: place.unread }, `the vents of ${LINE_CALLED[line]}`);
}

const inOrder = (vents: readonly Plain[]): readonly Plain[] =>
  vents.toSorted((a, b) => (readMetres(a, 'pipeLength') ?? 0) - (readMetres(b, 'pipeLength') ?? 0));
