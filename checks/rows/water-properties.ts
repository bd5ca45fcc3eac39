import {
  isentropicBulkModulus,
  isothermalBulkModulus,
  vapourPressure,
  waterDensity,
  waterSoundSpeed,
  waterViscosity,
} from '@fallwright/engine';
import type { CheckRow } from '../check-row.ts';
import { readTable } from '../read-table.ts';
import { identity, withOurs } from './table-rows.ts';

const PROPERTIES: Readonly<Record<string, (temperature: number) => number>> = {
  density: waterDensity,
  density_cipm2001: waterDensity,
  dynamic_viscosity: waterViscosity,
  vapour_pressure: vapourPressure,
  sound_speed: waterSoundSpeed,
  bulk_modulus_isentropic: isentropicBulkModulus,
  bulk_modulus_isothermal: isothermalBulkModulus,
};

/** Density, viscosity, vapour pressure, speed of sound and both bulk moduli of water, 0–40 °C. */
export function rows(): readonly CheckRow[] {
  return readTable('hydraulics/water_properties').map((row) => {
    const property = PROPERTIES[row.text('property')];
    return {
      ...identity('water_properties', row),
      quantity: row.text('property'),
      unit: row.text('unit'),
      published: row.number('value'),
      toleranceRelative: row.number('tolerance_rel'),
      ...withOurs(
        property
          ? { ours: () => property(row.number('temperature_C')) }
          : { skip: 'the engine has no such property' },
      ),
    };
  });
}
