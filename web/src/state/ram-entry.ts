/** The ram in a site document: a nominal size, or a map of parts that may begin with one. */
import type { Path, Plain, PlainRecord, SiteDocument } from './site-document.ts';
import { isRecord, valueAt, withValue } from './site-document.ts';

/** Parts that the page asks for, as paths in the map; a file may hold more, which are kept as they are. */
const ASKED = [
  'range',
  'tuning',
  'typical',
  'name',
  'bore',
  'stroke',
  'weight',
  'rating',
  'snifter',
  'wasteValve.kind',
  'wasteValve.seat',
  'wasteValve.stroke',
  'wasteValve.weight',
  'wasteValve.weightInWater',
  'wasteValve.mass',
  'wasteValve.forceOpen',
  'wasteValve.forceShut',
  'deliveryValve.bore',
  'deliveryValve.backFlow',
  'airVessel.volume',
  'airVessel.air',
];

export function ramParts(document: SiteDocument): PlainRecord {
  const ram = valueAt(document, ['ram']);
  if (typeof ram === 'string') return { typical: ram };
  return isRecord(ram) ? ram : {};
}

/** Where a part stands: stroke and weight may stand with the ram or with its waste valve. */
function placeOf(parts: PlainRecord, path: Path): Path {
  const [part] = path;
  const isEither = path.length === 1 && (part === 'stroke' || part === 'weight');
  const inValve = ['wasteValve', ...path];
  return isEither && valueAt(parts, inValve) !== undefined ? inValve : path;
}

/** A part by its path in the map: `['airVessel', 'volume']`. */
export function ramPart(document: SiteDocument, path: Path): Plain | undefined {
  const parts = ramParts(document);
  return valueAt(parts, placeOf(parts, path));
}

/** The document with one part of its ram changed; a ram with nothing but its size is written as that size. */
export function withRamPart(
  document: SiteDocument,
  path: Path,
  value: Plain | undefined,
): SiteDocument {
  const before = ramParts(document);
  const parts = withValue(before, placeOf(before, path), value);
  const names = Object.keys(parts);
  if (names.length === 0) return withValue(document, ['ram'], undefined);
  const { typical } = parts;
  return withValue(
    document,
    ['ram'],
    names.length === 1 && typical !== undefined ? typical : parts,
  );
}

/** The document with a typical ram; one of a range goes with all that was copied from there. */
export function withTypicalRam(document: SiteDocument, size: Plain | undefined): SiteDocument {
  return ramPart(document, ['range']) === undefined
    ? withRamPart(document, ['typical'], size)
    : withValue(document, ['ram'], size);
}

/** Names of the parts that the file gives besides those asked on the page. */
export function otherRamParts(document: SiteDocument): readonly string[] {
  return Object.entries(ramParts(document))
    .flatMap(([part, value]) =>
      isRecord(value) && !('value' in value)
        ? Object.keys(value).map((inner) => `${part}.${inner}`)
        : [part],
    )
    .filter((name) => !ASKED.includes(name));
}
