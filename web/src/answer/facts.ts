/** The grid of facts under an answer: names and figures in the person's units. */
import type { Answer, Installation, PressureCheckRow } from '@fallwright/engine';
import { duration } from '@fallwright/papers';
import type { System } from '@fallwright/units';
import { formatQuantity, plainFigures } from '@fallwright/units';

export interface Fact {
  readonly name: string;
  readonly value: string;
  readonly note?: string;
  readonly isDanger?: boolean;
  /** Still that of the input before: the new one is being worked out. */
  readonly isOld?: boolean;
}

/** `pressuresBefore`: those of the input before, for an answer that has none of its own yet. */
export function factsOf(
  answer: Answer,
  installation: Installation,
  system: System,
  pressuresBefore?: Answer['pressureCheck'],
): Fact[] {
  const flow = (value: number): string => formatQuantity(value, 'sourceFlow', system);
  const { operatingPoint: point, startUp } = answer;
  const pressureCheck = answer.pressureCheck ?? pressuresBefore;
  const isOld = answer.pressureCheck === undefined;
  const facts: Fact[] = [];
  if (point !== undefined) {
    facts.push(
      { name: 'beats', value: formatQuantity(point.beatFrequency, 'beats', system) },
      { name: 'water taken', value: flow(point.supplyFlow), note: ofTheSource(installation, flow) },
      { name: 'runs to waste', value: flow(point.wasteFlow) },
      {
        name: 'lifted at each beat',
        value: formatQuantity(point.deliveredPerBeat, 'smallVolume', system),
      },
    );
  }
  facts.push(
    { name: 'line can reach', value: flow(answer.terminalFlow), note: 'waste valve held open' },
    { name: 'valve shuts at', value: flow(answer.closingFlow) },
  );
  if (answer.drainTime !== undefined) {
    facts.push({ name: 'a full store lasts', value: duration(answer.drainTime) });
  }
  if (startUp !== undefined) facts.push({ name: 'start', value: startInWords(startUp) });
  if (pressureCheck !== undefined) {
    const lowest: Fact = {
      name: 'lowest head',
      value: formatQuantity(pressureCheck.lowestHead, 'head', system),
      ...(pressureCheck.hasCavity ? { note: 'the water column parts', isDanger: true } : {}),
    };
    const ofPressure = [...pressureFacts(pressureCheck.rows, system), lowest];
    facts.push(...ofPressure.map((fact) => (isOld ? { ...fact, isOld } : fact)));
  }
  if (point !== undefined) {
    facts.push(
      { name: 'efficiency, D’Aubuisson', value: plainFigures(point.daubuissonEfficiency, 2) },
      { name: 'efficiency, Rankine', value: plainFigures(point.rankineEfficiency, 2) },
    );
  }
  return facts;
}

function ofTheSource({ source }: Installation, flow: (value: number) => string): string {
  if (source.kind === 'store') return `${flow(source.inflow)} runs in`;
  return source.yield === undefined ? 'the source has plenty' : `of ${flow(source.yield)}`;
}

function startInWords(startUp: NonNullable<Answer['startUp']>): string {
  if (startUp.outcome === 'never') return 'never goes on';
  if (startUp.handStrokes === 0) return 'by itself';
  return startUp.handStrokes === 1 ? 'one push' : `${startUp.handStrokes} hand strokes`;
}

/** The highest pressure of the run, the bound for a dead stop of the water, and every part that goes over its rating. */
function pressureFacts(rows: readonly PressureCheckRow[], system: System): Fact[] {
  const pressure = (value: number): string =>
    formatQuantity(value, 'pressure', system, { figures: 2 });
  const rated = ({ rating, part }: PressureCheckRow): string =>
    rating === undefined ? 'no rating is known' : `of ${pressure(rating)}, ${part.name}`;
  const peak = highest(rows, (row) => row.simulatedPeak);
  const bound = highest(rows, (row) => row.joukowskyBound ?? 0);
  return [
    ...(peak === undefined
      ? []
      : [
          {
            name: 'peak in the drive line',
            value: pressure(peak.simulatedPeak),
            note: 'from the simulated beat',
          },
        ]),
    ...(bound?.joukowskyBound === undefined
      ? []
      : [{ name: 'Joukowsky bound', value: pressure(bound.joukowskyBound), note: rated(bound) }]),
    ...rows
      .filter((row) => row.outcome === 'over')
      .map((row) => ({
        name: 'over its rating',
        value: pressure(row.governing),
        note: rated(row),
        isDanger: true,
      })),
  ];
}

function highest(
  rows: readonly PressureCheckRow[],
  of: (row: PressureCheckRow) => number,
): PressureCheckRow | undefined {
  return rows.reduce<PressureCheckRow | undefined>(
    (most, row) => (most === undefined || of(row) > of(most) ? row : most),
    undefined,
  );
}
