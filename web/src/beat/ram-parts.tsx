/** The parts of the ram in section that do not move, and the two that do, in their rest places: waste valve open, delivery valve shut. */
import type { WasteValve } from '@fallwright/engine';
import { PipeLine } from '../drawing/symbols.tsx';

export const BODY_WATER = 'M150 440H235V366H345V440H475V340H545V440H590V510H150z';
/** The blue ends where the body's begins; two laid over one another would be bluer. */
export const DRIVE_BLUE = 'M-30 436C40 446 84 475 150 475';
const DRIVE_BORE = 'M-30 436C40 446 84 475 152 475';
export const DELIVERY_BORE = 'M600 305H668C714 305 732 284 800 240';
export const VESSEL_INSIDE = 'M420 340V172A90 90 0 0 1 600 172V340z';

const CUT_METAL = [
  'M170 510H590V440H545V356H628V370H566Q559 370 559 377V419Q559 426 566 426H594Q604 426 604 436V514Q604 524 594 524H170z',
  'M345 366H375V380H366Q359 380 359 387V419Q359 426 366 426H454Q461 426 461 419V377Q461 370 454 370H392V356H475V440H345z',
  'M170 426H214Q221 426 221 419V387Q221 380 214 380H205V366H235V440H170z',
  'M205 350H262V366H205zM318 350H375V366H318z',
  'M392 340H408V172A102 102 0 0 1 612 172V288H600V172A90 90 0 0 0 420 172V340H490V356H392zM530 340H600V322H612V340H628V356H530z',
  'M122 412H150V424H170V440H122zM122 510H170V526H150V538H122z',
  'M612 276H650V288H612zM612 322H650V334H612z',
];

const BRIDGE = 'M246 350V288H334V350H326V298H294.5V300H285.5V298H254V350z';
const SPIDER = 'M490 345H505V352H490zM515 345H530V352H515z';
const BOLTS =
  'M210 342h12v8h-12zM358 342h12v8h-12zM396 332h11v8h-11zM613 340h11v-8h-11zM396 370h11v8h-11zM613 370h11v8h-11z';
const FEET = 'M222 524h44v24h-44zM536 524h44v24h-44z';

/** Three short strokes at 45°, from each of these places along the ground. */
const GROUND_TICKS: readonly (readonly [number, number])[] = [
  ...[24, 68, 112, 690, 734].map((x) => [x, 561] as const),
  ...[154, 194].map((x) => [x, 587] as const),
  ...[240, 302, 364, 426, 488, 550, 612].map((x) => [x, 578] as const),
];

export function Defs() {
  return (
    <defs>
      <pattern id="beat-air" width="14" height="14" patternUnits="userSpaceOnUse">
        <circle className="beat-dot" cx="3" cy="4" r="0.9" />
        <circle className="beat-dot" cx="10" cy="11" r="0.9" />
      </pattern>
      <pattern id="beat-stone" width="30" height="20" patternUnits="userSpaceOnUse">
        <path className="beat-chip" d="M4 5l3 3M14 13l4-1M24 4l2 3M21 16h2M9 16l-2 1" />
      </pattern>
      <marker
        id="beat-arrow"
        viewBox="0 0 10 10"
        refX="8"
        refY="5"
        markerWidth="13"
        markerHeight="13"
        markerUnits="userSpaceOnUse"
        orient="auto-start-reverse"
      >
        <path className="beat-arrowhead" d="M0 1l9 4-9 4z" />
      </marker>
      <clipPath id="beat-vessel">
        <path d={VESSEL_INSIDE} />
      </clipPath>
    </defs>
  );
}

export function Ground() {
  return (
    <>
      {GROUND_TICKS.map(([x, y]) => (
        <path
          key={x}
          className="d-tick"
          d={`M${x} ${y}l-10 10M${x + 6} ${y}l-10 10M${x + 12} ${y}l-10 10`}
        />
      ))}
      <path className="d-ground" d="M0 560H128V586H200" />
      <path className="d-ground" d="M664 560H780" />
      <path className="d-water" d="M129 566H200V585H129z" />
      <path className="d-waterhatch" d="M129 566H200V585H129z" />
      <path className="d-surface" d="M129 566H200" />
      <path className="d-stone" d="M200 548H664V576H200z" />
      <path className="beat-stonehatch" d="M200 548H664V576H200z" />
    </>
  );
}

