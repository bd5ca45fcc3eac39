/** The wide drawing: the unstretched detail and the heads above, the whole place below. */
import type { HeadEnvelope } from '@fallwright/engine';
import type { DevelopedPlace } from './developed-place.ts';
import type { DetailRange, DriveDetailLayout } from './drive-detail.ts';
import { layOutDriveDetail } from './drive-detail.ts';
import type { ElevationWords } from './elevation-words.ts';
import type { HeadPlotLayout } from './head-plot.ts';
import { layOutHeadPlot } from './head-plot.ts';
import type { Trouble } from './trouble.ts';
import type { WholePlaceLayout, WholeRange } from './whole-place.ts';
import { layOutWholePlace } from './whole-place.ts';

export interface Drawn {
  readonly place: DevelopedPlace;
  /** Where pressures are too high or too low for the pipes. */
  readonly troubles: readonly Trouble[];
  readonly vesselHead?: number | undefined;
  readonly envelope?: HeadEnvelope | undefined;
  readonly words: ElevationWords;
  readonly metresPerGridUnit: number;
}

/** What both drawings span, held while something is dragged. */
export interface Ranges {
  readonly detail: DetailRange;
  readonly whole: WholeRange;
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
  troubles,
  vesselHead,
  envelope,
  words,
  metresPerGridUnit,
  width,
  held,
}: Drawn & { readonly width: number; readonly held?: Ranges | undefined }): DeskLayout {
  const hasHeads = envelope !== undefined && words.heads !== undefined;
  const detail = layOutDriveDetail({
    place,
    troubles,
    maxWidth: hasHeads ? 0.53 * width : 0.75 * width,
    maxRise: 180,
    words: words.drive,
    metresPerGridUnit,
    isNarrow: false,
    held: held?.detail,
  });
  const whole = layOutWholePlace({
    place,
    troubles,
    vesselHead,
    width,
    words: words.place,
    metresPerGridUnit,
    held: held?.whole,
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
              troubles,
              driveLength: place.driveLength,
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
