/**
 * The form of a ram that its parts describe, in metres, as cut down its middle: the waste valve open by its stroke, the
 * delivery valve shut.
 *
 * To scale are the bore, the seat, the stroke, the ring round the disc, the opening and passage of the delivery valve, the
 * snifter and the volume of the vessel. Walls, flanges, stem and bridge are in no record: they are drawn as usual.
 * The origin is where the axes of drive line and waste valve meet; y grows downwards.
 */
import type { Ram, WasteValve } from '@fallwright/engine';
import type { Area, Line, Point } from './shapes.ts';
import { area, box, line } from './shapes.ts';

export type Measured = 'bore' | 'seat' | 'stroke' | 'deliveryBore' | 'snifter';

/** A length that the drawing shows, between two points of it. */
export interface Dimension {
  readonly what: Measured;
  readonly from: Point;
  readonly to: Point;
}

export type Named =
  | Measured
  | 'wasteValve'
  | 'driveLine'
  | 'airVessel'
  | 'deliveryLine'
  | 'deliveryValve';

export interface RamGeometry {
  readonly areas: readonly Area[];
  readonly lines: readonly Line[];
  readonly dimensions: readonly Dimension[];
  /** Where the leader of each name ends. */
  readonly points: Readonly<Partial<Record<Named, Point>>>;
  /** Inside of the vessel, of which half the section turns round its axis. */
  readonly vessel: { readonly axis: number; readonly inside: readonly Point[] };
  readonly box: {
    readonly left: number;
    readonly right: number;
    readonly top: number;
    readonly bottom: number;
  };
}

/** Judgement: walls an eighth of the bore thick, never under three millimetres: castings and welded fittings look so. */
const WALL_PER_BORE = 0.12;
const LEAST_WALL = 0.003;
/** Judgement: a disc laps over its seat by this share of it on either side. */
const LAP = 0.06;
/** Judgement: a vessel stands half as high again as it is wide. */
const VESSEL_HEIGHT_PER_RADIUS = 3;
/** Judgement: a vessel is at least this much wider than the opening under it, or its valve would not go in. */
const VESSEL_PER_OPENING = 1.6;
/** Judgement: drawn with water up to here; at work the head decides. */
const WATER_IN_VESSEL = 0.45;
/** Weights are steel or brass. Source: density of steel, any table of materials (memory). */
const DENSITY_OF_WEIGHTS = 7850;
const DOME_STEPS = 40;

/** What all parts are placed by. */
interface Frame {
  readonly bore: number;
  readonly half: number;
  readonly wall: number;
  /** How far flanges stand out over a wall. */
  readonly flange: number;
  readonly seat: number;
  readonly disc: number;
  readonly discHeight: number;
  readonly hole: number;
  readonly chamber: number;
  readonly lip: number;
  readonly stroke: number;
  /** Level on which the disc seats, and the underside and top of the plate above it. */
  readonly seatLevel: number;
  readonly plateUnder: number;
  readonly plateTop: number;
  readonly opening: number;
  /** Axis of the vessel, and the level of its floor. */
  readonly axis: number;
  readonly floor: number;
  readonly radius: number;
  /** Height of the vessel's straight wall and of its crown. */
  readonly straight: number;
  readonly crown: number;
  readonly left: number;
  readonly end: number;
  readonly outlet: { readonly top: number; readonly bottom: number };
}

function frameOf(ram: Ram): Frame {
  const { bore, wasteValve, deliveryValve, airVessel } = ram;
  const wall = Math.max(LEAST_WALL, WALL_PER_BORE * bore);
  const flange = 1.2 * wall;
  const half = bore / 2;
  const seat = wasteValve.seatDiameter;
  const disc = seat * (1 + 2 * LAP);
  const discHeight = Math.max(0.0025, 0.11 * seat);
  const hole = Math.min(seat, Math.sqrt((4 * wasteValve.portArea) / Math.PI));
  const chamber = Math.sqrt(disc ** 2 + (4 * wasteValve.gapArea) / Math.PI);
  const lip = LAP * 0.6 * seat;
  const { stroke } = wasteValve;
  // A flap hangs lower at its free edge than at its middle.
  const hang = wasteValve.kind === 'swing' ? 2 * stroke : stroke;
  const seatLevel = -(half + Math.max(0.35 * bore, 1.3 * wall) + discHeight * 1.8 + hang);
  const plateUnder = seatLevel - lip;
  const opening = Math.sqrt((4 * deliveryValve.area) / Math.PI);
  const { radius, straight, crown } = vesselForm(airVessel.volume, opening);
  const axis = chamber / 2 + 2 * wall + 2 * flange + 0.3 * bore + radius;
  const floor = -(half + Math.max(deliveryValve.passageLength, 3.4 * wall));
  const outletTop = floor - 1.35 * opening;
  return {
    bore,
    half,
    wall,
    flange,
    seat,
    disc,
    discHeight,
    hole,
    chamber,
    lip,
    stroke,
    seatLevel,
    plateUnder,
    plateTop: plateUnder - wall,
    opening,
    axis,
    floor,
    radius,
    straight,
    crown,
    left: -(chamber / 2 + wall + flange + 0.9 * bore),
    end: axis + opening / 2 + wall + 0.35 * bore,
    outlet: { top: outletTop, bottom: outletTop + opening },
  };
}

