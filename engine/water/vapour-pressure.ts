import type { Celsius, Pascal } from '../quantities.ts';
import { kelvinOfLiquidWater } from './liquid-range.ts';

/**
 * Absolute pressure at which water boils: where it falls this low in a pipe, the column tears.
 *
 *   p = [ 2C / (−B + √(B² − 4AC)) ]⁴ MPa,   θ = T + n₉/(T − n₁₀)
 *   A = θ² + n₁θ + n₂,   B = n₃θ² + n₄θ + n₅,   C = n₆θ² + n₇θ + n₈
 *
 * The equation holds from 0 °C to the critical point; the engine asks up to 40 °C.
 *
 * Source: IAPWS R7-97 (2012), industrial formulation, region 4, equations 29–30; coefficients from memory, they return
 * 611.2127 Pa at 0 °C (see `checks`).
 * @throws RangeError when `temperature` is outside 0–40 °C.
 */
export function vapourPressure(temperature: Celsius): Pascal {
  const kelvin = kelvinOfLiquidWater(temperature);
  const theta = kelvin - 0.23855557567849 / (kelvin - 650.17534844798);
  const A = theta ** 2 + 1167.0521452767 * theta - 724213.16703206;
  const B = -17.073846940092 * theta ** 2 + 12020.82470247 * theta - 3232555.0322333;
  const C = 14.91510861353 * theta ** 2 - 4823.2657361591 * theta + 405113.40542057;
  return 1e6 * ((2 * C) / (-B + Math.sqrt(B ** 2 - 4 * A * C))) ** 4;
}
