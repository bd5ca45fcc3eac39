/** Why: the limiting cause first, in plain words, with the numbers behind it. */
import type { Answer } from '@fallwright/engine';
import type { Site } from '@fallwright/records';
import { plainFigures, type System, toBeatsPerMinute } from '@fallwright/units';
import { type Answered, answered, limitCalled, perCent } from './answered.ts';
import { fromFullStoreInWords } from './start-up-words.ts';
import { isRunning } from './verdict-words.ts';

export function reasonsInWords(answer: Answer, site: Site, system: System): readonly string[] {
  const about = answered(answer, site, system);
  const sentences = [
    causeOf(about),
    ...(isRunning(answer.verdict.kind) ? whileRunning(about) : []),
  ];
  return [...sentences, demandOf(about)].filter((sentence) => sentence !== undefined);
}

function causeOf(about: Answered): string {
  const { answer, installation, show } = about;
  const fall = show(installation.fall, 'height');
  const terminal = show(answer.terminalFlow, 'sourceFlow');
  const closing = show(answer.closingFlow, 'sourceFlow');
  const reach = `With the valve open, ${fall} of fall can drive ${terminal} through this line. The waste valve shuts at ${closing}`;
  switch (answer.verdict.kind) {
    case 'runs':
    case 'runsAfterHandStart':
      return `${reach}, so it shuts every time${beatsOf(answer)}.`;
    case 'staysOpen':
      return staysOpen(about, reach);
    case 'staysShut':
      return staysShut(about);
    case 'flutters':
      return flutters(about);
    case 'doesNotLift':
      return doesNotLift(about);
    case 'starves':
      return starves(about);
  }
}

function beatsOf({ operatingPoint }: Answer): string {
  if (!operatingPoint) return '';
  return `, ${plainFigures(toBeatsPerMinute(operatingPoint.beatFrequency), 3)} times a minute`;
}

function staysOpen({ answer }: Answered, reach: string): string {
  const short = answer.closingFlow / answer.terminalFlow - 1;
  return short > 0
    ? `${reach}: the water would have to run ${perCent(short)} faster, so the valve stays open and all the water runs to waste.`
    : `${reach}, which the line only just reaches, so the valve hangs open and all the water runs to waste.`;
}

function staysShut({ answer, installation, show }: Answered): string {
  if (answer.operatingPoint && answer.startUp?.outcome === 'never') {
    return `Once going it would run, but ${answer.startUp.handStrokes} strokes by hand from a cold start do not set it going: each time the waste valve shuts and stays shut.`;
  }
  const recoil = limitCalled(answer, 'recoil');
  const shut = `Once shut, the waste valve is held by the ${show(installation.fall, 'height')} of fall above it; only the recoil after each blow can let it open again.`;
  if (!recoil) return `${shut} Here the recoil is too weak.`;
  const has = show(recoil.has, 'head');
  const needs = show(recoil.needs, 'head');
  return recoil.has < recoil.needs
    ? `${shut} That takes about ${needs} of head in the air vessel, and here it has ${has}.`
    : `${shut} With nothing lost, ${needs} of head in the air vessel would do; here it has ${has}, but what the line and the valves lose leaves the recoil too weak.`;
}

function flutters({ answer, installation, show }: Answered): string {
  const beat = limitCalled(answer, 'beat');
  if (beat && beat.has < beat.needs) {
    const cause =
      installation.driveLine.pockets.length > 0
        ? 'the air caught in the line'
        : 'waves in the line';
    return `The waste valve beats every ${show(beat.has, 'time', 2)}, and the water of the whole line needs ${show(beat.needs, 'time', 2)} to gather speed: the valve only dances on ${cause}. Bleed the line, lay it straight, and tune the valve slower.`;
  }
  const shuts = 'The waste valve shuts and falls open again without pushing water into the vessel';
  const recoil = limitCalled(answer, 'recoil');
  if (recoil && recoil.has < recoil.needs) {
    return `${shuts}. The vessel stands at ${show(recoil.has, 'head')} and should stand at about ${show(recoil.needs, 'head')}: it has too little back pressure to work against.`;
  }
  return `${shuts}: it opens again before the head in the ram has grown to the ${show(recoil?.has ?? installation.lift, 'head')} of the vessel.`;
}

function doesNotLift({ answer, installation, show }: Answered): string {
  const hammer = limitCalled(answer, 'hammer');
  const advice = 'A stiffer, wider or better bled drive line hits harder.';
  if (!hammer) {
    return `Stopping the water in this line does not make the head that a lift of ${show(installation.lift, 'height')} takes. ${advice}`;
  }
  const has = show(hammer.has, 'head');
  const needs = show(hammer.needs, 'head');
  return hammer.has < hammer.needs
    ? `Stopping the water in this line makes ${has} of head at most, and the delivery valve opens only above ${needs}. ${advice}`
    : `Stopping the water at once would make ${has} of head, and the delivery valve opens above ${needs}; but the pipe, the air in it and the valve’s own time give way, and the blow falls short. ${advice}`;
}

