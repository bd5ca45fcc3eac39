/**
 * Air that a crest may hold, from the shape of the line and its bore.
 *
 * At rest the water under a pocket is level. While water can still just pass beneath the air, that level is the floor of the
 * pipe at the crest; more air would shut the pipe. On a leg of slope s the air is then a wedge that fills the bore at the
 * crest and runs out where the roof has come down to the water, D/s along:
 *
 *   V = ½ · πD²/4 · D (1/s₁ + 1/s₂)          (two straight legs)
 *
 * The half is exact: the wedge's section and the water's beside it mirror one another about half depth. Where a sag lies
 * less than a bore under the crest, air slips out along the roof of the higher sag, and the level is that roof instead.
 */
import type { ProfilePoint } from '../../cycle/installation.ts';
import type { CubicMetre, Metre, Ratio } from '../../quantities.ts';

/**
 * Most air that a crest holds at rest while water can still pass beneath it.
 *
 * The profile is taken as the axis of the pipe, and the bore as upright across it: on a leg of 30° the wedge is 15 % longer
 * than this. Flow drags a part of the air down the falling leg, which is left out; so is what a long run would dissolve.
 *
 * `from` and `to` are the points of the turns, or of the line's ends, before and after the crest.
 *
 * Derived above. Judgement: level under the air and full at the crest is the upper end of what is found in practice.
 */
export function pocketVolume(
  profile: readonly ProfilePoint[],
  crest: { readonly index: number; readonly from: number; readonly to: number },
  bore: Metre,
): CubicMetre {
  const height = (index: number): Metre => (profile[index] as ProfilePoint).elevation;
  const radius = bore / 2;
  const floorAtCrest = height(crest.index) - radius;
  const roofAtHigherSag = Math.max(height(crest.from), height(crest.to)) + radius;
  const level = Math.max(floorAtCrest, roofAtHigherSag);
  let volume = 0;
  for (let i = crest.from; i < crest.to; i++) {
    const here = profile[i] as ProfilePoint;
    const next = profile[i + 1] as ProfilePoint;
    volume += airAbove(level, here, next, radius);
  }
  return volume;
}

/** Air over a level in one straight piece of pipe. */
function airAbove(level: Metre, a: ProfilePoint, b: ProfilePoint, radius: Metre): CubicMetre {
  const length = b.distance - a.distance;
  const depthAtA = a.elevation + radius - level;
  const depthAtB = b.elevation + radius - level;
  const change = depthAtB - depthAtA;
  if (Math.abs(change) < 1e-9 * radius) return length * segmentArea(depthAtA, radius);
  const sum = segmentAreaSum(depthAtB, radius) - segmentAreaSum(depthAtA, radius);
  return (length * sum) / change;
}

/** Area of a circle's part of the given depth: r² acos u − r² u √(1 − u²), u = 1 − depth/r. */
function segmentArea(depth: Metre, radius: Metre): number {
  const u = 1 - Math.min(2, Math.max(0, depth / radius));
  return radius ** 2 * (Math.acos(u) - u * Math.sqrt(1 - u ** 2));
}

/** Integral of `segmentArea` from nought to `depth`: r³ [√(1 − u²) − u acos u − (1 − u²)^{3/2}/3], then πr² for each metre. */
function segmentAreaSum(depth: Metre, radius: Metre): number {
  const u = 1 - Math.min(2, Math.max(0, depth / radius));
  const root = Math.sqrt(1 - u ** 2);
  const within = radius ** 3 * (root - u * Math.acos(u) - root ** 3 / 3);
  return within + Math.PI * radius ** 2 * Math.max(0, depth - 2 * radius);
}

/**
 * Mean velocity above which steady flow carries a pocket down a falling leg and out.
 *
 *   V/√(gD) = 1.1 (0.56 √(sin θ) + a),   a = 0.45, 0.50, 0.57, 0.61 for n < 0.06, 0.12, 0.30, 2,   n = 4V_air/(πD³)
 *
 * Fitted to legs of up to 22.5° and pipes of 150 mm; 1.1 is its authors' margin. Larger pockets keep the last value. In
 * bores under some 25 mm the water's skin holds air more firmly than this says (judgement). It is for flow that does not
 * stop: in a drive line the water stands still at every beat, so no pocket should be counted as swept away there.
 *
 * Source: Escarameia (2007), Proc. ICE Water Management 160(1), 25–34 (memory: figures not checked against the paper).
 */
export function clearingVelocity({
  bore,
  slope,
  air,
  gravity,
}: {
  readonly bore: Metre;
  /** Fall of the leg behind the crest for each metre of pipe, sin θ. */
  readonly slope: Ratio;
  readonly air: CubicMetre;
  readonly gravity: number;
}): number {
  const size = (4 * air) / (Math.PI * bore ** 3);
  const a = size < 0.06 ? 0.45 : size < 0.12 ? 0.5 : size < 0.3 ? 0.57 : 0.61;
  const steepness = Math.min(1, Math.max(0, slope));
  return 1.1 * (0.56 * Math.sqrt(steepness) + a) * Math.sqrt(gravity * bore);
}
