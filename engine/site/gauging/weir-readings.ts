/** What the two kinds of weir share: how a head is read, and how far the water below must stand under the crest. */
import type { Metre } from '../../quantities.ts';

/** Judgement: a rule or a hook gauge at a still surface. */
export const HEAD_SPREAD: Metre = 1e-3;

/**
 * How far the water below must stand under the crest, so that air gets behind the falling sheet.
 * Source: Bos (1989), Discharge measurement structures, ILRI 20, ch. 5: 0.05 m (memory).
 */
export const LEAST_FREE_DROP: Metre = 0.05;
