/** A proposed build as a site file: the place as it was written, with the ram and the pipes that were chosen. */
import type { Parts } from '@fallwright/engine';
import { formatQuantity, readQuantity, type System } from '@fallwright/units';
import type { Given } from '../given.ts';
import { systemOf } from '../site/givens.ts';
import type { PipeLength } from '../site/pipe-fields.ts';
import type { Site } from '../site/site-schema.ts';
import type { OfferForms } from './offers-of.ts';

export type SiteOfBuild =
  | { readonly kind: 'site'; readonly site: Site }
  /** A site file holds one ram on one drive line from the source. */
  | { readonly kind: 'severalRams' | 'fed' };

export function siteOfBuild(site: Site, parts: Parts, forms: OfferForms): SiteOfBuild {
  const { ram, tuning, count, drivePipe, driveLength, feeder, deliveryPipe, vessel } = parts;
  if (count > 1) return { kind: 'severalRams' };
  if (feeder) return { kind: 'fed' };
  const system = systemOf(site);
  const form = forms.ram(ram.key, tuning.name);
  const built = vessel
    ? {
        ...withoutRange(form),
        airVessel: { ...form.airVessel, volume: given(vessel.volume, 'volume', system) },
      }
    : form;
  const way = site.drive.reduce((sum, { length }) => sum + length.value, 0);
  const isStraight = Math.abs(driveLength / way - 1) < 1e-6;
  const drive = chosenLine(site.drive, forms.pipe(drivePipe.key), system);
  return {
    kind: 'site',
    site: {
      ...site,
      drive: [isStraight ? drive : stretched(drive, driveLength, system)],
      ram: built,
      ...(site.delivery && {
        delivery: [chosenLine(site.delivery, forms.pipe(deliveryPipe.key), system)],
      }),
      ...(!site.delivery && {
        delivery: [
          {
            ...forms.pipe(deliveryPipe.key),
            length: given(site.lift.value, 'pipeLength', system),
          },
        ],
      }),
    },
  };
}

/** With another vessel it is no longer the ram of the range. */
function withoutRange(form: ReturnType<OfferForms['ram']>) {
  const { range: _, tuning: __, ...rest } = form;
  return rest;
}

/** The lengths of a way as one length of the chosen pipe, with all their points and fittings. */
function chosenLine(
  lengths: readonly PipeLength[],
  pipe: ReturnType<OfferForms['pipe']>,
  system: System,
): PipeLength {
  const [first, ...more] = lengths;
  if (!first) throw new RangeError('a line must have at least one length of pipe');
  const held = lengths.findLast((length) => length.held !== undefined)?.held;
  const fittings = lengths.flatMap((length) => length.fittings ?? []);
  const whole = {
    ...pipe,
    ...(fittings.length > 0 && { fittings }),
    ...(held !== undefined && { held }),
  };
  if (more.length === 0) {
    const { length, profile, vents } = first;
    return { ...whole, length, ...(profile && { profile }), ...(vents && { vents }) };
  }
  let start = 0;
  const profile: NonNullable<PipeLength['profile']>[number][] = [];
  const vents: Given[] = [];
  for (const part of lengths) {
    const along = (at: Given): Given =>
      start === 0 ? at : given(start + at.value, 'pipeLength', system);
    for (const { at, height } of part.profile ?? []) profile.push({ at: along(at), height });
    for (const vent of part.vents ?? []) vents.push(along(vent));
    start += part.length.value;
  }
  return {
    ...whole,
    length: given(start, 'pipeLength', system),
    ...(profile.length > 0 && { profile }),
    ...(vents.length > 0 && { vents }),
  };
}

/** A line laid in curves: its points lie along it in proportion. */
function stretched(line: PipeLength, length: number, system: System): PipeLength {
  const scale = length / line.length.value;
  const along = (at: Given): Given => given(at.value * scale, 'pipeLength', system);
  return {
    ...line,
    length: given(length, 'pipeLength', system),
    ...(line.profile && {
      profile: line.profile.map(({ at, height }) => ({ at: along(at), height })),
    }),
    ...(line.vents && { vents: line.vents.map(along) }),
  };
}

/** A quantity as a person would write it, so that it reads the same again. */
function given(value: number, purpose: 'pipeLength' | 'volume', system: System): Given {
  const text = formatQuantity(value, purpose, system, { figures: 4 }).replaceAll('\u00a0', ' ');
  const read = readQuantity(text, purpose);
  if (!read.ok) throw new RangeError(`a quantity that was written must read, got ${text}`);
  return { ...read.value, origin: 'stated' };
}
