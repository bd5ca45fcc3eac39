/**
 * GPX, the open format of satellite recorders: tracks, routes and waypoints.
 *
 * Read with a streaming parser that keeps line numbers, loads nothing from elsewhere and expands no entities of the
 * file's own. Elements of other namespaces (the recorders' extensions) are stepped over.
 *
 * Source: GPX 1.1 schema, topografix.com/GPX/1/1: gpx > trk > trkseg > trkpt, gpx > rte > rtept, gpx > wpt, with `lat`,
 * `lon` in decimal degrees of WGS 84 and `ele` in metres (memory: the schema was not opened for this).
 */
import { quoted } from '@fallwright/units';
import { SaxesParser, type SaxesTagNS } from 'saxes';
import type { Problem } from '../problem.ts';
import { decimal } from './decimal.ts';
import { isHeightOnEarth, placeFault, placesLine } from './places-line.ts';
import {
  MOST_SURVEY_POINTS,
  notASurvey,
  ProblemList,
  refusal,
  type SurveyedPlace,
  type SurveyFile,
  type SurveyRead,
} from './survey-file.ts';

const NOT_GPX =
  'A GPX file holds <gpx> with tracks in it. Save the track as GPX, or write a CSV file whose first line is: distance (m), height (m)';

/** Thrown to leave the parser early; never leaves this file. */
class Stop extends Error {}

interface OpenLine {
  name: string;
  readonly parts: SurveyedPlace[][];
}

/** What has been read so far. */
class GpxContents {
  readonly tracks: OpenLine[] = [];
  readonly routes: OpenLine[] = [];
  readonly waypoints: SurveyedPlace[] = [];
  readonly problems = new ProblemList();
  count = 0;
  oddHeights = 0;
  firstOddHeight = 0;

  file(): SurveyFile {
    const called = (kind: string, { name }: OpenLine, index: number): string =>
      name.trim() || `${kind} ${index + 1}`;
    const lines = [
      ...this.tracks.map((line, i) => placesLine('track', called('track', line, i), line.parts)),
      ...this.routes.map((line, i) => placesLine('route', called('route', line, i), line.parts)),
      placesLine('waypoints', 'waypoints in their order', [this.waypoints]),
    ];
    return { lines: lines.filter(({ points }) => points.length > 1), notices: this.#notices() };
  }

  #notices(): readonly Problem[] {
    if (this.oddHeights === 0) return [];
    const message = `${this.oddHeights} heights lie nowhere on earth, as recorders write for "unknown". They count as missing.`;
    return [{ kind: 'unusual', field: 'ele', line: this.firstOddHeight, message }];
  }
}

/** The lines in a GPX text. Never throws on what a file holds. */
export function readGpx(text: string): SurveyRead {
  const notText = notASurvey(text);
  if (notText !== undefined) return refusal(notText);
  const contents = new GpxContents();
  const { problems } = contents;
  try {
    parse(text, contents);
  } catch (cause) {
    if (!(cause instanceof Stop)) throw cause;
  }
  const file = contents.file();
  if (!problems.isEmpty) {
    const readable = file.lines.length > 0 ? { readable: file } : {};
    return { ok: false, problems: problems.all(), ...readable };
  }
  if (file.lines.length === 0) {
    return refusal(
      contents.count === 0
        ? 'This GPX file holds no points: no track, route or waypoint has been saved in it. Record the walk anew or export it again.'
        : 'No track, route or list of waypoints in this GPX file has two points, and a line needs two. Record the walk anew or export it again.',
      'missing',
    );
  }
  return { ok: true, value: file };
}

