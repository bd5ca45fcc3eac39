/** The film in words: what it is of, what stands at the cursor, and what the picture takes for granted. */
import type { System } from '@fallwright/units';
import { formatQuantity } from '@fallwright/units';
import { headAlong } from './line-strip.ts';
import type { PhaseKind } from './phases.ts';
import { phaseAt } from './phases.ts';
import type { Reel } from './reel.ts';
import { fixedQuantity } from './shown-units.ts';

export const PHASE_WORDS: Readonly<Record<PhaseKind, string>> = {
  gathers: 'water gathers speed',
  delivers: 'delivers',
  recoils: 'recoils',
  shut: 'shut',
};

/** One line under the heading: the ram, its beat, and whether beats are alike. */
export function filmInWords({ installation, film, isBeating }: Reel, system: System): string {
  const length = film.distance[film.nodes - 1] ?? 0;
  const what = `${installation.ram.name} ram on ${formatQuantity(length, 'pipeLength', system)} of drive line.`;
  if (!isBeating) return what;
  const { beatFrequency, beatSpread, end } = film.point;
  const rate = formatQuantity(beatFrequency, 'beats', system);
  const beat = `One beat lasts ${formatQuantity(1 / beatFrequency, 'time', system)}; ${rate}.`;
  const isUneven = end.outcome === 'irregular' || beatSpread > 0.05;
  return isUneven
    ? `${what} ${beat} Its beats differ: another would look another way.`
    : `${what} ${beat}`;
}

/** Why there is no beat, or no delivery, and what the film shows then; undefined when all is as it should be. */
export function troubleInWords(
  { film, isBeating, phases }: Reel,
  system: System,
): string | undefined {
  const { end, vesselHead } = film.point;
  const seconds = 'The film shows the two seconds after the push.';
  if (isBeating) {
    const delivers = phases.some(({ kind }) => kind === 'delivers');
    return delivers
      ? undefined
      : `It beats, but nothing passes the delivery valve: the head never exceeds the ${formatQuantity(vesselHead, 'head', system)} in the vessel.`;
  }
  if (end.outcome === 'staysOpen') {
    return `This ram does not beat. Its waste valve stays open: the water never runs fast enough to shut it. ${seconds}`;
  }
  if (end.outcome === 'staysShut') {
    return `This ram does not beat. Its waste valve shuts and stays shut: the recoil does not open it again. ${seconds}`;
  }
  if (end.outcome === 'sourceEmpty') {
    return `This ram does not beat for long: the source runs empty first. ${seconds}`;
  }
  return `This ram did not come to a beat. ${seconds}`;
}

/** Everything the picture says at one frame. */
export function instantInWords(reel: Reel, frame: number, system: System): string {
  const { film, installation, phases } = reel;
  const at = (column: Float64Array): number => column[frame] ?? 0;
  const flow = (value: number): string => fixedQuantity(Math.abs(value), 'sourceFlow', system);
  const stroke = installation.ram.wasteValve.stroke;
  const kind = phaseAt(phases, frame)?.kind ?? 'shut';
  const sentences = [
    `At ${fixedQuantity(at(film.time), 'time', system)} ${momentInWords(kind)}`,
    valveInWords(at(film.opening), stroke, system),
    `The head at the ram is ${fixedQuantity(at(film.bodyHead), 'head', system)}; ${waveInWords(reel, frame, system)}`,
    driveInWords(at(film.driveFlow), flow),
    wasteInWords(at(film.wasteFlow), at(film.opening) === 0, flow),
    deliveryInWords(at(film.deliveryFlow), flow),
    `About ${fixedQuantity(reel.vesselAir[frame] ?? 0, 'volume', system)} of air cushions the vessel.`,
  ];
  return sentences.filter((sentence) => sentence !== '').join(' ');
}

function momentInWords(kind: PhaseKind): string {
  return {
    gathers: 'the water gathers speed.',
    delivers: 'the ram delivers.',
    recoils: 'the water recoils.',
    shut: 'the ram stands shut.',
  }[kind];
}

function valveInWords(opening: number, stroke: number, system: System): string {
  if (opening === 0) return 'The waste valve is shut.';
  if (opening >= stroke) return 'The waste valve is wide open.';
  const of = formatQuantity(stroke, 'stroke', system);
  return `The waste valve is open ${fixedQuantity(opening, 'stroke', system)} of ${of}.`;
}

type FlowWords = (flow: number) => string;

/** Flows that round to nought in every unit: a drop in ten seconds. */
const NO_FLOW = 1e-7;

function driveInWords(value: number, flow: FlowWords): string {
  if (Math.abs(value) < NO_FLOW) return 'The water in the drive line stands still at the ram.';
  const way = value > 0 ? 'runs to the ram' : 'runs back from the ram';
  return `Water ${way} at ${flow(value)}.`;
}

