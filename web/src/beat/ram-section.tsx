/** The ram in section, moving as the simulation says. What stands still is drawn once; only the moving parts follow the clock. */
import type { System } from '@fallwright/units';
import { memo, useMemo } from 'react';
import { useStore } from '../app/use-store.ts';
import { frameOf } from './player.ts';
import type { RamInstant } from './ram-instant.ts';
import { LEAST_FLOW, ramAt, VESSEL } from './ram-instant.ts';
import {
  BODY_WATER,
  DELIVERY_BORE,
  Defs,
  DeliveryValvePart,
  DRIVE_BLUE,
  Ground,
  Jets,
  Metal,
  StillWater,
  WasteValvePart,
} from './ram-parts.tsx';
import type { Reel } from './reel.ts';
import type { SectionKey, SectionLabel } from './section-labels.ts';
import {
  LEADERS,
  letterSize,
  SECTION,
  SNIFTER_LEADER,
  sectionKeys,
  sectionLabels,
} from './section-labels.ts';
import { useWidth } from './use-width.ts';

const METALS: readonly string[] = ['steel', 'galvanisedSteel', 'castIron', 'copper'];

export function RamSection({
  reel,
  system,
  describedBy,
}: {
  readonly reel: Reel;
  readonly system: System;
  readonly describedBy: string;
}) {
  const { ref, width } = useWidth<HTMLDivElement>();
  const { installation } = reel;
  const level = useMemo(() => ramAt(reel, 0).vesselLevel, [reel]);
  const isLabelled = width >= SECTION.labelled;
  return (
    <div ref={ref} className="beat-section">
      <svg
        className="drawing"
        viewBox={`0 ${SECTION.top} ${SECTION.width} ${SECTION.height}`}
        role="img"
        aria-label={`${installation.ram.name} ram in section`}
        aria-describedby={describedBy}
      >
        <Defs />
        <MovingRam reel={reel} />
        {width > 0 &&
          (isLabelled ? (
            <Labels
              labels={sectionLabels(installation, level, system)}
              size={letterSize(width)}
              hasSnifter={installation.ram.snifter !== undefined}
            />
          ) : (
            <Keys keys={sectionKeys(installation, level)} />
          ))}
      </svg>
      {width > 0 && !isLabelled && (
        <ol className="beat-keys">
          {sectionKeys(installation, level).map(({ name }, i) => (
            <li key={name}>
              <b aria-hidden="true">{i + 1}</b> {name}
            </li>
          ))}
        </ol>
      )}
    </div>
  );
}

function MovingRam({ reel }: { readonly reel: Reel }) {
  const frame = useStore(reel.player, frameOf);
  const instant = useMemo(() => ramAt(reel, frame), [reel, frame]);
  const { wasteValve } = reel.installation.ram;
  return (
    <>
      <StillUnderWater reel={reel} />
      <path className="beat-blue" d={BODY_WATER} style={{ opacity: instant.bodyBlue }} />
      <path
        className="beat-bluebore"
        d={DRIVE_BLUE}
        style={{ opacity: instant.bodyBlue, strokeWidth: 70 }}
      />
      <path
        className="beat-bluebore"
        d={DELIVERY_BORE}
        style={{ opacity: instant.vesselBlue, strokeWidth: 34 }}
      />
      <VesselWater level={instant.vesselLevel} blue={instant.vesselBlue} />
      <StillMetal hasSnifter={reel.installation.ram.snifter !== undefined} />
      {instant.jets > 0 && (
        <g style={{ opacity: instant.jets }}>
          <Jets />
        </g>
      )}
      <g transform={`translate(0 ${-instant.wasteShift})`}>
        <WasteValvePart kind={wasteValve.kind} />
      </g>
      <g transform={`translate(0 ${-instant.deliveryShift})`}>
        <DeliveryValvePart />
      </g>
      <Arrows instant={instant} />
    </>
  );
}

