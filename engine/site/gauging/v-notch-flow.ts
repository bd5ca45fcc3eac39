/**
 * A V-notch in a thin plate, by the method of Kindsvater and Shen: one coefficient and one small length added to the head
 * stand for everything that a notch of that angle does.
 *
 * It is taken because it holds for any angle, and because for 90° both numbers could be read in a source.
 */
import { interpolate, type TablePoint } from '../../numerics/interpolate.ts';
import { type Reading, repeated, together } from '../../numerics/repeated.ts';
import type { Metre, Ratio } from '../../quantities.ts';
import { GRAVITY } from '../../quantities.ts';
import { broken, type Condition, doubtsAbout, type Gauged, mustBeAboveZero } from './gauged.ts';
import { HEAD_SPREAD, LEAST_FREE_DROP } from './weir-readings.ts';

/** An angle in radians. */
type Radian = number;

const RIGHT_ANGLE: Radian = Math.PI / 2;
const degrees = (angle: number): Radian => (angle / 180) * Math.PI;

/**
 * Coefficient Cₑ by the notch's angle.
 * Source: 90°: Ponce (2013), San Diego State University, laboratory 5 (seen). Others: curve of the USBR Water Measurement
 * Manual, fig. 7-6 (memory: the figure was not readable).
 */
const COEFFICIENTS: readonly TablePoint[] = [
  [degrees(20), 0.592],
  [degrees(28.066), 0.587],
  [degrees(45), 0.581],
  [degrees(60), 0.577],
  [degrees(90), 0.578],
  [degrees(100), 0.581],
];

/** Length k_h that is added to the head, by the notch's angle. Sources as for the coefficients; 90°: 0.0029 ft (seen). */
const HEAD_ADDITIONS: readonly TablePoint[] = [
  [degrees(20), 2.7e-3],
  [degrees(28.066), 2.2e-3],
  [degrees(45), 1.5e-3],
  [degrees(60), 1.2e-3],
  [degrees(90), 0.884e-3],
  [degrees(100), 0.88e-3],
];

/** Error of the coefficient for a fully contracted notch. Source: Bos (1989), ILRI 20, ch. 5: 1 % (memory). */
const COEFFICIENT_SPREAD: Ratio = 0.01;
/** Judgement: what a curve kept from memory adds at other angles than 90°. */
const CURVE_SPREAD: Ratio = 0.01;

/** Where the fully contracted notch was tested. Source: Bos (1989), ILRI 20, table 5.1; USBR manual, ch. 7 (memory). */
const TESTED = {
  smallestAngle: degrees(20),
  largestAngle: degrees(100),
  leastHead: 0.05,
  mostHead: 0.38,
  mostHeadOverCrest: 0.4,
  mostHeadOverChannel: 0.2,
  /** Those of the partly contracted notch: while the two shares above hold, its coefficient is the same. */
  leastCrestHeight: 0.1,
  leastChannelWidth: 0.6,
} as const;

export interface VNotch {
  /** Between the two edges. */
  readonly angle: { readonly value: Radian; readonly spread?: Radian };
  /** Heights of the still surface above the point of the notch. */
  readonly heads: readonly Reading[];
  /** Point of the notch above the bed before it. */
  readonly crestHeight?: Metre;
  /** Width of the channel or pool before it. */
  readonly channelWidth?: Metre;
  /** How far the water below stands under the point of the notch. */
  readonly freeDrop?: Metre;
}

/**
 * Flow over a fully contracted V-notch in a thin plate.
 *
 *   Q = (8/15) Cₑ √(2g) tan(θ/2) (h + k_h)^5/2
 *
 * Holds for sharp upstream edges, a free fall, a head read four heads before the notch, angles of 20–100°, heads of
 * 0.05–0.38 m, h/p ≤ 0.4 and h/B ≤ 0.2. Outside it still answers and names each condition that is broken; beyond the ends of
 * the curve of angles the last value is taken.
 *
 * Source: Kindsvater and Shen, in USBR Water Measurement Manual (2001), ch. 7 sect. 7, eq. 7-3; coefficients and range above.
 * @throws RangeError when angle or head is not above zero, or the angle is not below π.
 */
export function vNotchFlow(notch: VNotch): Gauged {
  const { angle, heads } = notch;
  const lowest = Math.min(...heads.map(({ value }) => value));
  const { crestHeight, channelWidth } = notch;
  mustBeAboveZero({ angle: angle.value, head: lowest, crestHeight, channelWidth });
  if (!(angle.value < Math.PI)) throw new RangeError(`angle must be below π, got ${angle.value}`);
  const head = repeated(heads, HEAD_SPREAD);
  const onCurve = Math.min(TESTED.largestAngle, Math.max(TESTED.smallestAngle, angle.value));
  const coefficient = interpolate(COEFFICIENTS, onCurve);
  const effectiveHead = head.mean + interpolate(HEAD_ADDITIONS, onCurve);
  const flow =
    (8 / 15) *
    coefficient *
    Math.sqrt(2 * GRAVITY) *
    Math.tan(angle.value / 2) *
    effectiveHead ** 2.5;
  const share = together(
    COEFFICIENT_SPREAD,
    Math.abs(angle.value - RIGHT_ANGLE) < 1e-6 ? 0 : CURVE_SPREAD,
    (2.5 * head.spread) / effectiveHead,
    // d ln tan(θ/2) = dθ/sin θ
    (angle.spread ?? 0) / Math.sin(angle.value),
  );
  return {
    flow,
    spread: flow * share,
    readings: head,
    outside: outsideOf(notch, head.mean),
    doubts: doubtsAbout(head, 2.5),
  };
}

function outsideOf(notch: VNotch, head: Metre): readonly Condition[] {
  const { angle, crestHeight: p, channelWidth: b, freeDrop } = notch;
  const most = 'most' as const;
  const least = 'least' as const;
  return [
    ...broken([
      { kind: 'angleTooSmall', has: angle.value, bound: TESTED.smallestAngle - 1e-9, asks: least },
      { kind: 'angleTooLarge', has: angle.value, bound: TESTED.largestAngle + 1e-9, asks: most },
      { kind: 'headTooSmall', has: head, bound: TESTED.leastHead, asks: least },
      { kind: 'headTooLarge', has: head, bound: TESTED.mostHead, asks: most },
    ]),
    ...(p === undefined
      ? []
      : broken([
          { kind: 'headOverCrest', has: head / p, bound: TESTED.mostHeadOverCrest, asks: most },
          { kind: 'crestTooNearBed', has: p, bound: TESTED.leastCrestHeight, asks: least },
        ])),
    ...(b === undefined
      ? []
      : broken([
          { kind: 'headOverChannel', has: head / b, bound: TESTED.mostHeadOverChannel, asks: most },
          { kind: 'channelTooNarrow', has: b, bound: TESTED.leastChannelWidth, asks: least },
        ])),
    ...(p === undefined || b === undefined
      ? [{ kind: 'approachUnknown' as const, has: 0, bound: 1 }]
      : []),
    ...(freeDrop === undefined
      ? []
      : broken([{ kind: 'drowned', has: freeDrop, bound: LEAST_FREE_DROP, asks: least }])),
  ];
}