/** A cylinder under half a ball; a very small vessel over a wide opening has a flatter crown and no straight wall. */
function vesselForm(
  volume: number,
  opening: number,
): { readonly radius: number; readonly straight: number; readonly crown: number } {
  const usual = (volume / (Math.PI * (VESSEL_HEIGHT_PER_RADIUS - 1 / 3))) ** (1 / 3);
  const radius = Math.max(usual, (VESSEL_PER_OPENING * opening) / 2);
  const base = Math.PI * radius ** 2;
  const straight = (volume - (2 / 3) * base * radius) / base;
  return straight >= 0
    ? { radius, straight, crown: radius }
    : { radius, straight: 0, crown: volume / ((2 / 3) * base) };
}

export function ramGeometry(ram: Ram): RamGeometry {
  const frame = frameOf(ram);
  const { half, wall, left, axis, radius, floor, straight, crown, end, outlet } = frame;
  const waste = wasteValveShapes(ram.wasteValve, frame);
  const stub = 1.1 * frame.bore;
  const vesselTop = floor - straight - crown - wall;
  const right = axis + radius + wall + Math.max(0.9 * frame.bore, 3 * wall);
  const foot = half + wall + 2.2 * wall;
  const snifter = snifterAt(ram, frame);
  const inside = vesselInside(frame);
  return {
    areas: [
      ...pipeStub({ from: left - stub, to: left, half, wall }),
      ...pipeStub({
        from: axis + radius + wall,
        to: right,
        half: (outlet.bottom - outlet.top) / 2,
        wall: 0.7 * wall,
        level: (outlet.bottom + outlet.top) / 2,
      }),
      area('water', bodyWater(frame)),
      ...vesselWater(frame, inside),
      ...bodyMetal(frame),
      ...vesselMetal(frame),
      ...(snifter === undefined ? [] : [area('air', snifter.hole, 'snifter')]),
      ...deliveryValveShapes(frame),
      ...feet(frame, foot),
      ...waste.areas,
    ],
    lines: [
      line('surface', ...waterLevel(frame)),
      ...(snifter === undefined ? [] : snifter.edges),
      ...waste.lines,
    ],
    dimensions: [
      {
        what: 'bore',
        from: { x: left - 0.55 * stub, y: -half },
        to: { x: left - 0.55 * stub, y: half },
      },
      ...waste.dimensions,
      {
        what: 'deliveryBore',
        from: { x: axis - frame.opening / 2, y: (floor - half) / 2 },
        to: { x: axis + frame.opening / 2, y: (floor - half) / 2 },
      },
      ...(snifter === undefined ? [] : [snifter.dimension]),
    ],
    points: {
      wasteValve: waste.named,
      driveLine: { x: left - stub, y: half },
      airVessel: { x: axis + radius + wall / 2, y: floor - 0.75 * straight - 0.25 * crown },
      deliveryLine: { x: right, y: (outlet.top + outlet.bottom) / 2 },
      deliveryValve: { x: axis + 0.6 * frame.opening, y: floor - 0.06 * frame.opening },
      bore: { x: left - 0.55 * stub, y: 0 },
      seat: waste.seatNamed,
      stroke: waste.strokeNamed,
      deliveryBore: { x: axis + frame.opening / 2, y: (floor - half) / 2 },
      ...(snifter === undefined ? {} : { snifter: snifter.named }),
    },
    vessel: { axis, inside },
    box: {
      left: left - stub,
      right: Math.max(right, end + wall),
      top: Math.min(waste.top, vesselTop),
      bottom: foot,
    },
  };
}

