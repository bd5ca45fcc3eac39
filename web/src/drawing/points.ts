/** Points of a drawing in pixels, and the path strings made of them. */

export interface Point {
  readonly x: number;
  readonly y: number;
}

const short = (value: number): string => String(Math.round(value * 10) / 10);

/** The points as an open SVG path. */
export function pathThrough(points: readonly Point[]): string {
  return points.map((p, i) => `${i === 0 ? 'M' : 'L'}${short(p.x)} ${short(p.y)}`).join('');
}

/** The points as a closed SVG path. */
export function outline(points: readonly Point[]): string {
  return points.length === 0 ? '' : `${pathThrough(points)}Z`;
}

/** Height of a polyline at `x`, with `x` rising; its ends are carried on level. */
export function heightAt(points: readonly Point[], x: number): number {
  const first = points[0];
  const last = points[points.length - 1];
  if (first === undefined || last === undefined) return 0;
  if (x <= first.x) return first.y;
  for (let i = 1; i < points.length; i++) {
    const a = points[i - 1];
    const b = points[i];
    if (a === undefined || b === undefined || x > b.x) continue;
    return b.x === a.x ? b.y : a.y + ((b.y - a.y) * (x - a.x)) / (b.x - a.x);
  }
  return last.y;
}

/** Lowest and highest y that a polyline takes between two values of x. */
export function extentBetween(
  points: readonly Point[],
  fromX: number,
  toX: number,
): { readonly least: number; readonly most: number } {
  const inside = points.filter((p) => p.x > fromX && p.x < toX).map((p) => p.y);
  const all = [heightAt(points, fromX), heightAt(points, toX), ...inside];
  return { least: Math.min(...all), most: Math.max(...all) };
}
