/** What is not known exactly about a place, as plain data. */

/** Things that have a value of their own in an installation; their spread is in that value's SI unit. */
export const UNSURE_VALUES = [
  'fall', // m
  'lift', // m
  'sourceFlow', // m³/s
  'driveLength', // m
  'driveBore', // m
  'deliveryLength', // m
  'deliveryBore', // m
  'stroke', // m
  'valveWeight', // N, force that holds the waste valve open
  'trappedAir', // m³
] as const;

/** Things that are known up to a factor, which is 1 in the installation; their spread is a ratio. */
export const UNSURE_FACTORS = [
  'roughness', // of both lines
  'fittings', // losses of entrance and fittings in the drive line
  'wallStiffness', // modulus of the drive line's walls
  'curtainCoefficient', // discharge of the waste valve's curtain
  'drag', // of its disc
  'deliveryValveLoss',
  'backFlow', // each beat
  'bodyGive',
] as const;

export type UnsureValue = (typeof UNSURE_VALUES)[number];
export type UnsureFactor = (typeof UNSURE_FACTORS)[number];
export type Unsure = UnsureValue | UnsureFactor;

/** How values lie about the middle. */
export type Shape =
  /** The bell. */
  | 'normal'
  /** Even between two ends, √3 spreads to each side. */
  | 'uniform'
  /** The bell on a scale of ratios, for what is known to a factor; the spread is that of the logarithm. */
  | 'logNormal';

/** One thing that is not known exactly. Its middle is the value in the installation, or 1 for a factor. */
export interface UncertainInput {
  readonly what: Unsure;
  /** Standard uncertainty: in SI for a value with shape `normal` or `uniform`, a ratio otherwise. */
  readonly spread: number;
  readonly shape: Shape;
}

export function isFactor(what: Unsure): what is UnsureFactor {
  return (UNSURE_FACTORS as readonly string[]).includes(what);
}
