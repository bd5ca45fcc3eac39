/** A ram of a range as bench tests have it: the tests put on its parts, and the fitted values as its next revision. */
import {
  type FitDone,
  type FitParameter,
  OF_THE_RAM,
  type Ram,
  ramWithFactors,
} from '@fallwright/engine';
import type { Given } from '../given.ts';
import type { Range, RangeRam, TuningForm } from '../range/range-schema.ts';
import { revised } from '../range/revisions.ts';
import { ramFormOf, tuningsOf } from '../range/tunings-of.ts';
import { Assumptions } from '../site/assumption.ts';
import type { RamForm } from '../site/ram-fields.ts';
import { ramOf } from '../site/ram-of.ts';
import { type BenchSetting, settingsOf } from './settings-of.ts';
import type { BenchTest } from './test-schema.ts';

/**
 * The settings of a test with the ram as its range has it now, set up as it was at the test: stroke, weight and springs are those of the
 * test where it says them.
 */
export function settingsOfRam(test: BenchTest, ram: RangeRam): readonly BenchSetting[] {
  return settingsOf({ ...test, ram: setUpAsTested(ramFormOf(ram), test.ram) });
}

function setUpAsTested(form: RamForm, tested: BenchTest['ram']): RamForm {
  if (typeof tested === 'string') return form;
  const { stroke, weight, wasteValve = {} } = tested;
  const { weightInWater, mass, forceOpen, forceShut } = wasteValve;
  const ownStroke = stroke ?? wasteValve.stroke;
  const ownWeight = weight ?? wasteValve.weight;
  const { stroke: baseStroke, weight: baseWeight, wasteValve: base = {}, ...rest } = form;
  const kept: Record<string, unknown> = {
    ...base,
    ...(baseStroke && { stroke: baseStroke }),
    ...(baseWeight && { weight: baseWeight }),
  };
  // A weight told in one way takes the place of one told in another.
  if (ownWeight) delete kept.weightInWater;
  if (weightInWater) delete kept.weight;
  const valve = {
    ...kept,
    ...(ownStroke && { stroke: ownStroke }),
    ...(ownWeight && { weight: ownWeight }),
    ...(weightInWater && { weightInWater }),
    ...(mass && { mass }),
    ...(forceOpen && { forceOpen }),
    ...(forceShut && { forceShut }),
  };
  return { ...rest, wasteValve: valve };
}

export interface FittedRevision {
  readonly range: Range;
  readonly ram: RangeRam;
  /** Fitted parameters that are the rig's and not the ram's: they are told, and stay with the tests. */
  readonly ofTheRig: readonly FitParameter[];
}

/**
 * The range with the fitted ram as a new revision. Values carry one standard uncertainty, so that answers use it. `before` is the ram
 * as the engine has it without any tuning.
 *
 * @throws RangeError when the range has no such ram.
 */
export function withFittedRam(
  range: Range,
  {
    id,
    before,
    fit,
    date,
    change,
  }: {
    readonly id: string;
    readonly before: Ram;
    readonly fit: FitDone;
    readonly date?: string;
    readonly change: string;
  },
): FittedRevision {
  const old = range.rams.find((one) => one.id === id);
  if (!old) throw new RangeError(`id must be that of a ram in the range, got ${id}`);
  const { name: _, ...parts } = ramFormOf(old);
  const ramParts = fittedParts(parts, before, fit);
  const tunings = fittedTunings(old, before, fit);
  const next = revised(range, {
    id,
    ram: ramParts,
    change,
    ...(date !== undefined && { date }),
    ...(tunings && { tunings }),
  });
  const { settings, ...listed } = next.rams.find((one) => one.id === id) as RangeRam;
  const ram: RangeRam = tunings || settings === undefined ? listed : { ...listed, settings };
  const ofTheRig = fit.parameters.map(({ what }) => what).filter((what) => !OF_THE_RAM.has(what));
  const rams = next.rams.map((one) => (one.id === id ? ram : one));
  return { range: { ...next, rams }, ram, ofTheRig };
}

/**
 * Every way of setting the ram up, by the names it had, with its own weight or spring changed as the fit changed the tested one: a
 * weight that was told in air would put the fitted force aside. Nothing when the force was not fitted or there is one way alone.
 */
