/**
 * From a simulated beat to a verdict, with the limit that decides it.
 *
 * Four things have to be so for a ram to run: the line reaches the flow that shuts the waste valve; the recoil opens it again;
 * the hammer lifts over the head in the vessel; and the source gives what the ram takes. Each is compared as what there is
 * against what it takes.
 */

import type { Installation } from '../cycle/installation.ts';
import { delivers } from '../cycle/operating-point.ts';
import type { OperatingPoint, StartUp } from '../cycle/run-record.ts';
import { closingFlow, openingForces, seatArea } from '../machine/waste-valve.ts';
import { joukowskyHead } from '../pipes/joukowsky.ts';
import type { PipeSegment } from '../pipes/pipe.ts';
import { waveSpeed } from '../pipes/wave-speed.ts';
import type { CubicMetrePerSecond, Metre, Ratio, Second } from '../quantities.ts';
import { GRAVITY } from '../quantities.ts';
import type { Limit, Verdict, VerdictKind } from './answer.ts';

/** Most pushes by hand with which a ram still counts as running by itself: the one that opens the valve. */
const PUSHES_OF_A_SELF_STARTER = 1;

/** Judgement: half as much hammer again as the vessel's head should lift, whatever the body gives. */
const FLUTTER_EXCESS = 1.5;

/**
 * Head that the ram can make by stopping its drive line at the closing flow: the fall and a ΔV/g.
 * Source: Joukowsky (1898), see pipes/joukowsky.ts.
 */
export function hammerHead(installation: Installation, flow: CubicMetrePerSecond): Metre {
  const last = installation.driveLine.segments.at(-1) as PipeSegment;
  const velocity = flow / ((Math.PI / 4) * last.pipe.innerDiameter ** 2);
  return installation.fall + joukowskyHead(waveSpeed(last, installation.water), velocity);
}

/**
 * Vessel head that gives recoil enough to open the waste valve again, when nothing is lost: the head in the body swings as
 * far below the fall as it stood above.
 *
 *   h ≥ 2 H − F_shut/(ρ g A_seat)
 *
 * Source: reflection of a wave at an open end (common practice: about twice the fall, no source). The simulation decides;
 * this is the figure that a verdict quotes.
 */
export function recoilHead(installation: Installation): Metre {
  const { ram, water, fall } = installation;
  const opens =
    openingForces(ram.wasteValve).atShut / (water.density * GRAVITY * seatArea(ram.wasteValve));
  return Math.max(fall, 2 * fall - opens);
}

/**
 * Time in which the whole line's water gathers the closing flow, without losses: no beat that moves it all is shorter.
 *
 *   t = L Q_c/(g A H)
 *
 * Source: rigid column without friction, see pipes/rigid-column.ts.
 */
export function gatheringTime(installation: Installation): Second {
  const { driveLine, fall, ram, water } = installation;
  const closing = closingFlow(ram.wasteValve, water.density);
  const perFlow = driveLine.segments.reduce(
    (sum, s) => sum + s.length / ((Math.PI / 4) * s.pipe.innerDiameter ** 2),
    0,
  );
  return (perFlow * closing) / (GRAVITY * fall);
}

/** Judgement: recoil leaves some flow in the line at each opening, so a true beat may be this much shorter. */
const SHORTEST_BEAT: Ratio = 0.6;

function limit(kind: Limit['kind'], has: number, needs: number): Limit {
  return { kind, has, needs, margin: needs > 0 ? has / needs - 1 : Number.MAX_VALUE };
}

/** Every limit of an installation, tightest first. */
function limitsOf(
  installation: Installation,
  point: OperatingPoint,
  terminal: CubicMetrePerSecond,
): Limit[] {
  const closing = closingFlow(installation.ram.wasteValve, installation.water.density);
  const limits = [
    limit('closingFlow', terminal, closing),
    limit('recoil', point.vesselHead, recoilHead(installation)),
    limit(
      'hammer',
      hammerHead(installation, Math.min(terminal, closing)),
      point.vesselHead + installation.ram.deliveryValve.crackingHead,
    ),
  ];
  const { source } = installation;
  const given = source.kind === 'steady' ? source.yield : source.inflow;
  if (given !== undefined && delivers(point)) {
    limits.push(limit('source', given, point.supplyFlow));
  }
  if (point.beatFrequency > 0) {
    limits.push(
      limit('beat', 1 / point.beatFrequency, SHORTEST_BEAT * gatheringTime(installation)),
    );
  }
  return limits.sort((a, b) => a.margin - b.margin);
}

/** Kind of verdict for a run, before a start from cold is looked at. */
export function kindOf(installation: Installation, point: OperatingPoint): VerdictKind {
  switch (point.end.outcome) {
    case 'staysOpen':
      return 'staysOpen';
    case 'staysShut':
      return 'staysShut';
    case 'sourceEmpty':
      return 'starves';
    case 'noDelivery':
      return opensTooSoon(installation, point) ? 'flutters' : 'doesNotLift';
    default: {
      if (point.beatFrequency * SHORTEST_BEAT * gatheringTime(installation) > 1) return 'flutters';
      const { source } = installation;
      const given = source.kind === 'steady' ? source.yield : source.inflow;
      return given !== undefined && point.supplyFlow > given ? 'starves' : 'runs';
    }
  }
}

/**
 * Whether a ram that beats without delivering opens again before its hammer has grown: the flow that it stops could lift over
 * the vessel's head and its body never saw that head.
 */
function opensTooSoon(installation: Installation, point: OperatingPoint): boolean {
  const could = hammerHead(installation, point.flowAtClosing);
  return could > FLUTTER_EXCESS * point.vesselHead && point.peakHead < point.vesselHead;
}

const DECIDED_BY: Record<VerdictKind, Limit['kind'] | undefined> = {
  runs: undefined,
  runsAfterHandStart: undefined,
  staysOpen: 'closingFlow',
  staysShut: 'recoil',
  flutters: 'beat',
  doesNotLift: 'hammer',
  starves: 'source',
};

/** The verdict on a run, with all limits; `start` tells whether a ram that runs also starts by itself. */
export function verdictOn(
  installation: Installation,
  point: OperatingPoint,
  terminal: CubicMetrePerSecond,
  start: StartUp | undefined,
): Verdict {
  const limits = limitsOf(installation, point, terminal);
  let kind = kindOf(installation, point);
  if (kind === 'runs' && start !== undefined) {
    if (start.outcome === 'never') kind = 'staysShut';
    else if (start.handStrokes > PUSHES_OF_A_SELF_STARTER) kind = 'runsAfterHandStart';
  }
  const tightest = limits[0] as Limit;
  // A vessel that stands high enough for the recoil is of no use when the hammer never comes up to it.
  const isBlowTooWeak =
    kind === 'staysShut' &&
    limits.every((l) =>
      l.kind === 'recoil' ? l.margin >= 0 : l.kind !== 'hammer' || l.margin < 0,
    );
  const wanted = isBlowTooWeak ? 'hammer' : DECIDED_BY[kind];
  const decidedBy = limits.find((l) => l.kind === wanted) ?? tightest;
  return { kind, decidedBy, limits };
}
