/**
 * What is not sure of a build that is only proposed: the place as it was measured, the pipes as they will be laid, the ram as it
 * will be made.
 */
import { type Installation, middleOf } from '@fallwright/engine';
import type { RamForm } from '../site/ram-fields.ts';
import type { Site } from '../site/site-schema.ts';
import {
  FITTINGS,
  HEIGHT,
  judged,
  LENGTH,
  normal,
  ROUGHNESS,
  ramUncertainties,
  type SiteUncertainty,
  sourceUncertainty,
  spreadOf,
  TABLE_BORE,
  UNKNOWN_LENGTH,
  wallSpread,
} from '../site/uncertainties-of.ts';

/** Everything about a build at a site that is not exact. `ram` is what is told of the ram; a typical one when nothing is. */
export function unsureOfBuild(
  site: Site,
  installation: Installation,
  ram: RamForm = {},
): readonly SiteUncertainty[] {
  const last = installation.driveLine.segments.at(-1);
  const inputs = [
    normal('fall', site.fall, HEIGHT),
    normal('lift', site.lift, HEIGHT),
    ...sourceUncertainty(site),
    lengthOf('driveLength', site.drive, installation),
    boreOf('driveBore', installation),
    site.delivery
      ? lengthOf('deliveryLength', site.delivery, installation)
      : judged('deliveryLength', UNKNOWN_LENGTH),
    boreOf('deliveryBore', installation),
    judged('roughness', ROUGHNESS),
    judged('fittings', FITTINGS),
    ...(last ? [judged('wallStiffness', wallSpread(last.pipe.material))] : []),
    ...ramUncertainties(ram, installation),
  ];
  return inputs.filter(({ spread }) => spread > 0);
}

/** The way was measured; a line along it is as sure as the way is, in proportion to its length. */
function lengthOf(
  what: 'driveLength' | 'deliveryLength',
  way: Site['drive'],
  installation: Installation,
): SiteUncertainty {
  const measured = way.reduce((sum, { length }) => sum + length.value, 0);
  const spread = Math.hypot(...way.map(({ length }) => spreadOf(length, LENGTH)));
  const laid = middleOf(installation, what) ?? 0;
  return {
    what,
    spread: (spread / measured) * laid,
    shape: 'normal',
    isGiven: way.every(({ length }) => length.spread !== undefined),
  };
}

function boreOf(what: 'driveBore' | 'deliveryBore', installation: Installation): SiteUncertainty {
  const spread = TABLE_BORE * (middleOf(installation, what) ?? 0);
  return { what, spread, shape: 'normal', isGiven: false };
}
