/** Labels in one column: each as near to what it names as the others allow, none over another. */
export interface WantedLabel {
  /** Where its middle would best be. */
  readonly wanted: number;
  readonly height: number;
}

/**
 * Middles of the labels, in the order given, so that none overlaps and their order is that of what they name.
 *
 * Labels that press on one another form a block which stands at the mean of what its labels want: the least sum of squared
 * moves. A column too short for all of them overflows downwards.
 */
export function spreadLabels(
  labels: readonly WantedLabel[],
  { from, to, gap }: { readonly from: number; readonly to: number; readonly gap: number },
): number[] {
  const order = labels
    .map((label, index) => ({ ...label, index }))
    .sort((a, b) => a.wanted - b.wanted || a.index - b.index);
  const blocks: Block[] = [];
  for (const label of order) {
    blocks.push({ members: [label], height: label.height, top: label.wanted - label.height / 2 });
    merge(blocks, { from, to, gap });
  }
  const middles = new Array<number>(labels.length).fill(0);
  for (const { members, top } of blocks) {
    let y = top;
    for (const { index, height } of members) {
      middles[index] = y + height / 2;
      y += height + gap;
    }
  }
  return middles;
}

interface Block {
  readonly members: readonly (WantedLabel & { readonly index: number })[];
  readonly height: number;
  readonly top: number;
}

interface Column {
  readonly from: number;
  readonly to: number;
  readonly gap: number;
}

/** The last block is put in its place and joined to the one above it while they touch. */
function merge(blocks: Block[], column: Column): void {
  let last = placed(blocks.pop() as Block, column);
  let above = blocks.at(-1);
  while (above !== undefined && above.top + above.height + column.gap > last.top) {
    blocks.pop();
    last = placed(
      {
        members: [...above.members, ...last.members],
        height: above.height + column.gap + last.height,
        top: 0,
      },
      column,
    );
    above = blocks.at(-1);
  }
  blocks.push(last);
}

function placed({ members, height }: Block, { from, to, gap }: Column): Block {
  let above = 0;
  let sum = 0;
  for (const { wanted, height: own } of members) {
    sum += wanted - own / 2 - above;
    above += own + gap;
  }
  const best = sum / members.length;
  return { members, height, top: Math.max(from, Math.min(best, to - height)) };
}
