/** A test put together for the engine: for each reading the rig as it was set, and what was read as means with spreads. */
import {
  averaged,
  type BenchQuantity,
  type BenchReading,
  type Installation,
  type Measured,
  type Reading,
  USUAL_SPREADS,
} from '@fallwright/engine';
import type { Given } from '../given.ts';
import type { Assumption } from '../site/assumption.ts';
import { installationOf } from '../site/installation-of.ts';
import type { RamField } from '../site/ram-fields.ts';
import { SITE_FORMAT, type Site } from '../site/site-schema.ts';
import type { BenchTest, ReadingForm } from './test-schema.ts';

export interface BenchSetting {
  /** Place in the test, from 0. */
  readonly index: number;
  readonly reading: BenchReading;
  readonly installation: Installation;
  /** Whether the cycle is run at the head in the vessel, or through the delivery line; see `predictedReading`. */
  readonly head: 'atVessel' | 'throughLine';
  readonly assumptions: readonly Assumption[];
}

/** @throws RangeError when the test did not come from `readTest` or `testFromData`. */
export function settingsOf(test: BenchTest): readonly BenchSetting[] {
  return test.readings.map((form, index) => {
    const site = siteAt(test, form);
    const { installation, assumptions } = installationOf(site);
    const reading = readingOf(test, form);
    const goesThroughLine = test.rig.delivery !== undefined && form.lift !== undefined;
    return {
      index,
      reading,
      installation,
      head: reading.vesselHead || !goesThroughLine ? 'atVessel' : 'throughLine',
      // Without a delivery line none is run through, so what it might be is not assumed.
      assumptions: assumptions.filter(
        ({ field }) => goesThroughLine || !field.startsWith('delivery'),
      ),
    };
  });
}

/** The rig at one setting, as a place. */
function siteAt({ rig, ram }: BenchTest, form: ReadingForm): Site {
  const { source = { flow: 'plenty' }, delivery, temperature, ...rest } = rig;
  const lift = form.lift ?? form.backPressure;
  if (!lift) throw new RangeError('a reading needs a lift: read the test with readTest first');
  const warmth = form.temperature ?? temperature;
  return {
    fallwright: SITE_FORMAT,
    ...rest,
    source,
    lift,
    ram: tuned(ram, form.tuning),
    ...(delivery && form.lift && { delivery }),
    ...(warmth && { temperature: warmth }),
  };
}

/** The ram with the stroke and weight of one reading in place of its own. */
function tuned(ram: RamField, tuning: ReadingForm['tuning']): RamField {
  if (!tuning) return ram;
  const parts = typeof ram === 'string' ? { typical: ram } : ram;
  if (!parts.wasteValve) return { ...parts, ...tuning };
  // Weight in air takes the place of any weight.
  const { stroke: ownStroke, weight, weightInWater, mass, ...valve } = parts.wasteValve;
  const stroke = tuning.stroke ? undefined : ownStroke;
  const kept = tuning.weight
    ? {}
    : { ...(weight && { weight }), ...(weightInWater && { weightInWater }), ...(mass && { mass }) };
  return { ...parts, ...tuning, wasteValve: { ...valve, ...kept, ...(stroke && { stroke }) } };
}

function readingOf(test: BenchTest, form: ReadingForm): BenchReading {
  const { instruments = {} } = test;
  const share = (
    instrument: (typeof instruments)[keyof typeof instruments],
    quantity: keyof typeof USUAL_SPREADS,
  ): number => (typeof instrument === 'object' ? instrument.goodTo.value : USUAL_SPREADS[quantity]);
  const mean = (readings: readonly Reading[], goodTo: number): Measured =>
    averaged(readings, goodTo);
  const optional = <Name extends BenchQuantity>(
    name: Name,
    readings: readonly Reading[] | undefined,
    instrument: (typeof instruments)[keyof typeof instruments],
  ): Partial<Record<Name, Measured>> =>
    readings && readings.length > 0
      ? ({ [name]: mean(readings, share(instrument, name)) } as Partial<Record<Name, Measured>>)
      : {};
  const lift = form.lift ?? form.backPressure;
  if (!lift) throw new RangeError('a reading needs a lift: read the test with readTest first');
  return {
    fall: mean([test.rig.fall], share(instruments.fall, 'fall')),
    // A throttled back pressure is read on the vessel's gauge.
    lift: mean(
      [lift],
      form.lift ? share(instruments.lift, 'lift') : share(instruments.vesselPressure, 'vesselHead'),
    ),
    ...optional('beatFrequency', form.beats?.flatMap(beatReadings), instruments.beats),
    ...optional('deliveryFlow', form.delivered?.flatMap(flowReadings), instruments.delivered),
    ...optional('wasteFlow', form.wasted?.flatMap(flowReadings), instruments.wasted),
    ...optional('supplyFlow', form.supply?.flatMap(flowReadings), instruments.supply),
    ...optional('vesselHead', form.vesselPressure, instruments.vesselPressure),
    ...optional('peakHead', form.peakPressure, instruments.peakPressure),
    ...(form.handStrokes !== undefined && { handStrokes: form.handStrokes }),
  };
}

type FlowForm = NonNullable<ReadingForm['delivered']>[number];
type BeatsForm = NonNullable<ReadingForm['beats']>[number];

function flowReadings(form: FlowForm): readonly Reading[] {
  if (!('times' in form)) return [form];
  return form.times.map((time) => quotient(form.volume, time));
}

function beatReadings(form: BeatsForm): readonly Reading[] {
  if (!('times' in form)) return [form];
  return form.times.map((time) => quotient({ value: form.count }, time));
}

/** Something over a time; with a ± where either has one. */
function quotient(
  amount: Pick<Given, 'value' | 'spread'>,
  time: Pick<Given, 'value' | 'spread'>,
): Reading {
  const value = amount.value / time.value;
  if (amount.spread === undefined && time.spread === undefined) return { value };
  const shares = [amount, time].map(({ value: of, spread = 0 }) => (of > 0 ? spread / of : 0));
  return { value, spread: value * Math.hypot(...shares) };
}