function pipeStub({
  from,
  to,
  half,
  wall,
  level = 0,
}: {
  readonly from: number;
  readonly to: number;
  readonly half: number;
  readonly wall: number;
  readonly level?: number;
}): Area[] {
  const at = (x: number, y: number): Point => ({ x, y: level + y });
  return [
    area('water', box(at(from, -half), at(to, half))),
    area('pipeWall', box(at(from, -half - 0.6 * wall), at(to, -half))),
    area('pipeWall', box(at(from, half), at(to, half + 0.6 * wall))),
  ];
}

/** From the drive line to the disc and to the delivery valve, and what leaves by the seat. */
function bodyWater(f: Frame): Point[] {
  const { half, left, end, chamber, plateUnder, plateTop, hole, axis, opening, floor } = f;
  return [
    { x: left, y: half },
    { x: left, y: -half },
    { x: -chamber / 2, y: -half },
    { x: -chamber / 2, y: plateUnder },
    { x: -hole / 2, y: plateUnder },
    { x: -hole / 2, y: plateTop },
    { x: hole / 2, y: plateTop },
    { x: hole / 2, y: plateUnder },
    { x: chamber / 2, y: plateUnder },
    { x: chamber / 2, y: -half },
    { x: axis - opening / 2, y: -half },
    { x: axis - opening / 2, y: floor },
    { x: axis + opening / 2, y: floor },
    { x: axis + opening / 2, y: -half },
    { x: end, y: -half },
    { x: end, y: half },
  ];
}

/** The body in three pieces, as a cut down its middle leaves them. */
function bodyMetal(f: Frame): Area[] {
  const { half, wall, flange, left, chamber, plateUnder, plateTop, lip, seat, hole } = f;
  const { axis, opening, floor, end } = f;
  const out = half + wall;
  const neckTop = floor + wall;
  const neck = opening / 2;
  const tower = chamber / 2;
  const side = (sign: 1 | -1): Point[] => [
    { x: (sign * hole) / 2, y: plateTop },
    { x: sign * (tower + wall + flange), y: plateTop },
    { x: sign * (tower + wall + flange), y: plateUnder },
    { x: sign * (seat / 2 + 0.9 * lip), y: plateUnder },
    { x: sign * (seat / 2 + 0.9 * lip), y: plateUnder + lip },
    { x: (sign * seat) / 2, y: plateUnder + lip },
    { x: (sign * seat) / 2, y: plateUnder },
    { x: (sign * hole) / 2, y: plateUnder },
  ];
  return [
    area('metalCut', [
      { x: left, y: -half },
      { x: -tower, y: -half },
      { x: -tower, y: plateUnder },
      { x: -tower - wall - flange, y: plateUnder },
      { x: -tower - wall - flange, y: plateUnder + wall },
      { x: -tower - wall, y: plateUnder + wall },
      { x: -tower - wall, y: -out },
      { x: left + wall, y: -out },
      { x: left + wall, y: -out - flange },
      { x: left, y: -out - flange },
    ]),
    area('metalCut', [
      { x: tower, y: -half },
      { x: axis - neck, y: -half },
      { x: axis - neck, y: neckTop },
      { x: axis - neck - wall - flange, y: neckTop },
      { x: axis - neck - wall - flange, y: neckTop + wall },
      { x: axis - neck - wall, y: neckTop + wall },
      { x: axis - neck - wall, y: -out },
      { x: tower + wall, y: -out },
      { x: tower + wall, y: plateUnder + wall },
      { x: tower + wall + flange, y: plateUnder + wall },
      { x: tower + wall + flange, y: plateUnder },
      { x: tower, y: plateUnder },
    ]),
    area('metalCut', [
      { x: left, y: half },
      { x: end, y: half },
      { x: end, y: -half },
      { x: axis + neck, y: -half },
      { x: axis + neck, y: neckTop },
      { x: axis + neck + wall + flange, y: neckTop },
      { x: axis + neck + wall + flange, y: neckTop + wall },
      { x: axis + neck + wall, y: neckTop + wall },
      { x: axis + neck + wall, y: -out },
      { x: end + wall, y: -out },
      { x: end + wall, y: out },
      { x: left + wall, y: out },
      { x: left + wall, y: out + flange },
      { x: left, y: out + flange },
    ]),
    area('metalCut', side(-1), 'seat'),
    area('metalCut', side(1), 'seat'),
  ];
}

