/** The picture of the place. It measures its own width and is laid out for it, so letters keep their size. */
import { useId, useLayoutEffect, useRef, useState } from 'react';
import type { SiteDocument } from '../state/site-document.ts';
import { layOutDriveDetail } from './drive-detail.ts';
import { DriveDetail } from './drive-detail.tsx';
import { useEditing } from './editing.ts';
import type { Drawn, Ranges } from './elevation-desk.ts';
import { layOutDesk } from './elevation-desk.ts';
import { layOutHeadPlot } from './head-plot.ts';
import { HeadPlot } from './head-plot.tsx';
import { layOutWholePlace } from './whole-place.ts';
import { WholePlace } from './whole-place.tsx';

export interface ElevationProps extends Drawn {
  readonly materials: { readonly isDriveMetal: boolean; readonly isDeliveryMetal: boolean };
  /** The document that is drawn. */
  readonly shown: SiteDocument;
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

/** What the drawings spanned before a drag began, as long as one goes on: nothing moves under the hand. */
function useHeldRanges() {
  const isDragging = useEditing()?.isDragging ?? false;
  const before = useRef<Ranges>(undefined);
  return { isDragging, before, held: isDragging ? before.current : undefined };
}

function useRangesKept(
  { isDragging, before }: ReturnType<typeof useHeldRanges>,
  ranges: Ranges,
): void {
  useLayoutEffect(() => {
    if (!isDragging) before.current = ranges;
  });
}

/** Radius of what is taken hold of. LOOK: what a finger must hit is 40 px and more. */
const gripOf = (): number => (window.matchMedia('(pointer: coarse)').matches ? 22 : 14);

function DeskDrawing(props: ElevationProps & { readonly width: number }) {
  const { words, materials, place, shown } = props;
  const holding = useHeldRanges();
  const { held } = holding;
  const layout = layOutDesk({ ...props, held });
  const { detail, whole, heads } = layout;
  useRangesKept(holding, { detail: detail.layout.range, whole: whole.layout.range });
  const hand = { place, shown, grip: gripOf() };
  return (
    <Sheet
      width={layout.width}
      height={layout.height}
      title={words.title}
      description={words.description}
    >
      <path className="d-dim" d={layout.leaders} aria-hidden="true" />
      <g transform={`translate(${detail.x} ${detail.y})`}>
        <rect
          className="d-frame"
          width={detail.layout.width}
          height={detail.layout.height}
          style={{ fill: 'var(--sheet)' }}
          aria-hidden="true"
        />
        <DriveDetail
          layout={detail.layout}
          names={words.parts}
          isMetal={materials.isDriveMetal}
          {...hand}
        />
      </g>
      <g transform={`translate(0 ${whole.y})`}>
        <WholePlace
          layout={whole.layout}
          names={words.parts}
          gridUnit={words.gridUnit}
          materials={materials}
          {...hand}
        />
      </g>
      {heads !== undefined && (
        <g transform={`translate(${heads.x} ${heads.y})`}>
          <HeadPlot layout={heads.layout} title={words.headsTitle} ends={ENDS} />
        </g>
      )}
    </Sheet>
  );
}

function PhoneDrawings(props: ElevationProps & { readonly width: number }) {
  const { place, troubles, vesselHead, envelope, words, materials, metresPerGridUnit, width } =
    props;
  const holding = useHeldRanges();
  const { held } = holding;
  const detail = layOutDriveDetail({
    place,
    troubles,
    held: held?.detail,
    maxWidth: width,
    maxRise: 140,
    words: words.drive,
    metresPerGridUnit,
    isNarrow: true,
  });
  const whole = layOutWholePlace({
    place,
    troubles,
    held: held?.whole,
    vesselHead,
    width,
    words: words.place,
    metresPerGridUnit,
  });
  useRangesKept(holding, { detail: detail.range, whole: whole.range });
  const hand = { place, shown: props.shown, grip: gripOf() };
  const heads =
    envelope === undefined || words.heads === undefined
      ? undefined
      : layOutHeadPlot({
          envelope,
          troubles,
          driveLength: place.driveLength,
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
        <DriveDetail
          layout={detail}
          names={words.parts}
          isMetal={materials.isDriveMetal}
          {...hand}
        />
      </Sheet>
      <Sheet width={width} height={whole.height} title={words.placeTitle}>
        <WholePlace
          layout={whole}
          names={words.parts}
          gridUnit={words.gridUnit}
          materials={materials}
          {...hand}
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