/** Water that is always there; its depth of blue is laid over it. */
export function StillWater({
  isDriveMetal,
  isDeliveryMetal,
}: {
  readonly isDriveMetal: boolean;
  readonly isDeliveryMetal: boolean;
}) {
  return (
    <>
      <PipeLine d={DRIVE_BORE} wall={88} bore={70} isMetal={isDriveMetal} />
      <PipeLine d={DELIVERY_BORE} wall={48} bore={34} isMetal={isDeliveryMetal} />
      <path className="d-water" d={BODY_WATER} />
      <path className="d-waterhatch" d={BODY_WATER} />
      <path className="beat-airground" d={VESSEL_INSIDE} />
      <path className="beat-airdots" d={VESSEL_INSIDE} />
    </>
  );
}

export function Metal({ hasSnifter }: { readonly hasSnifter: boolean }) {
  return (
    <>
      {CUT_METAL.map((d) => (
        <g key={d}>
          <path className="d-metal beat-cut" d={d} />
          <path className="d-metalhatch" d={d} />
        </g>
      ))}
      {[BRIDGE, SPIDER, BOLTS, FEET].map((d) => (
        <path key={d} className="d-metal" d={d} />
      ))}
      {hasSnifter && (
        <>
          <path className="beat-airground" d="M544 396h16v5h-16z" />
          <path className="beat-metalthin" d="M544 396h16M544 401h16" />
        </>
      )}
    </>
  );
}

/** Lifts by 24 to shut. What holds it open is drawn for what it is: washers, a spring, or nothing over a swing check. */
export function WasteValvePart({ kind }: { readonly kind: WasteValve['kind'] }) {
  return (
    <>
      <rect className="d-metal" x="286" y="226" width="8" height="164" />
      <rect className="d-metal" x="276" y="236" width="28" height="9" />
      {kind === 'weighted' &&
        [245, 255, 265].map((y) => (
          <rect key={y} className="d-metal" x="262" y={y} width="56" height="10" />
        ))}
      {kind === 'sprung' && (
        <path className="beat-spring" d="M276 247L304 252L276 257L304 262L276 267L304 272" />
      )}
      <rect className="d-metal" x="277" y="275" width="26" height="13" />
      <path className="beat-metalthin" d="M285.5 275v13M294.5 275v13" />
      <rect className="beat-rubber" x="250" y="390" width="80" height="5" />
      <path className="d-metal" d="M250 395h80v5l-8 5h-64l-8-5z" />
      <rect className="d-metal" x="279" y="405" width="22" height="9" />
    </>
  );
}

/** Lifts by 14 to open. */
export function DeliveryValvePart() {
  return (
    <>
      <rect className="d-metal" x="506" y="306" width="8" height="62" />
      <rect className="d-metal" x="499" y="366" width="22" height="8" />
      <path className="d-metal" d="M494 325h32v7h-32z" />
      <rect className="beat-rubber" x="480" y="332" width="60" height="8" rx="1" />
    </>
  );
}

/** Waste water leaving by the seat, over its rim and down. */
export function Jets() {
  return (
    <>
      <path
        className="d-water beat-spray"
        d="M263 350c-4-14-30-22-52-8-20 13-29 60-31 206h-26c6-140 20-206 46-226 24-18 55-10 74 28zM317 350c4-12 26-18 44-6 14 10 18 34 20 82h16c-2-58-10-86-28-98-22-14-46-8-62 22z"
      />
      <path
        className="beat-jet"
        d="M267 350c-5-20-38-34-62-14-24 20-34 90-40 206M272 350c-8-30-52-42-80-8-18 22-30 100-34 190M263 352c-8-8-28-14-46 0-18 14-28 70-32 180M313 350c6-16 30-24 50-8 16 14 20 40 23 80M309 350c6-24 40-32 62-10 14 16 18 40 21 78"
      />
    </>
  );
}
