import type { Purpose } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { Firm } from './origin-choice.tsx';

/** What stands in for an empty box, on the dotted line of an assumption. */
export function AssumedValue({
  value,
  purpose,
}: {
  readonly value: number;
  readonly purpose: Purpose;
}) {
  const { settings } = useNotebook();
  const system = useStore(settings, (state) => state.system);
  return <Firm origin="assumed">{formatQuantity(value, purpose, system)}</Firm>;
}

/** What the answer took for a field that gives nothing, where that is words and not a number. */
export function useAssumedWords(field: string): string | undefined {
  const { answer } = useNotebook();
  return useStore(answer, (state) => {
    const found = state.shown?.value.assumptions.find((assumption) => assumption.field === field);
    return found?.value.kind === 'words' ? found.value.words : undefined;
  });
}
