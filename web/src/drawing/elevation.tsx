/** The picture of the place. It measures its own width and is laid out for it, so letters keep their size. */
import { useId, useLayoutEffect, useRef, useState } from 'react';
import { layOutDriveDetail } from './drive-detail.ts';
import { DriveDetail } from './drive-detail.tsx';
import type { Drawn } from './elevation-desk.ts';
import { layOutDesk } from './elevation-desk.ts';
import { layOutHeadPlot } from './head-plot.ts';
import { HeadPlot } from './head-plot.tsx';
import { layOutWholePlace } from './whole-place.ts';
import { WholePlace } from './whole-place.tsx';

export interface ElevationProps extends Drawn {
  readonly materials: { readonly isDriveMetal: boolean; readonly isDeliveryMetal: boolean };
}

const ENDS = { source: 'source', ram: 'ram' };

/** Narrower than this the phone's drawings are used. */
const DESK_WIDTH = 900;
/** Before its style has come a page may be laid out a few pixels wide, where nothing can be drawn. */
const NARROWEST = 160;

export function Elevation(props: ElevationProps) {
  const { frame, width } = useWidth();
  return (
    <div className="drawing-place" ref={frame}>
      {width < NARROWEST ? null : width < DESK_WIDTH ? (
        <PhoneDrawings {...props} width={width} />
      ) : (
        <DeskDrawing {...props} width={width} />
      )}
    </div>
  );
}

function useWidth() {
  const frame = useRef<HTMLDivElement>(null);
  const [width, setWidth] = useState(0);
  useLayoutEffect(() => {
    const element = frame.current;
    if (element === null) return;
    const measure = (): void => {
      const { paddingLeft, paddingRight } = getComputedStyle(element);
      const inner =
        element.clientWidth - Number.parseFloat(paddingLeft) - Number.parseFloat(paddingRight);
      setWidth(Math.floor(inner));
    };
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    return () => observer.disconnect();
  }, []);
  return { frame, width };
}

function DeskDrawing(props: ElevationProps & { readonly width: number }) {
  const { words, materials } = props;
  const layout = layOutDesk(props);
  const { detail, whole, heads } = layout;
  return (
    <Sheet
      width={layout.width}
      height={layout.height}
      title={words.title}
      description={words.description}
    >
      <g transform={`translate(${detail.x} ${detail.y})`}>
        <rect
          className="d-frame"
          width={detail.layout.width}
          height={detail.layout.height}
          style={{ fill: 'var(--sheet)' }}
          aria-hidden="true"
        />
        <DriveDetail layout={detail.layout} names={words.parts} isMetal={materials.isDriveMetal} />
      </g>
      <g transform={`translate(0 ${whole.y})`}>
        <WholePlace
          layout={whole.layout}
          names={words.parts}
          gridUnit={words.gridUnit}
          materials={materials}
        />
      </g>
      <path className="d-dim" d={layout.leaders} aria-hidden="true" />
      {heads !== undefined && (
        <g transform={`translate(${heads.x} ${heads.y})`}>
          <HeadPlot layout={heads.layout} title={words.headsTitle} ends={ENDS} />
        </g>
      )}
    </Sheet>
  );
}

function PhoneDrawings(props: ElevationProps & { readonly width: number }) {
  const { place, vesselHead, envelope, words, materials, metresPerGridUnit, width } = props;
  const detail = layOutDriveDetail({
    place,
    maxWidth: width,
    maxRise: 140,
    words: words.drive,
    metresPerGridUnit,
    isNarrow: true,
  });
  const whole = layOutWholePlace({
    place,
    vesselHead,
    width,
    words: words.place,
    metresPerGridUnit,
  });
  const heads =
    envelope === undefined || words.heads === undefined
      ? undefined
      : layOutHeadPlot({
          envelope,
          fall: place.fall,
          width,
          height: 150,
          words: words.heads,
          metresPerGridUnit,
        });
  return (
    <>
      <Sheet
        width={width}
        height={detail.height}
        title={words.title}
        description={words.description}
      >
        <DriveDetail layout={detail} names={words.parts} isMetal={materials.isDriveMetal} />
      </Sheet>
      <Sheet width={width} height={whole.height} title={words.placeTitle}>
        <WholePlace
          layout={whole}
          names={words.parts}
          gridUnit={words.gridUnit}
          materials={materials}
        />
      </Sheet>
      {heads !== undefined && (
        <Sheet
          width={width}
          height={heads.height}
          title={words.headsTitle}
          description={words.headsDescription}
        >
          <HeadPlot layout={heads} title={words.headsTitle} ends={ENDS} />
        </Sheet>
      )}
    </>
  );
}

/** One drawing with its words. A group and not an image, because its parts are links. */
function Sheet({
  width,
  height,
  title,
  description,
  children,
}: {
  readonly width: number;
  readonly height: number;
  readonly title: string;
  readonly description?: string | undefined;
  readonly children: React.ReactNode;
}) {
  const id = useId();
  return (
    <svg
      className="drawing"
      viewBox={`0 0 ${width} ${height}`}
      role="group"
      aria-label={title}
      aria-describedby={description === undefined ? undefined : id}
    >
      {description !== undefined && <desc id={id}>{description}</desc>}
      {children}
    </svg>
  );
}
