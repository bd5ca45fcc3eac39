/** What is wrong with a file: where, of what kind for a program, in a sentence for a person. */

export type ProblemKind =
  /** Not a text that can be read at all: binary, too large, not YAML. */
  | 'unreadable'
  /** YAML, but not a record of ours, or of another version. */
  | 'wrongFormat'
  | 'missing'
  | 'unknownField'
  | 'duplicateField'
  | 'noUnit'
  | 'unknownUnit'
  | 'wrongKind'
  | 'notANumber'
  | 'negative'
  | 'badSpread'
  /** A word where only certain words can stand, or a name that is in no table. */
  | 'unknownWord'
  /** A list, map, number or text where something else must stand. */
  | 'wrongForm'
  /** Outside what can be computed. */
  | 'outOfRange'
  /** Each field can be read, but together they cannot be true. */
  | 'contradiction'
  /** Can be true and can be computed, but is rare enough to be worth a second look. */
  | 'unusual';

export interface Problem {
  readonly kind: ProblemKind;
  /** Path of the field, such as `drive[0].length`; empty for the file as a whole. */
  readonly field: string;
  /** Counted from 1; absent when the record did not come from a text. */
  readonly line?: number;
  readonly column?: number;
  /** What is wrong, then what to write instead. */
  readonly message: string;
}

export type Path = readonly (string | number)[];

/** `drive[0].length`. */
export function fieldName(path: Path): string {
  return path.reduce<string>(
    (name, step) =>
      typeof step === 'number' ? `${name}[${step}]` : name === '' ? step : `${name}.${step}`,
    '',
  );
}