function starves({ answer, installation, show, system }: Answered): string {
  const source = limitCalled(answer, 'source');
  const takes = answer.operatingPoint?.supplyFlow ?? source?.needs;
  const { source: water } = installation;
  const gives = water.kind === 'steady' ? (water.yield ?? source?.has) : water.inflow;
  const end = 'The water at the intake drops until the drive line draws air, and the ram stops.';
  if (takes === undefined || gives === undefined) {
    return `The source gives less than the ram takes. ${end}`;
  }
  const given = water.kind === 'steady' ? 'the source gives' : 'what runs into the store is';
  const lasts = fromFullStoreInWords(answer, system);
  return `The ram takes ${show(takes, 'sourceFlow')} and ${given} ${show(gives, 'sourceFlow')}. ${end}${lasts === undefined ? '' : ` ${lasts}`}`;
}

function whileRunning(about: Answered): readonly (string | undefined)[] {
  return [
    hammerOf(about),
    recoilOf(about),
    sourceOf(about),
    workOf(about),
    tightestOf(about),
    irregularOf(about),
  ];
}

function hammerOf({ answer, show }: Answered): string | undefined {
  const hammer = limitCalled(answer, 'hammer');
  if (!hammer) return undefined;
  return `Stopping the water makes up to ${show(hammer.has, 'head')} of head; the air vessel stands at ${show(hammer.needs, 'head')}, so each beat pushes water past the delivery valve.`;
}

function recoilOf({ answer, show }: Answered): string | undefined {
  const recoil = limitCalled(answer, 'recoil');
  if (!recoil || recoil.margin < 0) return undefined;
  return `The recoil reopens the waste valve as long as the vessel stands above about ${show(recoil.needs, 'head')}.`;
}

function sourceOf({ answer, installation, show, system }: Answered): string | undefined {
  const supply = answer.operatingPoint?.supplyFlow;
  if (supply === undefined) return undefined;
  const takes = `It takes ${show(supply, 'sourceFlow')} from the source`;
  const { source } = installation;
  if (source.kind === 'store' && answer.emptying?.end === 'keepsUp') {
    const sinks = fromFullStoreInWords(answer, system);
    return `${show(source.inflow, 'sourceFlow')} runs in, a little less than it takes from the full store. ${sinks ?? ''}`;
  }
  if (source.kind === 'store') {
    return `${takes}, and ${show(source.inflow, 'sourceFlow')} runs in, which keeps up.`;
  }
  if (source.yield === undefined) return `${takes}, which has plenty.`;
  const left = source.yield - supply;
  return left > 0
    ? `${takes}, which gives ${show(source.yield, 'sourceFlow')}; ${show(left, 'sourceFlow', 2)} runs past.`
    : `${takes}, which gives ${show(source.yield, 'sourceFlow')}: all of it.`;
}

function workOf({ answer, show }: Answered): string | undefined {
  const point = answer.operatingPoint;
  if (!point) return undefined;
  const delivered = `Of that ${show(point.deliveryFlow, 'daily')} reach the tank and ${show(point.wasteFlow, 'sourceFlow')} run to waste`;
  return `${delivered}: a Rankine efficiency of ${plainFigures(point.rankineEfficiency, 2)}, or ${plainFigures(point.daubuissonEfficiency, 2)} by D’Aubuisson, with heads above the ram.`;
}

/** Judgement: within 15 % of a limit is close, as falls and flows are seldom known better. */
const TIGHT_MARGIN = 0.15;

function tightestOf({ answer }: Answered): string | undefined {
  const { decidedBy } = answer.verdict;
  if (!(decidedBy.margin < TIGHT_MARGIN)) return undefined;
  const what = {
    closingFlow: 'the flow that shuts the waste valve',
    recoil: 'the back pressure that the recoil needs',
    hammer: 'the head that opens the delivery valve',
    source: 'what the source gives',
    beat: 'the shortest beat that moves the whole line',
  }[decidedBy.kind];
  const advice = 'Measure again before buying.';
  return decidedBy.margin < 0
    ? `It is close: by the plain rule it falls short of ${what} by ${perCent(-decidedBy.margin)}, and only the simulation has it run. ${advice}`
    : `It is close: only ${perCent(decidedBy.margin)} away from ${what}. ${advice}`;
}

function irregularOf({ answer }: Answered): string | undefined {
  const point = answer.operatingPoint;
  if (point?.end.outcome !== 'irregular') return undefined;
  return `Its beats never agreed (they differ by ${perCent(point.beatSpread)}), so these are means over ${point.end.beats} beats.`;
}

function demandOf({ answer, show }: Answered): string | undefined {
  if (!answer.demand) return undefined;
  const needed = show(answer.demand.needed, 'daily');
  const { emptying } = answer;
  if (answer.verdict.kind === 'starves' && emptying) {
    const comes = show(emptying.meanDelivery, 'daily');
    const share = perCent(emptying.meanDelivery / answer.demand.needed);
    return `${needed} are needed, and ${comes} come when it is started once a day: ${share} of the need.`;
  }
  if (!isRunning(answer.verdict.kind)) {
    const how = answer.verdict.kind === 'starves' ? 'once it starves' : 'while it stands';
    return `${needed} are needed, and none will come ${how}.`;
  }
  const delivered = answer.operatingPoint?.deliveryFlow;
  if (delivered === undefined) return undefined;
  const only = answer.demand.isMet ? '' : 'only ';
  const share = perCent(delivered / answer.demand.needed);
  return `${needed} are needed, and ${only}${show(delivered, 'daily')} come: ${share} of the need.`;
}
