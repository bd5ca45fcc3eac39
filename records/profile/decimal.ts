/** A number as machines write it, with a point or none: never `Infinity`, `0x10` or an empty text, which `Number` takes. */
export function decimal(text: string | undefined): number | undefined {
  const written = text?.trim() ?? '';
  if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d{1,3})?$/i.test(written)) return undefined;
  const value = Number(written);
  return Number.isFinite(value) ? value : undefined;
}
