import type { Report } from './check-site.ts';
import type { RamForm } from './ram-fields.ts';

export function checkRam(ram: RamForm, report: Report): void {
  checkRangeCopy(ram, report);
  const valve = ram.wasteValve ?? {};
  for (const field of ['stroke', 'weight'] as const) {
    if (ram[field] !== undefined && valve[field] !== undefined) {
      report(
        'contradiction',
        ['ram', field],
        `The ${field} of the waste valve is written twice. Keep one of the two.`,
      );
    }
  }
  const weights = [ram.weight ?? valve.weight, valve.weightInWater].filter(
    (weight) => weight !== undefined,
  );
  const kind = valve.kind ?? 'weighted';
  const forces = (['forceOpen', 'forceShut'] as const).filter(
    (field) => valve[field] !== undefined,
  );
  if (kind === 'weighted') {
    if (weights.length > 1) {
      report(
        'contradiction',
        ['ram', 'wasteValve', 'weightInWater'],
        'Write the weight in air or the weight in water, and not both.',
      );
    }
    for (const field of forces) {
      report(
        'contradiction',
        ['ram', 'wasteValve', field],
        'A weighted valve is held open by its weight. Write weight: 120 g, or kind: sprung or swing with its forces.',
      );
    }
  } else {
    if (valve.forceOpen === undefined) {
      report(
        'missing',
        ['ram', 'wasteValve'],
        `What holds the ${kind} valve open is missing. Write forceOpen: 1.2 N, measured with a hand scale at the open stop.`,
      );
    }
    if (valve.weightInWater !== undefined) {
      report(
        'contradiction',
        ['ram', 'wasteValve', 'weightInWater'],
        `A ${kind} valve is held open by its forces. Count the weight into forceOpen and forceShut.`,
      );
    }
  }
  if (ram.deliveryValve?.bore && ram.deliveryValve.area) {
    report(
      'contradiction',
      ['ram', 'deliveryValve', 'area'],
      'Write the bore of the delivery valve or its area, and not both.',
    );
  }
  if (ram.typical === undefined && ram.bore !== undefined) {
    checkOwnRam(ram, report);
  }
}

/** A ram of one's own needs the three numbers that decide whether it beats. */
function checkOwnRam(ram: RamForm, report: Report): void {
  const valve = ram.wasteValve ?? {};
  const advice = 'Measure it, or begin from a typical ram: typical: DN20.';
  if (valve.seat === undefined) {
    report(
      'missing',
      ['ram'],
      `The seat of the waste valve is missing: the width of the circle on which its disc seats. ${advice}`,
    );
  }
  if ((ram.stroke ?? valve.stroke) === undefined) {
    report(
      'missing',
      ['ram'],
      `The stroke of the waste valve is missing: how far it travels. ${advice}`,
    );
  }
  if (
    (valve.kind ?? 'weighted') === 'weighted' &&
    (ram.weight ?? valve.weight ?? valve.weightInWater) === undefined
  ) {
    report(
      'missing',
      ['ram'],
      `The weight of the waste valve is missing: what its moving parts weigh. ${advice}`,
    );
  }
}

/** A site file stands alone: it holds the parts of the revision that it names. */
function checkRangeCopy({ range, tuning, name: _, ...parts }: RamForm, report: Report): void {
  if (range !== undefined && parts.typical === undefined && parts.bore === undefined) {
    report(
      'missing',
      ['ram', 'range'],
      `The parts of ${range} are missing: a site file holds a copy of them, so that it can be answered alone. Copy what stands under its ram: in the range file, or let fallwright choose --write make the site file.`,
    );
  }
  if (tuning !== undefined && range === undefined) {
    report(
      'missing',
      ['ram', 'tuning'],
      'Of which ram is this the tuning? Write range: swallow-25@3 beside it, or take it out.',
    );
  }
}