function wasteInWords(value: number, isShut: boolean, flow: FlowWords): string {
  if (Math.abs(value) < NO_FLOW) return '';
  if (isShut) {
    return value > 0
      ? `${flow(value)} leaks by the snifter.`
      : `The snifter draws ${flow(value)} in.`;
  }
  return value > 0
    ? `${flow(value)} leaves by the waste valve.`
    : `${flow(value)} is drawn in through the waste valve.`;
}

function deliveryInWords(value: number, flow: FlowWords): string {
  if (Math.abs(value) < NO_FLOW) return 'The delivery valve is shut.';
  return value > 0
    ? `${flow(value)} passes the delivery valve into the vessel.`
    : `${flow(value)} slips back through the delivery valve before it shuts.`;
}

export interface Front {
  /** From the source. */
  readonly distance: number;
  readonly before: number;
  readonly behind: number;
}

/** A step smaller than this share of all that the line's head does is no front. */
const LEAST_STEP = 0.2;
/** Nodes over which a front is looked for: the simulation spreads a step over a reach or two, and a valve that takes its time over a few more. */
const FRONT_REACHES = 4;

/** The steepest change of head along the line at one frame: where the pressure wave stands. Undefined when there is none. */
export function frontAt(reel: Pick<Reel, 'film' | 'lineHead'>, frame: number): Front | undefined {
  const { film, lineHead } = reel;
  const heads = headAlong(reel, frame);
  let best: Front | undefined;
  let steepest = LEAST_STEP * (lineHead.high - lineHead.low);
  for (let node = 0; node + FRONT_REACHES < film.nodes; node++) {
    const before = heads[node] ?? 0;
    const behind = heads[node + FRONT_REACHES] ?? 0;
    if (Math.abs(behind - before) <= steepest) continue;
    steepest = Math.abs(behind - before);
    const from = film.distance[node] ?? 0;
    const to = film.distance[node + FRONT_REACHES] ?? 0;
    best = { distance: (from + to) / 2, before, behind };
  }
  return best;
}

function waveInWords(reel: Reel, frame: number, system: System): string {
  const front = frontAt(reel, frame);
  if (front === undefined) return 'no sharp wave stands in the drive line.';
  const head = (value: number): string => fixedQuantity(value, 'head', system);
  return `a wave stands ${fixedQuantity(front.distance, 'pipeLength', system)} from the source, with ${head(front.before)} on its source side and ${head(front.behind)} on the ram’s.`;
}

export interface ReadOut {
  readonly name: string;
  readonly value: string;
}

/** Values at the cursor, always in the same places. */
export function readOuts(reel: Reel, frame: number, system: System): ReadOut[] {
  const { film } = reel;
  const flow = (column: Float64Array): string =>
    fixedQuantity(column[frame] ?? 0, 'sourceFlow', system);
  const opening = film.opening[frame] ?? 0;
  return [
    { name: 'time', value: fixedQuantity(film.time[frame] ?? 0, 'time', system) },
    { name: 'head at the ram', value: fixedQuantity(film.bodyHead[frame] ?? 0, 'head', system) },
    {
      name: 'waste valve',
      value: opening === 0 ? 'shut' : fixedQuantity(opening, 'stroke', system),
    },
    { name: 'drive line', value: flow(film.driveFlow) },
    { name: 'to waste', value: flow(film.wasteFlow) },
    { name: 'delivered', value: flow(film.deliveryFlow) },
  ];
}

/** For the slider: the moment and what happens then. */
export function momentSpoken(reel: Reel, frame: number): string {
  const kind = phaseAt(reel.phases, frame)?.kind ?? 'shut';
  return `${fixedQuantity(reel.film.time[frame] ?? 0, 'time', 'metric')}, ${PHASE_WORDS[kind]}`;
}

/** Less than a drop of water is no change of the air. */
const LEAST_SWING = 5e-8;

/** What the picture takes for granted. */
export function grantedInWords({ film, installation, vesselAir }: Reel, system: System): string[] {
  const { wasteValve } = installation.ram;
  const most = vesselAir.reduce((a, b) => Math.max(a, b), 0);
  const least = vesselAir.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  const swing =
    most - least < LEAST_SWING
      ? ''
      : `: it gives and takes ${formatQuantity(most - least, 'smallVolume', system, { figures: 2 })}`;
  return [
    `The head in the vessel is held at ${formatQuantity(film.point.vesselHead, 'head', system)} through the beat. Its air is worked out from the water that comes in less the even stream that leaves${swing}.`,
    'The delivery valve’s disc is not followed; it is drawn off its seat while water passes.',
    ...(wasteValve.kind === 'swing'
      ? ['The waste valve is a swing check; it is drawn as a disc with the same travel.']
      : []),
  ];
}
