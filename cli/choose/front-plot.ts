/** Cost against water as a small picture of letters: each build of the front by its number in the table above it. */

export interface PlotPoint {
  readonly label: string;
  readonly across: number;
  readonly up: number;
}

export interface PlotFrame {
  /** What stands above the upright axis and behind the level one. */
  readonly upCalled: string;
  readonly acrossCalled: string;
  readonly upShown: (value: number) => string;
  readonly acrossShown: (value: number) => string;
  readonly width: number;
  readonly height: number;
}

/** Empty for fewer than three points: a picture of two says nothing that the table does not. */
export function frontPlot(points: readonly PlotPoint[], frame: PlotFrame): readonly string[] {
  if (points.length < 3) return [];
  const { width, height, upShown, acrossShown } = frame;
  const across = rangeOf(points.map((p) => p.across));
  const up = rangeOf(points.map((p) => p.up));
  const grid = Array.from({ length: height }, () => Array.from({ length: width }, () => ' '));
  for (const { label, ...at } of points) {
    const column = Math.round(((at.across - across.low) / across.span) * (width - label.length));
    const row = height - 1 - Math.round(((at.up - up.low) / up.span) * (height - 1));
    // Where two fall on one place the first, which is the cheaper, keeps it.
    const cells = grid[row] as string[];
    const isFree = [...label].every((_, index) => cells[column + index] === ' ');
    if (isFree) for (const [index, letter] of [...label].entries()) cells[column + index] = letter;
  }
  const labels = grid.map((_, row) =>
    row === 0 ? upShown(up.high) : row === height - 1 ? upShown(up.low) : '',
  );
  const margin = Math.max(...labels.map((text) => text.length));
  const low = acrossShown(across.low);
  const high = acrossShown(across.high);
  return [
    `${' '.repeat(margin + 1)}${frame.upCalled}`,
    ...grid.map((cells, row) =>
      `${(labels[row] ?? '').padStart(margin)} |${cells.join('')}`.trimEnd(),
    ),
    `${' '.repeat(margin)} +${'-'.repeat(width)}`,
    `${' '.repeat(margin + 2)}${low}${high.padStart(width - low.length)} ${frame.acrossCalled}`.trimEnd(),
  ];
}

function rangeOf(values: readonly number[]) {
  const low = Math.min(...values);
  const high = Math.max(...values);
  return { low, high, span: high > low ? high - low : 1 };
}
