/**
 * A rectangular notch in a thin plate, by the method of Kindsvater and Carter: one form for crests narrower than the channel
 * (contracted) and for crests as wide as it (suppressed).
 */
import { interpolate, type TablePoint } from '../../numerics/interpolate.ts';
import { type Reading, repeated, together } from '../../numerics/repeated.ts';
import type { Metre, Ratio } from '../../quantities.ts';
import { GRAVITY } from '../../quantities.ts';
import { broken, type Condition, doubtsAbout, type Gauged, mustBeAboveZero } from './gauged.ts';
import { HEAD_SPREAD, LEAST_FREE_DROP } from './weir-readings.ts';

/**
 * Cₑ = α + β h/p by the share of the channel that the crest takes, b/B.
 * Source: Kindsvater and Carter (1957), in the form of ISO 1438 and USBR Water Measurement Manual, ch. 7 sect. 6 (memory).
 */
const ALPHA: readonly TablePoint[] = [
  [0, 0.587],
  [0.2, 0.589],
  [0.4, 0.591],
  [0.5, 0.592],
  [0.6, 0.593],
  [0.7, 0.595],
  [0.8, 0.597],
  [0.9, 0.599],
  [1, 0.602],
];
const BETA: readonly TablePoint[] = [
  [0, -0.0023],
  [0.2, -0.0018],
  [0.4, 0.0058],
  [0.5, 0.011],
  [0.6, 0.018],
  [0.7, 0.03],
  [0.8, 0.045],
  [0.9, 0.064],
  [1, 0.075],
];
/** Length k_b that is added to the crest, by b/B. Source: as above (memory). */
const WIDTH_ADDITIONS: readonly TablePoint[] = [
  [0, 2.4e-3],
  [0.2, 2.4e-3],
  [0.4, 2.7e-3],
  [0.5, 3.0e-3],
  [0.6, 3.6e-3],
  [0.8, 4.2e-3],
  [1, -0.9e-3],
];
/** Length k_h that is added to the head. Source: as above (memory). */
const HEAD_ADDITION: Metre = 1e-3;

/** Error of the coefficient. Source: Bos (1989), ILRI 20, ch. 5: 1 % (memory); Judgement: 1 % more as it is from memory. */
const COEFFICIENT_SPREAD: Ratio = 0.015;

/** Where it was tested. Source: Bos (1989), ILRI 20, table 5.2; USBR manual, ch. 7 (memory). */
const TESTED = {
  leastHead: 0.03,
  mostHeadOverCrest: 2,
  leastCrestHeight: 0.1,
  leastCrestWidth: 0.15,
  /** From each end of a contracted crest to the side. */
  leastSide: 0.1,
} as const;

export interface RectangularWeir {
  /** Width of the crest. */
  readonly width: Reading;
  /** Heights of the still surface above the crest. */
  readonly heads: readonly Reading[];
  /** Crest above the bed before it; Infinity for a deep pool. */
  readonly crestHeight: Metre;
  /** Width of the channel before it; Infinity for a wide pool. As wide as the crest for a suppressed weir. */
  readonly channelWidth: Metre;
  /** How far the water below stands under the crest. */
  readonly freeDrop?: Metre;
}

/**
 * Flow over a rectangular notch in a thin plate, contracted or suppressed.
 *
 *   Q = (2/3) Cₑ √(2g) (b + k_b) (h + k_h)^3/2,   Cₑ = α + β h/p
 *
 * Holds for sharp upstream edges, a free fall with air behind the sheet, a head read four heads before the crest, h ≥ 0.03 m,
 * h/p ≤ 2, p ≥ 0.1 m, b ≥ 0.15 m and, when contracted, 0.1 m from crest to either side. Outside it still answers and names each
 * condition that is broken.
 *
 * Source: Kindsvater and Carter (1957), in USBR Water Measurement Manual (2001), ch. 7 sect. 6 (form seen); coefficients above.
 * @throws RangeError when a width, height or head is not above zero, or the crest is wider than the channel.
 */
export function rectangularWeirFlow(weir: RectangularWeir): Gauged {
  const { width, heads, crestHeight, channelWidth } = weir;
  const lowest = Math.min(...heads.map(({ value }) => value));
  mustBeAboveZero({ width: width.value, head: lowest, crestHeight, channelWidth });
  const contraction = width.value / channelWidth;
  if (!(contraction <= 1)) {
    throw new RangeError(`width must not be above channelWidth, got ${width.value} m`);
  }
  const head = repeated(heads, HEAD_SPREAD);
  const coefficient =
    interpolate(ALPHA, contraction) + (interpolate(BETA, contraction) * head.mean) / crestHeight;
  const effectiveWidth = width.value + interpolate(WIDTH_ADDITIONS, contraction);
  const effectiveHead = head.mean + HEAD_ADDITION;
  const flow =
    (2 / 3) * coefficient * Math.sqrt(2 * GRAVITY) * effectiveWidth * effectiveHead ** 1.5;
  const share = together(
    COEFFICIENT_SPREAD,
    (1.5 * head.spread) / effectiveHead,
    (width.spread ?? WIDTH_SPREAD) / effectiveWidth,
  );
  return {
    flow,
    spread: flow * share,
    readings: head,
    outside: outsideOf(weir, head.mean),
    doubts: doubtsAbout(head, 1.5),
  };
}

/** Judgement: a crest measured with a rule. */
const WIDTH_SPREAD: Metre = 1e-3;

function outsideOf(weir: RectangularWeir, head: Metre): readonly Condition[] {
  const { width, crestHeight, channelWidth, freeDrop } = weir;
  const side = (channelWidth - width.value) / 2;
  const most = 'most' as const;
  const least = 'least' as const;
  return [
    ...broken([
      { kind: 'headTooSmall', has: head, bound: TESTED.leastHead, asks: least },
      {
        kind: 'headOverCrest',
        has: head / crestHeight,
        bound: TESTED.mostHeadOverCrest,
        asks: most,
      },
      { kind: 'crestTooNearBed', has: crestHeight, bound: TESTED.leastCrestHeight, asks: least },
      { kind: 'crestTooNarrow', has: width.value, bound: TESTED.leastCrestWidth, asks: least },
    ]),
    ...(side > 0
      ? broken([{ kind: 'sideTooNear', has: side, bound: TESTED.leastSide, asks: least }])
      : []),
    ...(freeDrop === undefined
      ? []
      : broken([{ kind: 'drowned', has: freeDrop, bound: LEAST_FREE_DROP, asks: least }])),
  ];
}
