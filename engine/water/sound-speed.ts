import type { Celsius, MetrePerSecond } from '../quantities.ts';
import { waterHeatCapacity } from './heat-capacity.ts';
import { kelvinOfLiquidWater } from './liquid-range.ts';
import { specificVolume } from './specific-volume.ts';

/**
 * Speed of sound in open water without free air: the most that a wave in a pipe of water can reach.
 *
 *   c = v √( −c_p / ( c_p ∂v/∂p + T (∂v/∂T)² ) )
 *
 * Holds for 0–40 °C at one atmosphere.
 *
 * Source: IAPWS SR6-08 (2011), speed of sound at 0.1 MPa.
 * @throws RangeError when `temperature` is outside 0–40 °C.
 */
export function waterSoundSpeed(temperature: Celsius): MetrePerSecond {
  const { volume, byTemperature, byPressure } = specificVolume(temperature);
  const heatCapacity = waterHeatCapacity(temperature);
  const kelvin = kelvinOfLiquidWater(temperature);
  return (
    volume * Math.sqrt(-heatCapacity / (heatCapacity * byPressure + kelvin * byTemperature ** 2))
  );
}