function fittedTunings(old: RangeRam, before: Ram, fit: FitDone): TuningForm[] | undefined {
  const spread = fit.parameters.find(({ what }) => what === 'closingForce')?.logSpread;
  if (spread === undefined || (!old.tunings && !old.settings)) return undefined;
  return tuningsOf(old).map(({ name, form }) => {
    const ram = ramWithFactors(ramOf(form, before.bore, new Assumptions()), fit.factors);
    const { wasteValve: valve } = ram;
    const stroke = form.wasteValve?.stroke ?? form.stroke;
    return {
      name,
      ...(stroke && { stroke }),
      mass: measured(valve.movingMass, 'g', 1e3, undefined),
      ...(valve.kind === 'weighted'
        ? { weightInWater: measured(valve.submergedWeight, 'N', 1, spread) }
        : {
            forceOpen: measured(valve.forceAtOpen, 'N', 1, spread),
            forceShut: measured(valve.forceAtShut, 'N', 1, spread),
          }),
    };
  });
}

function fittedParts(parts: Omit<RamForm, 'name'>, before: Ram, fit: FitDone): RangeRam['ram'] {
  const after = ramWithFactors(before, fit.factors);
  const spreadOf = (what: FitParameter): number | undefined =>
    fit.parameters.find((one) => one.what === what)?.logSpread;
  const { weight, stroke, wasteValve = {}, deliveryValve = {}, spreads = {}, ...rest } = parts;
  const force = spreadOf('closingForce');
  const drag = spreadOf('drag');
  const wasteLoss = spreadOf('wasteValveLoss');
  const loss = spreadOf('deliveryValveLoss');
  const back = spreadOf('backFlow');
  const give = spreadOf('bodyGive');
  const valve = after.wasteValve;
  const { weight: airWeight, ...otherValve } = wasteValve;
  const isWeighted = valve.kind === 'weighted';
  const keptWeight = weight ?? airWeight;
  const { range: __, tuning: ___, ...plain } = rest;
  const told = {
    ...spreads,
    ...(drag !== undefined && { drag: share(drag) }),
    // A loss goes with the inverse square of its coefficient.
    ...(wasteLoss !== undefined && { wasteValve: share(wasteLoss / 2) }),
    ...(loss !== undefined && { deliveryValve: share(loss) }),
  };
  return {
    ...plain,
    wasteValve: {
      ...otherValve,
      ...(stroke && { stroke }),
      ...(force !== undefined &&
        (isWeighted
          ? {
              mass: measured(valve.movingMass, 'g', 1e3, undefined),
              weightInWater: measured(valve.submergedWeight, 'N', 1, force),
            }
          : {
              forceOpen: measured(valve.forceAtOpen, 'N', 1, force),
              forceShut: measured(valve.forceAtShut, 'N', 1, force),
            })),
      ...(keptWeight && (force === undefined || !isWeighted) && { weight: keptWeight }),
      ...(drag !== undefined && { drag: figures(valve.dragCoefficient) }),
      ...(wasteLoss !== undefined && {
        curtainCoefficient: figures(valve.curtainCoefficient),
        portCoefficient: figures(valve.portCoefficient),
      }),
    },
    deliveryValve: {
      ...deliveryValve,
      ...(loss !== undefined && { loss: figures(after.deliveryValve.lossCoefficient) }),
      ...(back !== undefined && {
        backFlow: measured(after.deliveryValve.backFlowPerBeat, 'mL', 1e6, back),
      }),
    },
    ...(give !== undefined && { give: measured(after.bodyElasticity, 'mL', 1e6, give) }),
    ...(Object.keys(told).length > 0 && { spreads: told }),
  };
}

/** Four figures: more than any bench gives. */
function figures(value: number): number {
  return Number(value.toPrecision(4));
}

function measured(value: number, unit: string, factor: number, spread: number | undefined): Given {
  const shown = figures(value * factor);
  const plusMinus = spread === undefined ? undefined : figures(spread * shown);
  return {
    value: shown / factor,
    ...(plusMinus !== undefined && { spread: plusMinus / factor }),
    origin: 'measured',
    text: plusMinus === undefined ? `${shown} ${unit}` : `${shown} ${unit} ± ${plusMinus} ${unit}`,
  };
}

function share(spread: number): Given {
  const perCent = Number((100 * spread).toPrecision(2));
  return { value: perCent / 100, origin: 'measured', text: `${perCent} %` };
}
