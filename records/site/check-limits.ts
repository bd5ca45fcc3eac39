/** A quantity against its limits: refused outside what can be computed, worth a second look outside what is usual. */
import { formatQuantity, type System } from '@fallwright/units';
import type { Given } from '../given.ts';
import type { Path } from '../problem.ts';
import type { Report } from './check-site.ts';
import { startOfSentence } from './fields.ts';
import type { Limit } from './limits.ts';

export function checkLimit(
  given: Given,
  limit: Limit,
  {
    path,
    system,
    report,
  }: { readonly path: Path; readonly system: System; readonly report: Report },
): void {
  const show = (value: number): string => formatQuantity(value, limit.purpose, system);
  const called = startOfSentence(limit.called);
  if (given.value < limit.least || given.value > limit.most) {
    const range = `${show(limit.least)} to ${show(limit.most)}`;
    const message =
      given.value === 0
        ? `${called} is nought. It must be ${range}.`
        : `${called} is ${given.text}, which is outside ${range}. Check the number and its unit.`;
    report('outOfRange', path, message);
  } else if (given.value < (limit.usualLeast ?? limit.least)) {
    report('unusual', path, `${called} is ${given.text}, which is rarely so small. Check it.`);
  } else if (given.value > (limit.usualMost ?? limit.most)) {
    report('unusual', path, `${called} is ${given.text}, which is rarely so large. Check it.`);
  }
  // Of readings that are too coarse more is said than this: which way to measure instead.
  const isTold = given.readings !== undefined && given.readings.value === undefined;
  const { spread } = given;
  if (!isTold && spread !== undefined && given.value > 0 && spread > given.value / 2) {
    report(
      'unusual',
      path,
      `${called} is ${given.text}: with so wide a ± the answer says little. Measure it again.`,
    );
  }
}
