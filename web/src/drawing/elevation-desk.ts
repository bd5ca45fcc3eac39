/** The wide drawing: the unstretched detail and the heads above, the whole place below. */
import type { HeadEnvelope } from '@fallwright/engine';
import type { DevelopedPlace } from './developed-place.ts';
import type { DriveDetailLayout } from './drive-detail.ts';
import { layOutDriveDetail } from './drive-detail.ts';
import type { ElevationWords } from './elevation-words.ts';
import type { HeadPlotLayout } from './head-plot.ts';
import { layOutHeadPlot } from './head-plot.ts';
import type { WholePlaceLayout } from './whole-place.ts';
import { layOutWholePlace } from './whole-place.ts';

export interface Drawn {
  readonly place: DevelopedPlace;
  readonly vesselHead?: number | undefined;
  readonly envelope?: HeadEnvelope | undefined;
  readonly words: ElevationWords;
  readonly metresPerGridUnit: number;
}

interface Placed<Layout> {
  readonly x: number;
  readonly y: number;
  readonly layout: Layout;
}

export interface DeskLayout {
  readonly width: number;
  readonly height: number;
  readonly whole: Placed<WholePlaceLayout>;
  readonly detail: Placed<DriveDetailLayout>;
  readonly heads?: Placed<HeadPlotLayout>;
  /** From the framed part of the whole place to the corners of its detail. */
  readonly leaders: string;
}

export function layOutDesk({
  place,
  vesselHead,
  envelope,
  words,
  metresPerGridUnit,
  width,
}: Drawn & { readonly width: number }): DeskLayout {
  const hasHeads = envelope !== undefined && words.heads !== undefined;
  const detail = layOutDriveDetail({
    place,
    maxWidth: hasHeads ? 0.53 * width : 0.75 * width,
    maxRise: 180,
    words: words.drive,
    metresPerGridUnit,
    isNarrow: false,
  });
  const whole = layOutWholePlace({
    place,
    vesselHead,
    width,
    words: words.place,
    metresPerGridUnit,
  });
  const detailAt = { x: 74, y: 8 };
  const wholeY = detailAt.y + detail.height + 10;
  const headsX = detailAt.x + detail.width + 36;
  const box = whole.driveBox;
  const foot = detailAt.y + detail.height;
  return {
    width,
    height: wholeY + whole.height,
    whole: { x: 0, y: wholeY, layout: whole },
    detail: { ...detailAt, layout: detail },
    ...(envelope === undefined || words.heads === undefined
      ? {}
      : {
          heads: {
            x: headsX,
            y: 18,
            layout: layOutHeadPlot({
              envelope,
              fall: place.fall,
              width: Math.min(width - headsX - 16, 460),
              height: Math.max(150, Math.min(detail.height - 16, 220)),
              words: words.heads,
              metresPerGridUnit,
            }),
          },
        }),
    leaders:
      box === undefined
        ? ''
        : `M${box.x} ${wholeY + box.y}L${detailAt.x} ${foot}M${box.x + box.width} ${wholeY + box.y}L${detailAt.x + detail.width} ${foot}`,
  };
}
