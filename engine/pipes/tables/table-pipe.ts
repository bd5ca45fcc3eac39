/** A pipe as a standard lists it, and the small functions with which the tables are written. */
import type { Celsius, Metre, Pascal } from '../../quantities.ts';
import type { KnownBy } from '../evidence.ts';
import { MATERIALS, type MaterialName } from '../materials.ts';
import type { Pipe } from '../pipe.ts';

export interface TablePipe extends Pipe {
  readonly standard: string;
  /** The row of thicknesses that the standard sorts pipes by: a schedule, a dimension ratio, a pressure class. */
  readonly series: string;
  /** The size as the standard names it, `25 mm` or `1/2 in`. */
  readonly nominal: string;
  readonly outerDiameter: Metre;
  /** Temperature at which the rating holds. Absent with the rating. */
  readonly ratingTemperature?: Celsius;
  readonly source: string;
  readonly knownBy: KnownBy;
}

/** Pounds per square inch, for tables that are printed in them. Source: NIST SP 811 (2008), appendix B (memory). */
export const POUND_PER_SQUARE_INCH: Pascal = 6894.757;

/** A table pipe with the roughness of its material, and without the fields that it has not got. */
export function tablePipe(row: {
  readonly name: string;
  readonly material: MaterialName;
  readonly standard: string;
  readonly series: string;
  readonly nominal: string;
  readonly outerDiameter: Metre;
  readonly innerDiameter: Metre;
  readonly wallThickness: Metre;
  readonly rated?: { readonly rating: Pascal; readonly ratingTemperature: Celsius };
  readonly source: string;
  readonly knownBy: KnownBy;
}): TablePipe {
  const { rated, ...rest } = row;
  return { ...rest, roughness: MATERIALS[row.material].roughness.value, ...rated };
}