const StillUnderWater = memo(function StillUnderWater({ reel }: { readonly reel: Reel }) {
  const { driveLine, deliveryLine } = reel.installation;
  const isMetal = (segment: { readonly pipe: { readonly material: string } }): boolean =>
    METALS.includes(segment.pipe.material);
  return (
    <>
      <Ground />
      <StillWater
        isDriveMetal={driveLine.segments.slice(-1).some(isMetal)}
        isDeliveryMetal={deliveryLine.segments.slice(0, 1).some(isMetal)}
      />
    </>
  );
});

const StillMetal = memo(Metal);

function VesselWater({ level, blue }: { readonly level: number; readonly blue: number }) {
  const box = {
    x: 420,
    y: level,
    width: 2 * VESSEL.radius,
    height: Math.max(0, VESSEL.floor - level),
  };
  return (
    <g clipPath="url(#beat-vessel)">
      <rect className="d-water" {...box} />
      <rect className="beat-blue" {...box} style={{ opacity: blue }} />
      <rect className="d-waterhatch" {...box} />
      <path className="d-surface" d={`M420 ${level}H600`} />
      <path
        className="d-surface beat-levelsign"
        d={`M556 ${level - 15}h20l-10 14zM559 ${level + 5}h14M562 ${level + 9}h8`}
      />
    </g>
  );
}

const STREAMS = [
  { of: 'drive', d: 'M40 462C90 482 120 484 200 484' },
  { of: 'waste', d: 'M214 480C244 478 246 452 246 424' },
  { of: 'waste', d: 'M352 478C336 474 334 452 334 424' },
  { of: 'delivery', d: 'M300 484H460' },
  { of: 'delivery', d: 'M484 430V376' },
  { of: 'delivery', d: 'M534 430V376' },
  { of: 'outflow', d: 'M560 305H672' },
] as const;

/** Where water runs: the arrow turns round with the flow and is as strong as the flow is great. */
function Arrows({ instant }: { readonly instant: RamInstant }) {
  return (
    <>
      {STREAMS.map(({ of, d }) => {
        const flow = instant[of];
        if (Math.abs(flow) < LEAST_FLOW) return null;
        const end =
          flow > 0 ? { markerEnd: 'url(#beat-arrow)' } : { markerStart: 'url(#beat-arrow)' };
        return (
          <path
            key={d}
            className="beat-stream"
            d={d}
            style={{ strokeWidth: 1.5 + 2 * Math.min(1, Math.abs(flow)) }}
            {...end}
          />
        );
      })}
      {instant.snifter === 'sips' && (
        <path className="beat-sip" d="M598 398.5H566" markerEnd="url(#beat-arrow)" />
      )}
      {instant.snifter === 'leaks' && (
        <path
          className="beat-jet"
          d="M562 398.5C576 398 590 402 598 414M562 398.5C574 399 584 404 590 416"
        />
      )}
    </>
  );
}

const Labels = memo(function Labels({
  labels,
  size,
  hasSnifter,
}: {
  readonly labels: readonly SectionLabel[];
  readonly size: number;
  readonly hasSnifter: boolean;
}) {
  return (
    <g>
      <path className="d-dim" d={hasSnifter ? LEADERS + SNIFTER_LEADER : LEADERS} />
      {labels.map(({ x, y, anchor, tone, lines }) => (
        <text
          key={lines[0]}
          className={`d-label ${tone}`}
          textAnchor={anchor}
          style={{ fontSize: size }}
        >
          {lines.map((line, i) => (
            <tspan key={line} x={x} y={y + i * size * 1.15}>
              {line}
            </tspan>
          ))}
        </text>
      ))}
    </g>
  );
});

function Keys({ keys }: { readonly keys: readonly SectionKey[] }) {
  return (
    <g>
      {keys.map(({ x, y, name }, i) => (
        <g key={name} className="beat-key">
          <circle cx={x} cy={y} r="24" />
          <text x={x} y={y + 11} textAnchor="middle">
            {i + 1}
          </text>
        </g>
      ))}
    </g>
  );
}
