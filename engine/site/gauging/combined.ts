import type { CubicMetrePerSecond, Ratio } from '../../quantities.ts';

export interface KnownFlow {
  readonly flow: CubicMetrePerSecond;
  /** Standard uncertainty, above zero. */
  readonly spread: CubicMetrePerSecond;
}

/** Two measurements that cannot both be right: they lie further apart than their spreads together. */
export interface Disagreement {
  /** Places in the list. */
  readonly first: number;
  readonly second: number;
  readonly apart: CubicMetrePerSecond;
  readonly allowed: CubicMetrePerSecond;
}

export interface CombinedFlow extends KnownFlow {
  /** Root of χ² per degree of freedom; above one the measurements lie further apart than their spreads explain. */
  readonly misfit: Ratio;
  readonly disagreements: readonly Disagreement[];
}

/**
 * One flow from several measurements of it, the surer ones counting more.
 *
 *   Q = Σ(Qᵢ/uᵢ²)/Σ(1/uᵢ²)      u = max(1, R)/√Σ(1/uᵢ²)      R² = Σ((Qᵢ − Q)/uᵢ)²/(n − 1)
 *
 * When they lie further apart than their spreads explain, the spread grows by R, so that methods which contradict one another
 * do not make a sure figure. Two that lie further apart than u₁ + u₂ are named.
 *
 * Source: weighted mean and Birge (1932), Phys. Rev. 40, 207, for R (memory). Judgement: the sum of spreads as the bound.
 * @throws RangeError when there are none, or a spread is not above zero.
 */
export function combinedFlow(flows: readonly KnownFlow[]): CombinedFlow {
  if (flows.length === 0) throw new RangeError('flows must hold at least one flow');
  for (const { spread } of flows) {
    if (!(spread > 0)) throw new RangeError(`spread must be above zero, got ${spread} m³/s`);
  }
  const weights = flows.map(({ spread }) => 1 / spread ** 2);
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const flow = flows.reduce((sum, one, i) => sum + (weights[i] as number) * one.flow, 0) / total;
  const chiSquared = flows.reduce((sum, one) => sum + ((one.flow - flow) / one.spread) ** 2, 0);
  const misfit = flows.length > 1 ? Math.sqrt(chiSquared / (flows.length - 1)) : 0;
  return {
    flow,
    spread: Math.max(1, misfit) / Math.sqrt(total),
    misfit,
    disagreements: flows.flatMap((a, first) =>
      flows.slice(first + 1).flatMap((b, after) => {
        const apart = Math.abs(a.flow - b.flow);
        const allowed = a.spread + b.spread;
        return apart > allowed ? [{ first, second: first + 1 + after, apart, allowed }] : [];
      }),
    ),
  };
}