/** The inside of the vessel, from the foot of its left wall over the crown to the foot of its right one. */
function vesselInside({ axis, radius, straight, crown, floor }: Frame): Point[] {
  return [
    { x: axis - radius, y: floor },
    ...dome({ axis, level: floor - straight, across: radius, up: crown }),
    { x: axis + radius, y: floor },
  ];
}

function dome({
  axis,
  level,
  across,
  up,
}: {
  readonly axis: number;
  readonly level: number;
  readonly across: number;
  readonly up: number;
}): Point[] {
  return Array.from({ length: DOME_STEPS + 1 }, (_, i) => {
    const angle = Math.PI * (1 - i / DOME_STEPS);
    return { x: axis + across * Math.cos(angle), y: level - up * Math.sin(angle) };
  });
}

function vesselMetal(f: Frame): Area[] {
  const { axis, radius, wall, flange, straight, crown, floor, opening, outlet } = f;
  const level = floor - straight;
  const outer = dome({ axis, level, across: radius + wall, up: crown + wall });
  const inner = dome({ axis, level, across: radius, up: crown });
  const top = Math.max(outlet.top, level);
  const edge = Math.max(radius + wall, opening / 2 + wall + flange) + flange;
  const plate = (sign: 1 | -1): readonly Point[] =>
    box({ x: axis + (sign * opening) / 2, y: floor }, { x: axis + sign * edge, y: floor + wall });
  return [
    area(
      'metalCut',
      [
        { x: axis - radius - wall, y: floor },
        ...outer,
        { x: axis + radius + wall, y: top },
        { x: axis + radius, y: top },
        ...[...inner].reverse(),
        { x: axis - radius, y: floor },
      ],
      'airVessel',
    ),
    area(
      'metalCut',
      box({ x: axis + radius, y: outlet.bottom }, { x: axis + radius + wall, y: floor }),
    ),
    area('metalCut', plate(-1)),
    area('metalCut', plate(1)),
  ];
}

function levelOf({ floor, straight, crown, outlet, bore }: Frame): number {
  const usual = floor - WATER_IN_VESSEL * (straight + crown);
  return Math.max(floor - 0.9 * (straight + crown), Math.min(usual, outlet.top - 0.1 * bore));
}

/** The two ends of the water's surface between the vessel's walls. */
function waterLevel(f: Frame): [Point, Point] {
  const y = levelOf(f);
  const half = y >= f.floor - f.straight ? f.radius : widthAt(f, y);
  return [
    { x: f.axis - half, y },
    { x: f.axis + half, y },
  ];
}

/** Half the width of the crown at a level. */
function widthAt({ floor, straight, crown, radius }: Frame, y: number): number {
  const up = Math.min(1, Math.max(0, (floor - straight - y) / crown));
  return radius * Math.sqrt(1 - up ** 2);
}

function vesselWater(f: Frame, inside: readonly Point[]): Area[] {
  const [from, to] = waterLevel(f);
  const above = inside.filter(({ y }) => y < from.y);
  const below = inside.filter(({ y }) => y >= from.y);
  const middle = below.findIndex(({ x }) => x > f.axis);
  const { axis, radius, wall, outlet } = f;
  return [
    area('air', [from, ...above, to], 'air'),
    area('water', [...below.slice(0, middle), from, to, ...below.slice(middle)]),
    area(
      'water',
      box({ x: axis + radius, y: outlet.top }, { x: axis + radius + wall, y: outlet.bottom }),
    ),
  ];
}

function deliveryValveShapes({ axis, opening, floor, wall }: Frame): Area[] {
  const high = Math.max(0.0015, 0.1 * opening);
  const stem = Math.max(0.0015, 0.1 * opening);
  const at = (x: number, y: number): Point => ({ x: axis + x, y: floor + y });
  return [
    area('metal', box(at(-stem / 2, -4.5 * high), at(stem / 2, wall + 2.2 * high))),
    area('metal', box(at(-1.6 * stem, wall + 0.6 * high), at(1.6 * stem, wall + 1.5 * high))),
    area('metal', box(at(-0.42 * opening, -1.8 * high), at(0.42 * opening, -high))),
    area('rubber', box(at(-0.62 * opening, -high), at(0.62 * opening, 0)), 'deliveryValve'),
  ];
}

function feet({ left, end, half, wall, bore }: Frame, bottom: number): Area[] {
  const width = 0.8 * bore;
  return [left + 1.2 * bore, end - width].map((x) =>
    area('metal', box({ x, y: half + wall }, { x: x + width, y: bottom })),
  );
}

