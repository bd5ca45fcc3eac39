/** Surveys written by hand from the GPX 1.1 schema, and tables as spreadsheets save them. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { readGpx } from './read-gpx.ts';
import { readProfileCsv } from './read-profile-csv.ts';
import type { PlacesLine, SurveyRead, TableLine } from './survey-file.ts';
import { readSurvey, surveyProfile } from './survey-profile.ts';

const gpx = (inside: string): string => `<?xml version="1.0" encoding="UTF-8"?>
<gpx version="1.1" creator="hand" xmlns="http://www.topografix.com/GPX/1/1">
${inside}
</gpx>
`;
const point = (lat: number, lon: number, ele?: number): string =>
  `<trkpt lat="${lat}" lon="${lon}">${ele === undefined ? '' : `<ele>${ele}</ele>`}</trkpt>`;
const track = (name: string, ...segments: readonly string[]): string =>
  `<trk><name>${name}</name>${segments.map((s) => `<trkseg>\n${s}\n</trkseg>`).join('')}</trk>`;
const WALK = [point(46, 7, 500), point(46.0005, 7, 503), point(46.001, 7, 501)].join('\n');

function linesOf(read: SurveyRead): readonly PlacesLine[] {
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  return read.value.lines.filter((line): line is PlacesLine => line.kind !== 'table');
}
function tableOf(read: SurveyRead): TableLine {
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  const [line] = read.value.lines;
  if (line?.kind !== 'table') throw new Error('no table');
  return line;
}
function messages(read: SurveyRead): string {
  if (read.ok) throw new Error('this should not read');
  return read.problems.map(({ line, message }) => `${line}: ${message}`).join('\n');
}

describe('GPX', () => {
  test('a track with heights: points, places in the file, length', () => {
    const [line] = linesOf(readGpx(gpx(track('The &amp; line', WALK))));
    expect(line).toMatchObject({ kind: 'track', name: 'The & line', withoutHeight: 0, gaps: [] });
    expect(line?.points[1]).toEqual({ latitude: 46.0005, longitude: 7, height: 503, line: 5 });
    // A thousandth of a degree north at 46° is 111.15 m on WGS 84 (memory); a tenth of a metre either way.
    expect(line?.length).toBeCloseTo(111.15, 1);
  });

  test('several tracks, a route and waypoints are all offered, in order', () => {
    const text = gpx(`<wpt lat="46" lon="7"><ele>500</ele></wpt><wpt lat="46.001" lon="7"/>
<rte><name>drawn</name><rtept lat="46" lon="7"/><rtept lat="46.002" lon="7"/></rte>
${track('first', WALK)}${track('', WALK)}`);
    expect(linesOf(readGpx(text)).map(({ kind, name }) => [kind, name])).toEqual([
      ['track', 'first'],
      ['track', 'track 2'],
      ['route', 'drawn'],
      ['waypoints', 'waypoints in their order'],
    ]);
  });

  test('segments are joined and the gap is told', () => {
    const [line] = linesOf(readGpx(gpx(track('two parts', WALK, point(46.0015, 7, 502)))));
    expect(line?.points).toHaveLength(4);
    expect(line?.gaps).toEqual([{ after: 2, distance: expect.closeTo(55.57, 1) }]);
  });

  test('a recorder’s own elements are stepped over, even when they are called ele', () => {
    const text = gpx(
      `<trk><trkseg><trkpt lat="46" lon="7"><ele>1</ele><extensions><x:ele xmlns:x="urn:x">99</x:ele></extensions></trkpt>${point(46.1, 7, 2)}</trkseg></trk>`,
    );
    expect(linesOf(readGpx(text))[0]?.points.map(({ height }) => height)).toEqual([1, 2]);
  });

  test('no heights at all: the line is there, and its profile says what to do', () => {
    const [line] = linesOf(readGpx(gpx(track('flat', point(46, 7) + point(46.1, 7)))));
    expect(line?.withoutHeight).toBe(2);
    if (!line) throw new Error('no line');
    const read = surveyProfile(line);
    expect(read).toMatchObject({ ok: false, problems: [{ kind: 'missing', line: 4 }] });
    expect(JSON.stringify(read)).toContain('distance (m), height (m)');
  });

  test('a few missing heights, and "unknown" written as −9999, are filled in between and counted', () => {
    const walk = [
      point(46, 7, 500),
      point(46.001, 7),
      point(46.002, 7, -9999),
      point(46.003, 7, 503),
    ];
    const read = readGpx(gpx(track('gaps', walk.join('\n'))));
    const [line] = linesOf(read);
    if (!line || !read.ok) throw new Error('no line');
    expect(read.value.notices).toMatchObject([{ line: 6, kind: 'unusual' }]);
    const profile = surveyProfile(line, 0);
    if (!profile.ok) throw new Error('no profile');
    expect(profile.value.filledIn).toBe(2);
    expect(profile.value.profile.map(({ elevation }) => elevation)).toEqual([500, 501, 502, 503]);
  });

  test.each([
    ['empty', '', 'This file is empty'],
    ['nothing in it', gpx(''), 'holds no points'],
    ['one point', gpx(track('x', point(46, 7, 1))), 'needs two'],
    ['another format', '<kml><Document/></kml>', 'not GPX'],
    ['no XML', 'The ram stands below the weir.', 'not a GPX file'],
    ['a photo', '\u0000\u0001JFIF', 'not a text file'],
    ['all in one place', gpx(track('x', point(46, 7, 1) + point(46, 7, 2))), ''],
  ])('%s', (_, text, words) => {
    const read = readGpx(text);
    if (words !== '') expect(messages(read)).toContain(words);
    else expect(surveyProfile(linesOf(read)[0] as PlacesLine)).toMatchObject({ ok: false });
  });

  test('every bad point is named by its line, and the good ones are kept', () => {
    const text = gpx(
      track(
        'x',
        `${WALK}\n${point(146, 7, 1)}\n<trkpt lat="46"/>\n<trkpt lat="46" lon="7"><ele>12,5</ele></trkpt>`,
      ),
    );
    const read = readGpx(text);
    expect(messages(read)).toMatch(/7: The latitude.*\n8: The longitude.*\n9: “12,5” is no height/);
    expect(read).toMatchObject({ readable: { lines: [{ points: { length: 4 } }] } });
  });

  test('a file that breaks off says where, and what stands before is not lost', () => {
    const whole = gpx(track('x', WALK));
    const read = readGpx(whole.slice(0, whole.indexOf('</trkseg>')));
    expect(messages(read)).toMatch(/^7: The file breaks off.*3 points stand before/);
    expect(read).toMatchObject({ readable: { lines: [{ points: { length: 3 } }] } });
  });

  test('entities of the file’s own are not expanded', () => {
    const text = `<!DOCTYPE gpx [<!ENTITY a "aaaa"><!ENTITY b SYSTEM "file:///etc/hostname">]>\n<gpx><trk><name>&a;&b;</name></trk></gpx>`;
    expect(readGpx(text).ok).toBe(false);
  });

  test('limits', () => {
    expect(messages(readGpx(' '.repeat(10 * 1024 * 1024 + 1)))).toContain('longer than 10 MB');
    const many = gpx(track('x', '<trkpt lat="1" lon="1"/>'.repeat(200_001)));
    expect(messages(readGpx(many))).toContain('more than 200,000 points');
  });
});

describe('CSV', () => {
  const HUMP = [
    { distance: 0, elevation: 1.9 },
    { distance: 6.5, elevation: 1.25 },
    { distance: 1200, elevation: 0 },
  ];

  test.each([
    ['commas', 'distance (m),height (m)\n0,1.9\n6.5,1.25\n1200,0'],
    ['semicolons and decimal commas', 'distance (m);height (m)\n0;1,9\n6,5;1,250\n1200;0\n'],
    ['thousands', 'distance (m);height (m)\n0;1.9\n6.5;1.25\n"1,200";0'],
    [
      'tabs, BOM, Windows line ends',
      '\ufeffDistance (m)\tHeight (m)\r\n0\t1.9\r\n6.5\t1.25\r\n1200\t0\r\n',
    ],
    ['units in the cells', 'distance,height\n0 m,190 cm\n6.5 m,1.25 m\n1.2 km,0 m'],
    [
      'notes, blank lines and other columns',
      '# levelled in spring\nstation [m], note, elev (m)\n\n0,spring,1.9\n6.5,,1.25\n1200,ram,0',
    ],
    ['quoted cells with decimal commas', 'distance_m,height_cm\n0,190\n"6,5",125\n1200,0'],
  ])('%s', (_, text) => {
    const { profile } = tableOf(readProfileCsv(text));
    expect(profile).toHaveLength(3);
    for (const [i, { distance, elevation }] of HUMP.entries()) {
      expect(profile[i]?.distance).toBeCloseTo(distance, 9);
      expect(profile[i]?.elevation).toBeCloseTo(elevation, 9);
    }
  });

  test('feet are feet, heights may lie below nought, and ± is kept', () => {
    const { profile, heightSpread } = tableOf(
      readProfileCsv('distance (ft),height (ft)\n0,6.25\n10,−0.5 ft ± 0.1 ft'),
    );
    expect(profile[1]).toEqual({
      distance: expect.closeTo(3.048, 9),
      elevation: expect.closeTo(-0.1524, 9),
    });
    expect(heightSpread).toBeCloseTo(0.03048, 9);
  });

  test('latitudes and longitudes make a line on the ground', () => {
    const [line] = linesOf(readProfileCsv('lat,lon,ele\n46,7,500\n46.001,7,\n46.002,7,501'));
    expect(line).toMatchObject({ kind: 'table of places', withoutHeight: 1 });
    expect(line?.length).toBeCloseTo(222.3, 1);
  });

  test.each([
    ['no unit', 'distance,height\n0,1.9\n5,1', /2: 0 what\? Write the unit.*distance \(m\)/],
    ['unknown unit', 'distance (ells),height (m)\n0,1.9\n5,1', /2: .*ells/],
    ['no head', '0,1.9\n5,1', /1: The first line holds numbers/],
    ['columns missing', 'distance (m),note\n0,a\n1,b', /1: .*not enough for a profile/],
    ['a column twice', 'distance (m),dist (m),height (m)\n0,0,1\n1,1,1', /1: Both/],
    [
      'out of order',
      'distance (m),height (m)\n0,1\n5,1\n4,1\n4,1',
      /4: The distance does not grow.*\n5: /,
    ],
    [
      'empty cells and words',
      'distance (m),height (m)\n0,\n5,high\n6,1',
      /2: Nothing stands.*\n3: .*does not begin/,
    ],
    ['an open quote', 'distance (m),height (m)\n0,"1.9\n5,1', /quotation mark/],
    ['one row', 'distance (m),height (m)\n0,1', /fewer than two/],
    ['nothing but notes', '# nothing\n', /no lines but notes/],
    ['bad latitude', 'lat,lon,ele\n146,7,500\n46.001,7,501', /2: The latitude/],
  ])('%s', (_, text, words) => {
    expect(messages(readProfileCsv(text))).toMatch(words);
  });

  test('a file wrong from end to end names the first fifty and counts the rest', () => {
    const read = readProfileCsv(`distance (m),height (m)\n${'x,y\n'.repeat(500)}`);
    if (read.ok) throw new Error('reads');
    expect(read.problems).toHaveLength(51);
    expect(read.problems.at(-1)?.message).toContain('950 more');
  });
});

describe('whatever is in the file', () => {
  test('the readers answer and leave prototypes alone', () => {
    const words = fc.constantFrom(
      ...[
        '<gpx>',
        '</gpx>',
        '<trk>',
        '<trkseg>',
        '<trkpt lat="1" lon="2">',
        '</trkpt>',
        '<ele>',
        '5',
        '</ele>',
        '</trkseg>',
        '</trk>',
      ],
      ...[
        '__proto__',
        'constructor',
        '<__proto__ a="1"/>',
        '<!DOCTYPE x [',
        ']>',
        '&lt;',
        '&x;',
        '<![CDATA[',
        ']]>',
        '<!--',
        '-->',
      ],
      ...[
        'distance (m)',
        'height (m)',
        ',',
        ';',
        '\t',
        '\n',
        '"',
        '1.5',
        '-2',
        '1,5',
        'lat',
        'lon',
        '#',
        '\ufeff',
        '(',
        ')',
        '±',
      ],
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.array(words, { maxLength: 40 }).map((parts) => parts.join('')),
          fc.string({ maxLength: 80 }),
          fc
            .array(words, { maxLength: 20 })
            .map((parts) => `distance (m),__proto__,height (m)\n${parts.join('')}`),
        ),
        (text) => {
          for (const read of [readSurvey(text), readGpx(text), readProfileCsv(text)]) {
            if (!read.ok) expect(read.problems.length).toBeGreaterThan(0);
            else for (const line of read.value.lines) surveyProfile(line);
          }
          expect(Object.keys(Object.prototype)).toEqual([]);
        },
      ),
      { seed: 7, numRuns: 600 },
    );
  });
});

test('20,000 points are read, filtered and ready', () => {
  const points = Array.from({ length: 20_000 }, (_, i) =>
    point(46 + i * 1e-6, 7 + i * 1e-6, 500 + Math.round(20 * Math.sin(i / 900))),
  );
  const [line] = linesOf(readSurvey(gpx(track('long', points.join('\n')))));
  if (!line) throw new Error('no line');
  const read = surveyProfile(line);
  if (!read.ok) throw new Error(JSON.stringify(read.problems));
  expect(read.value).toMatchObject({ window: 20, areSatelliteHeights: true });
  expect(read.value.profile).toHaveLength(20_000);
});