function parse(text: string, contents: GpxContents): void {
  const { problems } = contents;
  const parser = new SaxesParser({ xmlns: true, position: true });
  const path: string[] = [];
  let namespace: string | undefined;
  let words = '';
  let place: { latitude: number; longitude: number; height?: number; line: number } | undefined;

  const open = (tag: SaxesTagNS): void => {
    if (path.length === 0) {
      namespace = tag.uri;
      if (tag.local !== 'gpx') {
        problems.add(
          'wrongFormat',
          '',
          parser.line,
          `This is a file of ${quoted(tag.local)} and not GPX. ${NOT_GPX}`,
        );
        throw new Stop();
      }
    }
    // A recorder's own elements may be called `ele` too.
    path.push(tag.uri === namespace ? tag.local : '*');
    words = '';
    const here = path.join('>');
    if (here === 'gpx>trk') contents.tracks.push({ name: '', parts: [] });
    else if (here === 'gpx>rte') contents.routes.push({ name: '', parts: [[]] });
    else if (here === 'gpx>trk>trkseg') contents.tracks.at(-1)?.parts.push([]);
    else if (POINTS.has(here)) place = openPlace(tag);
  };

  const openPlace = (tag: SaxesTagNS): typeof place => {
    contents.count += 1;
    if (contents.count > MOST_SURVEY_POINTS) {
      problems.add(
        'outOfRange',
        tag.local,
        parser.line,
        `This file holds more than ${MOST_SURVEY_POINTS.toLocaleString('en')} points. Save the one line that is wanted as a file of its own.`,
      );
      throw new Stop();
    }
    const read = (name: string): number | undefined =>
      decimal(Object.hasOwn(tag.attributes, name) ? tag.attributes[name]?.value : undefined);
    const latitude = read('lat');
    const longitude = read('lon');
    const fault = placeFault(latitude, longitude);
    if (fault !== undefined || latitude === undefined || longitude === undefined) {
      problems.add('wrongForm', tag.local, parser.line, fault ?? '');
      return undefined;
    }
    return { latitude, longitude, line: parser.line };
  };

  const readHeight = (): void => {
    const written = words.trim();
    if (!place || written === '') return;
    const height = decimal(written);
    if (height === undefined) {
      problems.add(
        'notANumber',
        'ele',
        parser.line,
        `${quoted(written)} is no height. GPX writes metres with a point: <ele>812.4</ele>.`,
      );
    } else if (isHeightOnEarth(height)) {
      place.height = height;
    } else {
      contents.oddHeights += 1;
      contents.firstOddHeight ||= parser.line;
    }
  };

  const close = (): void => {
    const here = path.join('>');
    if (HEIGHTS.has(here)) readHeight();
    else if (here === 'gpx>trk>name') nameOf(contents.tracks, words);
    else if (here === 'gpx>rte>name') nameOf(contents.routes, words);
    else if (place && POINTS.has(here)) {
      if (here === 'gpx>wpt') contents.waypoints.push(place);
      else {
        const line = here === 'gpx>rte>rtept' ? contents.routes.at(-1) : contents.tracks.at(-1);
        line?.parts.at(-1)?.push(place);
      }
      place = undefined;
    }
    path.pop();
  };

  parser.on('opentag', open);
  parser.on('closetag', close);
  parser.on('text', (part) => {
    words += part;
  });
  parser.on('cdata', (part) => {
    words += part;
  });
  parser.on('error', (error) => {
    const what = error.message.replace(/^[^:]*:?\d+:\d+: /, '').replace(/\.$/, '');
    // The one that breaks off is none.
    const whole = contents.count - (place === undefined ? 0 : 1);
    const kept = whole > 0 ? ` ${whole} points stand before this place.` : '';
    problems.add(
      contents.count === 0 && path.length === 0 ? 'wrongFormat' : 'unreadable',
      '',
      parser.line,
      path.length === 0
        ? `This is not a GPX file (${what}). ${NOT_GPX}`
        : `The file breaks off or is damaged here (${what}).${kept} Export it again from the recorder.`,
    );
    throw new Stop();
  });
  parser.write(text).close();
}

const POINTS: ReadonlySet<string> = new Set(['gpx>trk>trkseg>trkpt', 'gpx>rte>rtept', 'gpx>wpt']);
const HEIGHTS: ReadonlySet<string> = new Set([...POINTS].map((point) => `${point}>ele`));
/** Judgement: as much of a name as fits a list. */
const LONGEST_NAME = 80;

function nameOf(lines: readonly OpenLine[], words: string): void {
  const line = lines.at(-1);
  if (line) line.name = words.replace(/\s+/g, ' ').trim().slice(0, LONGEST_NAME);
}
