/** The ways to measure, in words: what each is called, when it suits, what to do, and what is asked. */
import type { GaugingMethod } from '@fallwright/records';
import type { Purpose } from '@fallwright/units';
import type { HeightWay } from '../state/measured-entry.ts';

export interface Dimension {
  readonly key: string;
  readonly label: string;
  readonly purpose: Purpose;
  readonly isNeeded: boolean;
  readonly whenEmpty?: string;
  readonly example?: { readonly metric: string; readonly us: string };
}

export interface RepeatReadings {
  readonly key: 'times' | 'head' | 'depths';
  readonly label: string;
  /** One of them: `time`. */
  readonly one: string;
  readonly purpose: Purpose;
  readonly example: { readonly metric: string; readonly us: string };
}

export interface FlowWay {
  readonly name: string;
  readonly suits: string;
  readonly guidance: string;
  readonly dimensions: readonly Dimension[];
  /** What is read again and again. */
  readonly readings: RepeatReadings;
  readonly alsoListed?: RepeatReadings;
  /** What to tap for, where a watch is wanted. */
  readonly watch?: { readonly start: string; readonly stop: string };
}

const CHANNEL = {
  key: 'channelWidth',
  label: 'Width of the channel',
  purpose: 'depth',
} as const;
const FREE_DROP: Dimension = {
  key: 'freeDrop',
  label: 'Free drop',
  purpose: 'depth',
  isNeeded: false,
  whenEmpty: 'from the crest to the water below',
};
const HEADS: RepeatReadings = {
  key: 'head',
  label: 'Heads, h',
  one: 'head',
  purpose: 'waterDepth',
  example: { metric: '62 mm', us: '2.4 in' },
};
const TIMES = { key: 'times', label: 'Times', one: 'time', purpose: 'time' } as const;

export const FLOW_WAYS: Readonly<Record<GaugingMethod, FlowWay>> = {
  bucket: {
    name: 'Timed container',
    suits: 'a spring or a small stream: the surest way',
    guidance:
      'Lead all of the water into a container with a mark, and time it from empty to the mark. Take three times or more, each of 10 seconds or longer.',
    dimensions: [
      {
        key: 'volume',
        label: 'What it holds to the mark',
        purpose: 'volume',
        isNeeded: true,
        example: { metric: '10 L', us: '5 gal' },
      },
    ],
    readings: { ...TIMES, example: { metric: '26.4 s', us: '26.4 s' } },
    watch: { start: 'Start: the water runs in', stop: 'Stop: it is at the mark' },
  },
  'v-notch': {
    name: 'V-notch',
    suits: 'a stream of 1 to 50 litres a second that can be dammed with a plate',
    guidance:
      'Set a thin, sharp-edged plate across the stream, upright and tight. Let the water settle. Read the still surface above the point of the notch, four heads upstream.',
    dimensions: [
      {
        key: 'angle',
        label: 'Angle of the notch',
        purpose: 'angle',
        isNeeded: true,
        example: { metric: '90°', us: '90°' },
      },
      {
        key: 'crestHeight',
        label: 'Point of the notch above the bed',
        purpose: 'depth',
        isNeeded: false,
        whenEmpty: 'tells whether the formula holds',
      },
      { ...CHANNEL, isNeeded: false, whenEmpty: 'tells whether the formula holds' },
      FREE_DROP,
    ],
    readings: HEADS,
  },
  'rectangular weir': {
    name: 'Rectangular weir',
    suits: 'more water than a notch takes',
    guidance:
      'A thin, sharp-edged plate with a level crest. Narrower than the channel (contracted), or right across it (suppressed): then write the same width twice. Read the still surface above the crest, four heads upstream.',
    dimensions: [
      { key: 'width', label: 'Width of the crest', purpose: 'depth', isNeeded: true },
      { key: 'crestHeight', label: 'Crest above the bed', purpose: 'depth', isNeeded: true },
      { ...CHANNEL, isNeeded: true },
      FREE_DROP,
    ],
    readings: HEADS,
  },
  float: {
    name: 'Floats',
    suits: 'a stream too large to dam: rough, to some 12 %',
    guidance:
      'Choose a straight, even length. Time something that floats deep, such as an orange, from string to string. Measure depths in the middle of equal strips.',
    dimensions: [
      { key: 'length', label: 'Length between the strings', purpose: 'pipeLength', isNeeded: true },
      { key: 'width', label: 'Width of the stream', purpose: 'depth', isNeeded: true },
    ],
    readings: { ...TIMES, example: { metric: '41 s', us: '41 s' } },
    alsoListed: {
      key: 'depths',
      label: 'Depths',
      one: 'depth',
      purpose: 'depth',
      example: { metric: '0.12 m', us: '5 in' },
    },
    watch: { start: 'Start: at the first string', stop: 'Stop: at the second string' },
  },
  drop: {
    name: 'A store that drops',
    suits: 'a tank or box with straight sides',
    guidance:
      'Let the surface move by a measured drop, with nothing else running in or out, and time it. A tank that fills while its outlet is shut does as well.',
    dimensions: [
      { key: 'area', label: 'Area of its surface', purpose: 'surfaceArea', isNeeded: true },
      { key: 'drop', label: 'Drop of the surface', purpose: 'waterDepth', isNeeded: true },
    ],
    readings: { ...TIMES, example: { metric: '5 min', us: '5 min' } },
    watch: { start: 'Start: at the upper mark', stop: 'Stop: at the lower mark' },
  },
};

/** Mean speed of the water over that of the floats. Source: the range that others print; engine/site/gauging/float-flow.ts. */
export const FLOAT_COEFFICIENTS = [
  { value: '0.9', label: '0.9, deep and smooth' },
  { value: '0.85', label: '0.85, usual' },
  { value: '0.8', label: '0.8, gravel' },
  { value: '0.7', label: '0.7, shallow over stones' },
] as const;

export const FLOW_METHODS = Object.keys(FLOW_WAYS) as readonly GaugingMethod[];

export interface HeightWayWords {
  readonly name: string;
  readonly suits: string;
  readonly guidance: string;
}

export const HEIGHT_WORDS: Readonly<Record<HeightWay, HeightWayWords>> = {
  levels: {
    name: 'Level and staff',
    suits: 'the surest way: to millimetres',
    guidance:
      'From each place of the level read back to the last point first, then fore to the next. Walk back to the first point: then a slip shows.',
  },
  hops: {
    name: 'Hops by water level or hand level',
    suits: 'two people and a clear hose: to centimetres',
    guidance:
      'Go up in hops. At each one read how far it rises; a hop that goes down is written with a minus.',
  },
  gauge: {
    name: 'Pressure gauge',
    suits: 'a pipe that lies there already',
    guidance:
      'Fill the pipe, shut its lower end and let the water stand still. Read the gauge there. Its class and range stand on the dial.',
  },
  barometric: {
    name: 'Barometer',
    suits: 'a first look at a large lift: to metres',
    guidance: 'Read the height above the sea at both ends, soon one after the other.',
  },
  satellite: {
    name: 'Satellite receiver',
    suits: 'a first look at a large lift: to some 7 metres',
    guidance: 'Read the height above the sea at both ends, under open sky. A phone does the same.',
  },
};
