/** A table in columns that line up: words to the left, numbers to the right. */

export interface Column {
  readonly head: string;
  readonly align?: 'left' | 'right';
}

export function columns(
  heads: readonly Column[],
  rows: readonly (readonly string[])[],
  { indent = '  ', gap = '  ' }: { readonly indent?: string; readonly gap?: string } = {},
): readonly string[] {
  const widths = heads.map(({ head }, index) =>
    Math.max(head.length, ...rows.map((row) => row[index]?.length ?? 0)),
  );
  const line = (cells: readonly string[]): string =>
    indent +
    heads
      .map(({ align }, index) => {
        const cell = cells[index] ?? '';
        const width = widths[index] ?? 0;
        return align === 'right' ? cell.padStart(width) : cell.padEnd(width);
      })
      .join(gap)
      .trimEnd();
  return [line(heads.map(({ head }) => head)), ...rows.map(line)];
}
