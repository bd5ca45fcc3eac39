import type { SiteDocument } from '../state/site-document.ts';
import type { DevelopedPlace } from './developed-place.ts';
import type { PartNames } from './elevation-words.ts';
import { LevelHandle } from './level-handle.tsx';
import type { DrawnLine } from './moving.ts';
import { PointHandles } from './point-handles.tsx';
import { Pull } from './pull.tsx';
import { CrestRing, Letter, Part, PipeLine, RamSign, TroubleLines, WaterBox } from './symbols.tsx';
import type { WholePlaceLayout } from './whole-place.ts';

/** The whole place, drawn from its layout. Source, drive line and ram stand in the detail too, which names them. */
export function WholePlace({
  layout,
  names,
  gridUnit,
  materials,
  place,
  shown,
  grip,
}: {
  readonly layout: WholePlaceLayout;
  readonly names: PartNames;
  readonly gridUnit: string;
  readonly materials: { readonly isDriveMetal: boolean; readonly isDeliveryMetal: boolean };
  readonly place: DevelopedPlace;
  /** The document that is drawn. */
  readonly shown: SiteDocument;
  readonly grip: number;
}) {
  const { frame, texts, isNarrow } = layout;
  const drawn: DrawnLine = {
    line: 'delivery',
    from: place.driveLength,
    corners: place.delivery,
    projection: layout.projection,
    top: 8,
    bottom: frame.bottom + 12,
    width: layout.width,
  };
  return (
    <>
      <g aria-hidden="true">
        <path
          className="d-grid"
          d={[
            ...layout.levels.map((line) => `M${frame.left} ${line.at}H${frame.right}`),
            ...layout.stations.map((line) => `M${line.at} ${frame.top}V${frame.bottom}`),
          ].join('')}
        />
        {layout.levels.map((line) => (
          <text
            key={line.label}
            className="d-label second"
            x={frame.left - 6}
            y={line.at + 4}
            textAnchor="end"
          >
            {line.label}
          </text>
        ))}
        <text className="d-label second" x={frame.left - 6} y={frame.top - 6} textAnchor="end">
          {gridUnit}
        </text>
        {layout.stations.map((line, i) => (
          <text
            key={line.label}
            className="d-label second"
            x={line.at}
            y={frame.bottom + 15}
            textAnchor="middle"
          >
            {i === layout.stations.length - 1 ? `${line.label} ${gridUnit}` : line.label}
          </text>
        ))}
        <path className="d-tick" d={layout.ticks} />
        <path className="d-ground" d={layout.ground} />
        <path className="d-level" d={layout.restGrade} />
        {layout.runningGrade !== undefined && <path className="d-grade" d={layout.runningGrade} />}
        {layout.riser !== undefined && (
          <path className="d-dim" d={layout.riser} style={{ strokeDasharray: '2 4' }} />
        )}
        {layout.driveBox !== undefined && <rect className="d-frame" {...layout.driveBox} />}
      </g>
      <Part to="source" name={names.source} isRepeated>
        <WaterBox {...layout.pool} />
      </Part>
      <Part to="drive" name={names.drive} isRepeated>
        <PipeLine
          d={layout.drive}
          wall={isNarrow ? 5 : 6}
          bore={isNarrow ? 2.5 : 3}
          isMetal={materials.isDriveMetal}
        />
      </Part>
      <Part to="ram" name={names.ram} isRepeated>
        <RamSign at={layout.ram} size={1} />
        <Letter text={texts.ram} tone="of-metal" />
      </Part>
      <Part to="delivery" name={names.delivery}>
        <PipeLine
          d={layout.delivery}
          wall={isNarrow ? 4.5 : 5.5}
          bore={isNarrow ? 2 : 3}
          isMetal={materials.isDeliveryMetal}
        />
        <TroubleLines lines={layout.troubles} />
        {texts.delivery.map((line) => (
          <Letter key={line.text} text={line} tone="of-water" />
        ))}
        <Pull d={layout.delivery} drawn={drawn} />
      </Part>
      <g aria-hidden="true">
        {layout.crests.map((crest) => (
          <CrestRing key={crest.key} at={crest} label={crest.label} isVented={crest.isVented} />
        ))}
      </g>
      <PointHandles shown={shown} drawn={drawn} turns={place.turns} grip={grip} />
      <Part to="tank" name={names.tank}>
        <WaterBox {...layout.tank} />
        <path
          className="d-ink"
          d={`M${layout.tank.x} ${layout.tank.y - 6}v${layout.tank.height + 6}h${layout.tank.width}v${-layout.tank.height - 6}`}
        />
        <Letter text={texts.tank} tone="strong" />
      </Part>
      <g aria-hidden="true">
        {layout.liftDimension !== undefined && (
          <path
            className="d-dim"
            d={`M${layout.liftDimension.x} ${layout.liftDimension.top}V${layout.liftDimension.bottom}m-5 0h10M${layout.liftDimension.x - 5} ${layout.liftDimension.top}h10`}
          />
        )}
        {texts.lift !== undefined && <Letter text={texts.lift} tone="strong" />}
        {texts.liftNote !== undefined && <Letter text={texts.liftNote} tone="second" />}
        {texts.grade !== undefined && <Letter text={texts.grade} tone="of-water" />}
        {texts.restGrade !== undefined && <Letter text={texts.restGrade} tone="of-water" />}
        {texts.troubles.map((text) => (
          <Letter key={text.text} text={text} tone="of-alarm" />
        ))}
        <Letter text={texts.stretch} tone="second" />
      </g>
      <LevelHandle
        level="lift"
        metres={place.lift}
        at={layout.levelHandle}
        projection={layout.projection}
        top={10}
        words={(texts.lift ?? texts.tank).text}
        grip={grip}
      />
    </>
  );
}
