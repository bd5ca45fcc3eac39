/**
 * A drawing as plain shapes, each with what it is made of. The screen turns it into SVG, print into its own lines; neither is
 * known here. Lengths are those of the sheet, y grows downwards.
 */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** What a filled shape shows. */
export type Matter =
  | 'water'
  | 'air'
  | 'metalCut'
  | 'metal'
  | 'rubber'
  | 'pipeWall'
  | 'ink'
  /** What was measured, as a mark in a plot. */
  | 'measured'
  /** A measured mark that lies off what is predicted. */
  | 'measuredOff'
  /** Where a prediction lies, from least to most. */
  | 'band';
/** What a line shows. */
export type Stroke =
  | 'surface'
  | 'metalThin'
  | 'spring'
  | 'dimension'
  | 'leader'
  | 'axis'
  | 'grid'
  | 'front'
  | 'need'
  /** How far a measured mark may be off. */
  | 'spread';
export type Tone = 'plain' | 'strong' | 'second' | 'ofWater' | 'ofAlarm' | 'tick';
export type Anchor = 'start' | 'middle' | 'end';

export interface Area {
  readonly kind: 'area';
  readonly of: Matter;
  /** How a person names the part, where it has a name. */
  readonly part?: string;
  readonly outline: readonly Point[];
}

export interface Line {
  readonly kind: 'line';
  readonly of: Stroke;
  readonly points: readonly Point[];
}

export interface Words {
  readonly kind: 'words';
  readonly tone: Tone;
  readonly anchor: Anchor;
  /** The foot of the first line's letters. */
  readonly at: Point;
  readonly lines: readonly string[];
}

/** A number in a ring, that a list beside the drawing explains. */
export interface Key {
  readonly kind: 'key';
  readonly at: Point;
  readonly text: string;
}

export type Shape = Area | Line | Words | Key;

export interface Drawing {
  readonly width: number;
  readonly height: number;
  readonly shapes: readonly Shape[];
}

export function area(of: Matter, outline: readonly Point[], part?: string): Area {
  return { kind: 'area', of, outline, ...(part === undefined ? {} : { part }) };
}

export function line(of: Stroke, ...points: readonly Point[]): Line {
  return { kind: 'line', of, points };
}

/** A rectangle by two of its corners. */
export function box(from: Point, to: Point): readonly Point[] {
  return [from, { x: to.x, y: from.y }, to, { x: from.x, y: to.y }];
}
