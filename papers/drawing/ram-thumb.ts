/** A ram without words, small: rams drawn to one scale can be told apart at a glance. */
import type { Ram } from '@fallwright/engine';
import { ramGeometry } from './ram-geometry.ts';
import type { Drawing, Shape } from './shapes.ts';

/** Width and height of the whole ram, in metres. */
export function ramExtent(ram: Ram): { readonly width: number; readonly height: number } {
  const { box } = ramGeometry(ram);
  return { width: box.right - box.left, height: box.bottom - box.top };
}

/** The ram on its feet at the bottom of a sheet of this size, at this scale. */
export function ramThumb(
  ram: Ram,
  {
    scale,
    width,
    height,
  }: { readonly scale: number; readonly width: number; readonly height: number },
): Drawing {
  const { areas, box } = ramGeometry(ram);
  const left = (width - (box.right - box.left) * scale) / 2;
  const shapes = areas.map(
    (shape): Shape => ({
      ...shape,
      outline: shape.outline.map(({ x, y }) => ({
        x: left + (x - box.left) * scale,
        y: height - (box.bottom - y) * scale,
      })),
    }),
  );
  return { width, height, shapes };
}
