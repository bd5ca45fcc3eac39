/** A published figure under an empty box, with its range and its source; a local figure is written over it. */
import type { SourcedValue } from '@fallwright/engine';
import type { Purpose, System } from '@fallwright/units';
import { formatNumber, formatQuantity } from '@fallwright/units';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Firm } from '../fields/origin-choice.tsx';

export function Published({
  figure,
  purpose,
}: {
  readonly figure: SourcedValue;
  readonly purpose: Purpose;
}) {
  const { settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  return (
    <span className="published">
      <Firm origin="table">{formatQuantity(figure.value, purpose, system)}</Firm>{' '}
      {sourceOf(figure, purpose, system)}
    </span>
  );
}

export function sourceOf(
  { value, low, high, source, knownBy }: SourcedValue,
  purpose: Purpose,
  system: System,
): string {
  const isRange = low !== value || high !== value;
  const range = isRange
    ? `(${formatNumber(low, purpose, system)} to ${formatNumber(high, purpose, system)}), `
    : '';
  return `${range}${source}${knownBy === 'memory' ? ', from memory' : ''}`;
}
