/** The drive and the delivery line of a site, each read along its length: crests, sags, pressures at rest, advice. */
import { type LineReading, type ProfilePoint, readLine } from '@fallwright/engine';
import { installationOf } from './installation-of.ts';
import { surveyedLineOf } from './line-of.ts';
import type { Site } from './site-schema.ts';

export interface SiteLine {
  readonly line: 'drive' | 'delivery';
  /** From source to ram, or from ram to tank; two points, the ends, when there is no profile. */
  readonly profile: readonly ProfilePoint[];
  readonly isSurveyed: boolean;
  readonly length: number;
  readonly reading: LineReading;
}

/** The delivery line at rest stands under the outlet at the tank. */
export function siteLines(site: Site): readonly SiteLine[] {
  const { installation } = installationOf(site);
  const { fall, lift, driveLine, deliveryLine } = installation;
  return [
    siteLine(site, 'drive', { ...driveLine, upper: fall, lower: 0, surface: fall }),
    siteLine(site, 'delivery', { ...deliveryLine, upper: 0, lower: lift, surface: lift }),
  ];
}

function siteLine(
  site: Site,
  line: 'drive' | 'delivery',
  of: {
    readonly segments: Parameters<typeof surveyedLineOf>[1];
    readonly profile?: readonly ProfilePoint[];
    readonly upper: number;
    readonly lower: number;
    readonly surface: number;
  },
): SiteLine {
  const length = of.segments.reduce((sum, segment) => sum + segment.length, 0);
  const profile = of.profile ?? [
    { distance: 0, elevation: of.upper },
    { distance: length, elevation: of.lower },
  ];
  const surveyed = surveyedLineOf(site[line] ?? [], of.segments, { profile, surface: of.surface });
  return {
    line,
    profile,
    isSurveyed: of.profile !== undefined,
    length,
    reading: readLine(surveyed),
  };
}
