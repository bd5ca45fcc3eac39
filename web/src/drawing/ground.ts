import type { Point } from './points.ts';

/** Three short strokes at 45° under the ground line, every `every` pixels along x: how earth is drawn. */
export function groundTicks(
  line: readonly Point[],
  { every = 54, stroke = 9, gap = 6 }: { every?: number; stroke?: number; gap?: number } = {},
): string {
  const parts: string[] = [];
  let next = (line[0]?.x ?? 0) + every / 2;
  for (let i = 1; i < line.length; i++) {
    const a = line[i - 1];
    const b = line[i];
    // Steep banks, such as the wall of a pool, carry no ticks: three of them would not fit.
    if (a === undefined || b === undefined || b.x - a.x < 3 * gap) continue;
    const slope = (b.y - a.y) / (b.x - a.x);
    next = Math.max(next, a.x + gap);
    for (; next + 2 * gap < b.x; next += every) {
      for (let k = 0; k < 3; k++) {
        const x = next + k * gap;
        const y = a.y + slope * (x - a.x) + 1;
        parts.push(`M${x.toFixed(1)} ${y.toFixed(1)}l${-stroke} ${stroke}`);
      }
    }
  }
  return parts.join('');
}
