/** Text for a terminal of 80 columns. A number never parts from its unit: no-break spaces hold them until printing. */

/** Columns of a page; narrower when the terminal is. */
export function pageWidth(stream: { readonly columns?: number } = process.stdout): number {
  return Math.max(40, Math.min(80, stream.columns ?? 80));
}

export interface WrapOptions {
  /** Before every line. */
  readonly indent?: string;
  /** Before the first line, in place of the indent; as long as it. */
  readonly first?: string;
  readonly width?: number;
}

export function wrapped(
  text: string,
  { indent = '', first = indent, width = pageWidth() }: WrapOptions = {},
): readonly string[] {
  const lines: string[] = [];
  let line = first;
  let isFresh = true;
  for (const word of text.split(/[ \n]+/)) {
    if (!isFresh && line.length + 1 + word.length > width) {
      lines.push(line);
      line = indent;
      isFresh = true;
    }
    line += isFresh ? word : ` ${word}`;
    isFresh = false;
  }
  return [...lines, line];
}
