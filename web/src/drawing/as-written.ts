/** An answered installation with the heights, lengths and points that stand in the document now: the drawing does not wait for the answer. */
import type { Installation, PipeSegment, ProfilePoint } from '@fallwright/engine';
import type { EndHeights } from '../profile/line-points.ts';
import { hasProfile, outlineOf, pipeSpans, readMetres } from '../profile/line-points.ts';
import type { LineName } from '../state/lines.ts';
import type { SiteDocument } from '../state/site-document.ts';

export function asWritten(installation: Installation, document: SiteDocument): Installation {
  const fall = positive(readMetres(document.fall, 'height')) ?? installation.fall;
  const lift = positive(readMetres(document.lift, 'height')) ?? installation.lift;
  const { profile: _drive, ...driveLine } = installation.driveLine;
  const { profile: _delivery, ...deliveryLine } = installation.deliveryLine;
  return {
    ...installation,
    fall,
    lift,
    driveLine: {
      ...driveLine,
      ...lineAsWritten(installation.driveLine, document, 'drive', { upper: fall, lower: 0 }),
    },
    deliveryLine: {
      ...deliveryLine,
      ...lineAsWritten(installation.deliveryLine, document, 'delivery', { upper: 0, lower: lift }),
    },
  };
}

interface LineShape {
  readonly segments: readonly PipeSegment[];
  readonly profile?: readonly ProfilePoint[];
}

function lineAsWritten(
  { segments: answered, profile }: LineShape,
  document: SiteDocument,
  line: LineName,
  ends: EndHeights,
): LineShape {
  const spans = pipeSpans(document, line);
  // Without a length of its own a line is the usual one that the answer took.
  if (spans === undefined) {
    return { segments: answered, ...(profile === undefined ? {} : { profile }) };
  }
  const segments = spans.flatMap(({ length }, i) => {
    const segment = answered[i] ?? answered.at(-1);
    return segment === undefined ? [] : [{ ...segment, length }];
  });
  const outline = hasProfile(document, line) ? outlineOf(document, line, ends) : undefined;
  if (outline === undefined) return { segments };
  const points = outline.map(({ station, height }) => ({ distance: station, elevation: height }));
  return { segments, profile: points };
}

const positive = (metres: number | undefined): number | undefined =>
  metres !== undefined && metres > 0 ? metres : undefined;