function snifterAt(ram: Ram, { axis, opening, wall, floor, half }: Frame) {
  if (ram.snifter === undefined) return undefined;
  const { diameter } = ram.snifter;
  const neck = axis + opening / 2;
  const middle = (floor + 2 * wall - half - wall) / 2;
  const top = middle - diameter / 2;
  const bottom = middle + diameter / 2;
  return {
    hole: box({ x: neck, y: top }, { x: neck + wall, y: bottom }),
    edges: [top, bottom].map((y) => line('metalThin', { x: neck, y }, { x: neck + wall, y })),
    dimension: {
      what: 'snifter',
      from: { x: neck + wall, y: top },
      to: { x: neck + wall, y: bottom },
    } as const,
    named: { x: neck + wall, y: middle },
  };
}

interface WasteShapes {
  readonly areas: readonly Area[];
  readonly lines: readonly Line[];
  readonly dimensions: readonly Dimension[];
  readonly named: Point;
  readonly seatNamed: Point;
  readonly strokeNamed: Point;
  readonly top: number;
}

function wasteValveShapes(valve: WasteValve, f: Frame): WasteShapes {
  return valve.kind === 'swing' ? flap(valve, f) : hangingDisc(valve, f);
}

/** A disc on a stem, hanging from a nut on the bridge; held open by weights or a spring. */
function hangingDisc(valve: WasteValve, f: Frame): WasteShapes {
  const { seat, disc, discHeight, seatLevel, plateTop, stroke } = f;
  const face = seatLevel + stroke;
  const rubber = 0.4 * discHeight;
  const stem = Math.max(0.003, 0.12 * seat);
  const leg = Math.max(0.002, 0.1 * seat);
  const legs = seat / 2 + 0.12 * seat;
  const isSprung = valve.kind === 'sprung';
  const bridge = plateTop - (isSprung ? 1.25 : 0.75) * seat;
  const nut = { half: 0.95 * stem, high: 0.14 * seat };
  const weights =
    valve.kind === 'weighted'
      ? washers(valve.movingMass, { ...f, stem, bridge: bridge - nut.high })
      : { areas: [], top: bridge - nut.high, half: nut.half };
  const top = weights.top - nut.high - 0.12 * seat;
  const across = (halfWidth: number, from: number, to: number): readonly Point[] =>
    box({ x: -halfWidth, y: from }, { x: halfWidth, y: to });
  const spring = isSprung ? springBetween(bridge + leg, plateTop - 0.1 * seat, 1.6 * stem) : [];
  return {
    areas: [
      area('metal', [
        { x: -legs - leg, y: plateTop },
        { x: -legs - leg, y: bridge },
        { x: legs + leg, y: bridge },
        { x: legs + leg, y: plateTop },
        { x: legs, y: plateTop },
        { x: legs, y: bridge + leg },
        { x: -legs, y: bridge + leg },
        { x: -legs, y: plateTop },
      ]),
      area('metal', across(stem / 2, top, face)),
      ...(isSprung
        ? [area('metal', across(2 * stem, plateTop - 0.1 * seat, plateTop - 0.03 * seat))]
        : []),
      area('metal', across(nut.half, bridge - nut.high, bridge)),
      ...weights.areas,
      area('metal', across(nut.half, weights.top - nut.high, weights.top)),
      area('rubber', across(disc / 2, face, face + rubber), 'disc'),
      area('metal', [
        { x: -disc / 2, y: face + rubber },
        { x: disc / 2, y: face + rubber },
        { x: disc / 2, y: face + 0.7 * discHeight },
        { x: disc / 2 - 0.08 * seat, y: face + discHeight },
        { x: -disc / 2 + 0.08 * seat, y: face + discHeight },
        { x: -disc / 2, y: face + 0.7 * discHeight },
      ]),
      area('metal', across(nut.half, face + discHeight, face + 1.7 * discHeight)),
    ],
    lines: [
      ...spring,
      ...[-seat / 2, seat / 2].map((x) =>
        line('dimension', { x, y: seatLevel }, { x, y: plateTop - 0.42 * seat }),
      ),
    ],
    dimensions: [
      {
        what: 'seat',
        from: { x: -seat / 2, y: plateTop - 0.36 * seat },
        to: { x: seat / 2, y: plateTop - 0.36 * seat },
      },
      { what: 'stroke', from: { x: -0.44 * disc, y: seatLevel }, to: { x: -0.44 * disc, y: face } },
    ],
    named: { x: -weights.half, y: isSprung ? (bridge + plateTop) / 2 : (weights.top + bridge) / 2 },
    seatNamed: { x: -seat / 2, y: plateTop - 0.36 * seat },
    strokeNamed: { x: -0.44 * disc, y: (seatLevel + face) / 2 },
    top,
  };
}

