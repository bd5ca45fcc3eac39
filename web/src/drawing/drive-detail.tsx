import type { SiteDocument } from '../state/site-document.ts';
import type { DevelopedPlace } from './developed-place.ts';
import type { DriveDetailLayout } from './drive-detail.ts';
import type { PartNames } from './elevation-words.ts';
import { LevelHandle } from './level-handle.tsx';
import type { DrawnLine } from './moving.ts';
import { PointHandles } from './point-handles.tsx';
import { Pull } from './pull.tsx';
import {
  CrestRing,
  Letter,
  Part,
  PipeLine,
  RamSign,
  SurfaceSign,
  TroubleLines,
  WaterBox,
} from './symbols.tsx';

/** The drive line to one scale both ways. */
export function DriveDetail({
  layout,
  names,
  isMetal,
  place,
  shown,
  grip,
}: {
  readonly layout: DriveDetailLayout;
  readonly names: PartNames;
  readonly isMetal: boolean;
  readonly place: DevelopedPlace;
  /** The document that is drawn. */
  readonly shown: SiteDocument;
  readonly grip: number;
}) {
  const { texts, isNarrow, ram, fall, intake } = layout;
  const size = isNarrow ? 1.9 : 3;
  const strainer = isNarrow ? 3.5 : 5;
  const drawn: DrawnLine = {
    line: 'drive',
    from: 0,
    corners: place.drive,
    projection: layout.projection,
    top: 8,
    bottom: layout.height - 24,
    width: layout.width,
  };
  return (
    <>
      <g aria-hidden="true">
        <path className="d-tick" d={layout.ticks} />
        <path className="d-ground" d={layout.ground} />
        <path
          className="d-level"
          d={`M${layout.level.fromX} ${layout.level.y}H${layout.level.toX}`}
        />
      </g>
      <Part to="source" name={names.source}>
        <WaterBox {...layout.pool} />
        {!isNarrow && <SurfaceSign at={layout.surface} />}
        <rect className="d-stone" {...layout.dam} />
        <Letter text={texts.source} tone="of-water" />
      </Part>
      <LevelHandle
        level="fall"
        metres={place.fall}
        at={{ x: fall.x, y: fall.top }}
        projection={layout.projection}
        top={10}
        words={texts.fall.text}
        grip={grip}
      />
      <Part to="drive" name={names.drive}>
        <rect
          className="d-metal"
          x={intake.x - 2 * strainer}
          y={intake.y - strainer}
          width={2 * strainer}
          height={2 * strainer}
          style={{ strokeDasharray: '1.5 2' }}
        />
        <PipeLine
          d={layout.drive}
          wall={isNarrow ? 6.5 : 8}
          bore={isNarrow ? 3.5 : 4.5}
          isMetal={isMetal}
        />
        <TroubleLines lines={layout.troubles} />
        <Letter text={texts.drive} tone="strong" />
        <Pull d={layout.drive} drawn={drawn} />
      </Part>
      <g aria-hidden="true">
        {layout.crests.map((crest) => (
          <CrestRing key={crest.key} at={crest} label={crest.label} isVented={crest.isVented} />
        ))}
        {texts.troubles.map((text) => (
          <Letter key={text.text} text={text} tone="of-alarm" />
        ))}
        <path
          className="d-waterline"
          d={`M${fall.x} ${fall.top}V${fall.bottom}M${fall.x - 5} ${fall.top}h10M${fall.x - 5} ${fall.bottom}h10`}
        />
        <Letter text={texts.fall} tone="water-value" />
      </g>
      <PointHandles shown={shown} drawn={drawn} turns={place.turns} grip={grip} />
      <Part to="ram" name={names.ram}>
        <rect
          className="d-stone"
          x={ram.x - 4 * size}
          y={ram.y + 4 * size}
          width={16 * size}
          height={isNarrow ? 3.5 : 6}
        />
        <PipeLine
          d={`M${ram.x + 8 * size} ${ram.y - 4.6 * size}H${ram.x + 14 * size}L${layout.width - 1} ${ram.y - 5.4 * size}`}
          wall={isNarrow ? 4 : 5}
          bore={isNarrow ? 2 : 2.5}
        />
        <RamSign at={ram} size={size} />
        {layout.isRamOver && (
          <rect
            className="d-over"
            x={ram.x - 5 * size}
            y={ram.y - 17.5 * size}
            width={18 * size}
            height={23 * size}
          />
        )}
        <Letter text={texts.ram} tone="of-metal" />
      </Part>
      <g aria-hidden="true">
        <path
          className="d-frame"
          d={`M${layout.scaleBar.x} ${layout.scaleBar.y}h${layout.scaleBar.length}m0 -4v8m${-layout.scaleBar.length} 0v-8m${layout.scaleBar.length / 2} 2v4`}
        />
        <Letter text={layout.scaleBar.label} tone="second" />
      </g>
    </>
  );
}
