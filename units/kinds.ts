/** The kinds of quantity that people write in a site file, each with the SI unit it is turned into. */

export type Kind =
  | 'length'
  | 'area'
  | 'volume'
  | 'flow'
  | 'pressure'
  | 'mass'
  | 'force'
  | 'temperature'
  | 'time'
  | 'velocity'
  | 'frequency'
  | 'angle'
  | 'share';

/** SI unit of each kind, by the name the conversion library knows; degrees Celsius and plain shares are ours. */
export const SI_UNIT = {
  length: 'm',
  area: 'm2',
  volume: 'm3',
  flow: 'm3/s',
  pressure: 'Pa',
  mass: 'kg',
  force: 'N',
  temperature: 'tempC',
  time: 's',
  velocity: 'm/s',
  frequency: '1/s',
  angle: 'rad',
  share: '1',
} as const satisfies Record<Kind, string>;

/** What a person calls it: "12 L/min is a flow". */
export const KIND_IN_WORDS = {
  length: 'a length',
  area: 'an area',
  volume: 'a volume',
  flow: 'a flow',
  pressure: 'a pressure',
  mass: 'a weight',
  force: 'a force',
  temperature: 'a temperature',
  time: 'a time',
  velocity: 'a speed',
  frequency: 'a rate of beats',
  angle: 'an angle',
  share: 'a share',
} as const satisfies Record<Kind, string>;
