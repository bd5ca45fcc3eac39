import { findPipe, MATERIALS, PIPES } from '@fallwright/engine';
import { formatQuantity, type System } from '@fallwright/units';
import { columns } from './columns.ts';

export function pipesCommand(
  search: readonly string[],
  options: { readonly units?: System },
): void {
  const words = search
    .flatMap((text) => text.toLowerCase().split(/\s+/))
    .filter((word) => word !== '');
  const found = PIPES.filter((pipe) => {
    const text =
      `${pipe.name} ${pipe.standard} ${MATERIALS[pipe.material].displayName}`.toLowerCase();
    return words.every((word) => text.includes(word));
  });
  if (found.length === 0) {
    process.stdout.write(`${nearest(search.join(' '))}\n`);
    return;
  }
  const show = (value: number, purpose: 'bore' | 'pressure', system: System): string =>
    formatQuantity(value, purpose, options.units ?? system);
  const lines = columns(
    [
      { head: 'pipe' },
      { head: 'bore', align: 'right' },
      { head: 'wall', align: 'right' },
      { head: 'rating', align: 'right' },
      { head: 'standard' },
    ],
    found.map((pipe) => {
      const own = /in$/.test(pipe.nominal) ? 'us' : 'metric';
      return [
        pipe.name,
        show(pipe.innerDiameter, 'bore', own),
        show(pipe.wallThickness, 'bore', own),
        pipe.rating === undefined ? '–' : show(pipe.rating, 'pressure', own),
        pipe.standard,
      ];
    }),
    { indent: '' },
  );
  process.stdout.write(`${lines.join('\n').replaceAll('\u00a0', ' ')}\n`);
}

function nearest(text: string): string {
  const found = findPipe(text);
  const names = found.ok ? [found.pipe.name] : found.suggestions;
  return names.length === 0
    ? 'No pipe has these words in its name. Leave them out to see all.'
    : `No pipe has all these words in its name. Nearest: ${names.join(', ')}.`;
}