/** Washers over the stop nut, as thick together as the mass that disc and stem leave over. */
function washers(
  mass: number,
  {
    seat,
    disc,
    discHeight,
    stem,
    bridge,
    plateTop,
    seatLevel,
  }: Frame & { readonly stem: number; readonly bridge: number },
): { readonly areas: readonly Area[]; readonly top: number; readonly half: number } {
  const quarterPi = Math.PI / 4;
  const own =
    DENSITY_OF_WEIGHTS *
    quarterPi *
    (0.6 * discHeight * disc ** 2 + stem ** 2 * (seatLevel - plateTop + 1.4 * seat));
  const left = Math.max(0, mass - own) / DENSITY_OF_WEIGHTS;
  const thin = left / (quarterPi * seat ** 2);
  // Judgement: a stack taller than the seat is wide is drawn wider instead.
  const width = thin > seat ? Math.sqrt(left / (quarterPi * seat)) : seat;
  const high = left / (quarterPi * width ** 2);
  if (high < 0.0005) return { areas: [], top: bridge, half: stem };
  const count = Math.min(8, Math.max(1, Math.round(high / (0.14 * seat))));
  const each = high / count;
  return {
    areas: Array.from({ length: count }, (_, i) =>
      area(
        'metal',
        box({ x: -width / 2, y: bridge - (i + 1) * each }, { x: width / 2, y: bridge - i * each }),
        'weight',
      ),
    ),
    top: bridge - high,
    half: width / 2,
  };
}

function springBetween(from: number, to: number, half: number): Line[] {
  const turns = 5;
  const points = Array.from({ length: 2 * turns + 1 }, (_, i) => ({
    x: i % 2 === 0 ? -half : half,
    y: from + ((to - from) * i) / (2 * turns),
  }));
  return [line('spring', ...points)];
}

/** A flap on a hinge at the left: its middle hangs by the stroke under the seat. */
function flap(valve: WasteValve, f: Frame): WasteShapes {
  const { seat, disc, discHeight, seatLevel, plateTop, lip } = f;
  const hinge = { x: -disc / 2 - 0.08 * seat, y: seatLevel };
  const arm = -hinge.x;
  const angle = Math.asin(Math.min(0.95, valve.stroke / arm));
  const turned = (along: number, under: number): Point => ({
    x: hinge.x + along * Math.cos(angle) - under * Math.sin(angle),
    y: hinge.y + along * Math.sin(angle) + under * Math.cos(angle),
  });
  const rubber = 0.4 * discHeight;
  const reach = arm + disc / 2;
  const middle = turned(arm, 0);
  return {
    areas: [
      area(
        'rubber',
        [turned(0, 0), turned(reach, 0), turned(reach, rubber), turned(0, rubber)],
        'disc',
      ),
      area('metal', [
        turned(arm - 0.42 * disc, rubber),
        turned(arm + 0.42 * disc, rubber),
        turned(arm + 0.42 * disc, discHeight),
        turned(arm - 0.42 * disc, discHeight),
      ]),
      area(
        'metal',
        box({ x: hinge.x - lip, y: hinge.y - lip }, { x: hinge.x + lip, y: hinge.y + lip }),
      ),
    ],
    lines: [
      line('dimension', { x: -seat / 2, y: seatLevel }, { x: -seat / 2, y: plateTop - 0.3 * seat }),
      line('dimension', { x: seat / 2, y: seatLevel }, { x: seat / 2, y: plateTop - 0.3 * seat }),
    ],
    dimensions: [
      {
        what: 'seat',
        from: { x: -seat / 2, y: plateTop - 0.24 * seat },
        to: { x: seat / 2, y: plateTop - 0.24 * seat },
      },
      { what: 'stroke', from: { x: middle.x, y: seatLevel }, to: middle },
    ],
    named: turned(0.35 * arm, rubber / 2),
    seatNamed: { x: -seat / 2, y: plateTop - 0.24 * seat },
    strokeNamed: { x: middle.x, y: (seatLevel + middle.y) / 2 },
    top: plateTop - 0.5 * seat,
  };
}
