/** A ram followed in time. */
import { expect, test } from 'vitest';
import { driveOf, plainPlace } from './fixtures/made-installation.ts';
import { traceRun } from './trace-run.ts';

test('a trace has one sample a step, evenly, as long as was asked', () => {
  const trace = traceRun(plainPlace(), { duration: 2 });
  const samples = trace.time.length;
  expect(trace.time[0]).toBe(0);
  expect(trace.time[samples - 1]).toBeGreaterThanOrEqual(2);
  const step = trace.time[1] as number;
  expect(trace.time[samples - 2]).toBeLessThan(2 + step);
  for (let i = 1; i < samples; i++) {
    expect((trace.time[i] as number) - (trace.time[i - 1] as number)).toBeCloseTo(step, 9);
  }
  expect(trace.end.outcome).toBe('timeUp');
});

test('the parts of a trace agree with each other', () => {
  const place = plainPlace();
  const trace = traceRun(place, { duration: 4 });
  const { stroke } = place.ram.wasteValve;
  let shutSamples = 0;
  let deliveringSamples = 0;
  trace.time.forEach((_, i) => {
    const opening = trace.opening[i] as number;
    expect(opening).toBeGreaterThanOrEqual(0);
    expect(opening).toBeLessThanOrEqual(stroke);
    expect(trace.vesselHead[i]).toBe(place.lift);
    expect(trace.bodyHead[i]).toBeGreaterThanOrEqual(place.water.vapourHead);
    if (opening === 0) shutSamples++;
    if ((trace.deliveryFlow[i] as number) > 0) deliveringSamples++;
  });
  expect(shutSamples).toBeGreaterThan(10);
  expect(deliveringSamples).toBeGreaterThan(10);
  // Its first sample is the push, on a line at rest.
  expect(trace.opening[0]).toBe(stroke);
  expect(trace.driveFlow[0]).toBe(0);
  expect(trace.bodyHead[0]).toBe(place.fall);
});

test('the tank gets no water while the waste valve stands wide open', () => {
  const place = plainPlace();
  const trace = traceRun(place, { duration: 4 });
  let openSamples = 0;
  trace.opening.forEach((opening, i) => {
    if (opening < place.ram.wasteValve.stroke) return;
    openSamples++;
    expect(trace.deliveryFlow[i]).toBe(0);
  });
  expect(openSamples).toBeGreaterThan(100);
});

test('a trace of no length is refused', () => {
  expect(() => traceRun(plainPlace(), { duration: 0 })).toThrow('duration must be above zero');
  expect(() => traceRun(plainPlace(), { duration: Number.NaN })).toThrow('duration');
});

test('a softer line hits less hard', () => {
  const peakOf = (pipe: string) =>
    Math.max(...traceRun(plainPlace({ lift: 60, driveLine: driveOf(pipe, 12) })).bodyHead);
  expect(peakOf('PE100 SDR11 25')).toBeLessThan(peakOf('steel sch 40 3/4 in'));
  expect(peakOf('garden hose 3/4 in')).toBeLessThan(peakOf('PE100 SDR11 25'));
});
