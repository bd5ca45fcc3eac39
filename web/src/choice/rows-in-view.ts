/** Which rows of a long list are in view, with a few above and below, all rows of one height. */
export interface Window {
  readonly from: number;
  readonly count: number;
}

/** Judgement: as many again above and below as a quick flick brings in before the next rows are there. */
const MARGIN = 12;
/** Rows are asked for in blocks, so that a slow scroll asks seldom. */
const BLOCK = 10;

export function rowsInView({
  top,
  height,
  rowHeight,
  total,
}: {
  readonly top: number;
  readonly height: number;
  readonly rowHeight: number;
  readonly total: number;
}): Window {
  const first = Math.max(0, Math.floor(top / rowHeight) - MARGIN);
  const last = Math.min(total, Math.ceil((top + height) / rowHeight) + MARGIN);
  const from = Math.min(Math.max(0, total - 1), Math.floor(first / BLOCK) * BLOCK);
  const to = Math.min(total, Math.ceil(last / BLOCK) * BLOCK);
  return { from, count: Math.max(0, to - from) };
}
