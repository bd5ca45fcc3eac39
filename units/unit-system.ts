import { readMeasure } from './read-measure.ts';
import type { System } from './unit-words.ts';

/**
 * The system that most of these quantities are written in. Metric when they are even or say nothing.
 * A nominal size such as `1/2 in` is no measure of taste; the caller leaves such names out.
 */
export function unitSystemOf(texts: Iterable<string>): System {
  let balance = 0;
  for (const text of texts) {
    const read = readMeasure(text.split(/±|\+\s*\/?\s*[-−]/)[0] ?? '');
    if (!read.ok) continue;
    if (read.measure.unit.system === 'us') balance += 1;
    if (read.measure.unit.system === 'metric') balance -= 1;
  }
  return balance > 0 ? 'us' : 'metric';
}
