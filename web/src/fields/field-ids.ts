import type { Path } from '../state/site-document.ts';

/** The id of the box that stands for a path of the site file: `field-drive-0-length`. */
export function fieldId(path: Path | string): string {
  const keys = typeof path === 'string' ? path.split(/[.[\]]+/).filter((key) => key !== '') : path;
  return ['field', ...keys].join('-');
}
