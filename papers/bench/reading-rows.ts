/** A test as tables: each reading measured and predicted, and its efficiencies. */
import type { BenchQuantity, ReadingAnswer, SureRatio } from '@fallwright/engine';
import { formatQuantity, type System } from '@fallwright/units';
import { READ_AS } from './doubt-words.ts';
import { finePerCent } from './share-words.ts';

export interface ResidualRow {
  readonly what: string;
  readonly measured: string;
  readonly predicted: string;
  /** As a share of the predicted, with its sign. */
  readonly gap: string;
  /** What the gap is good to, as a share. */
  readonly goodTo: string;
  readonly agrees: boolean;
}

/** Measured beside predicted; where the cycle does not run, what was read alone. */
export function residualRows(
  { reading, predicted }: ReadingAnswer,
  system: System,
): readonly ResidualRow[] {
  const quantities = Object.keys(READ_AS) as BenchQuantity[];
  return quantities.flatMap((quantity) => {
    const read = reading[quantity];
    if (!read) return [];
    const residual = predicted.residuals.find((one) => one.quantity === quantity);
    const { called, purpose } = READ_AS[quantity];
    const row = {
      what: called,
      measured: formatQuantity(read.value, purpose, system, { spread: read.spread }),
    };
    if (!residual) return [{ ...row, predicted: '–', gap: '', goodTo: '', agrees: true }];
    const spread = Math.hypot(residual.measuredSpread, residual.predictedSpread);
    return [
      {
        ...row,
        predicted: formatQuantity(residual.predicted, purpose, system),
        gap: signedPerCent(residual.share),
        goodTo: `± ${finePerCent(spread / Math.abs(residual.predicted))}`,
        agrees: residual.agrees,
      },
    ];
  });
}

/** `0.61 ± 0.02`. */
export function ratioInFigures({ value, spread }: SureRatio): string {
  return `${value.toFixed(2)} ± ${spread < 0.005 ? spread.toFixed(3) : spread.toFixed(2)}`;
}

function signedPerCent(share: number): string {
  const sign = share < 0 ? '−' : '+';
  return `${sign}${finePerCent(Math.abs(share))}`;
}
