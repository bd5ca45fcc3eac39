import Qty from 'js-quantities';
import { expect, test } from 'vitest';
import { type Kind, SI_UNIT } from './kinds.ts';
import { UNIT_FACTORS } from './unit-factors.ts';

for (const [kind, factors] of Object.entries(UNIT_FACTORS)) {
  test(`every factor of ${kind} is the one that the conversion library gives`, () => {
    const si = SI_UNIT[kind as Kind];
    const given = Object.keys(factors).map((name) => [name, Qty(1, name).to(si).scalar]);
    expect(factors).toEqual(Object.fromEntries(given));
  });
}
