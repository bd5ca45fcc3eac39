/** Where the readings of one quantity stand in a test: those written as they were read, and those that were caught or counted. */
import type { Spot } from '../measure/spot.ts';
import type { PlainRecord } from '../state/site-document.ts';
import { isList } from '../state/site-document.ts';
import type { ListedQuantity } from './test-document.ts';
import {
  readingPath,
  readingsIn,
  timedIn,
  withTimed,
  withWritten,
  writtenIn,
} from './test-document.ts';

const NO_READING: PlainRecord = {};

/** The list under the quantity's own name: `readings[0].delivered[1]`. */
export function writtenSpot(index: number, quantity: ListedQuantity): Spot {
  return {
    path: readingPath(index),
    called: `reading ${index + 1}`,
    read: (document) => ({
      [quantity]: writtenIn(readingsIn(document)[index] ?? NO_READING, quantity),
    }),
    write: (document, readings) => {
      const list = readings[quantity];
      return withWritten(document, index, quantity, isList(list) ? list : []);
    },
  };
}

/** An amount and its times. The path is the page's own: in the file it stands behind what was written. */
export function timedSpot(index: number, quantity: ListedQuantity): Spot {
  return {
    path: readingPath(index, quantity, 'timed'),
    called: `reading ${index + 1}`,
    read: (document) => timedIn(readingsIn(document)[index] ?? NO_READING, quantity),
    write: (document, amount) => withTimed(document, index, quantity, amount),
  };
}
