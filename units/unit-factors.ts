/**
 * What one of each unit is in SI, by the names of the conversion library js-quantities and just as it gives them.
 *
 * They stand here so that no page has to carry the library and set it up before it can read a metre. None is typed in: a
 * test asks the library for each of them again.
 */
import type { Kind } from './kinds.ts';

export const UNIT_FACTORS = {
  length: {
    m: 1,
    cm: 0.01,
    mm: 0.001,
    km: 1000,
    ft: 0.3048,
    in: 0.0254,
    yd: 0.9144,
    mi: 1609.344,
  },
  area: {
    m2: 1,
    cm2: 0.0001,
    mm2: 0.000001,
    hectare: 10000,
    ft2: 0.09290304,
    in2: 0.00064516,
    acre: 4046.85642,
  },
  volume: {
    m3: 1,
    L: 0.001,
    mL: 0.000001,
    gal: 0.0037854118,
    'gallon-imp': 0.00454609,
    quart: 0.00094635295,
    pint: 0.000473176475,
    floz: 0.0000295735297,
    ft3: 0.028316846592,
    in3: 0.000016387064,
  },
  flow: {
    'L/min': 0.000016666666666666667,
    'L/s': 0.001,
    'L/day': 1.1574074074074074e-8,
    'gal/min': 0.00006309019666666667,
    'gallon-imp/min': 0.00007576816666666667,
    'gal/h': 0.0000010515032777777778,
    'gal/day': 4.381263657407407e-8,
    'ft3/s': 0.028316846592,
    'ft3/min': 0.0004719474432,
  },
  pressure: {
    bar: 100000,
    mbar: 100,
    Pa: 1,
    kPa: 1000,
    MPa: 1000000,
    GPa: 1000000000,
    psi: 6894.76,
    atm: 101325,
  },
  mass: {
    kg: 1,
    g: 0.001,
    oz: 0.0283495231,
    lb: 0.45359237,
  },
  force: {
    N: 1,
    kN: 1000,
    lbf: 4.448222,
  },
  time: {
    s: 1,
    ms: 0.001,
    min: 60,
    h: 3600,
    day: 86400,
  },
  velocity: {
    'm/s': 1,
    'cm/s': 0.01,
    'ft/s': 0.3048,
  },
  frequency: {
    '1/s': 1,
    '1/min': 0.016666666666666666,
  },
  angle: {
    deg: 0.0174532925199433,
    rad: 1,
  },
} as const satisfies Partial<Record<Kind, Readonly<Record<string, number>>>>;
