/**
 * The air vessel while the ram beats. A settled beat is simulated at one head in the vessel, so its air is worked out from
 * the water that came in less the even stream that leaves, and is never more than a picture of it.
 */
import type { BeatFilm, Installation } from '@fallwright/engine';

/**
 * Air in the vessel in every frame.
 *
 *   V = V₀ h_a/(h_a + h) − ∫(q − q̄) dt, its mean the first term
 *
 * The first term is air squeezed slowly, at one temperature, to the settled head h. The delivery line is taken to carry the
 * mean flow q̄ of the film, as the operating point takes it.
 */
export function vesselAir(
  film: Pick<BeatFilm, 'time' | 'deliveryFlow' | 'frames'> & {
    readonly point: { readonly vesselHead: number; readonly beatFrequency: number };
  },
  installation: {
    readonly ram: Pick<Installation['ram'], 'airVessel'>;
    readonly water: Pick<Installation['water'], 'atmosphericHead'>;
  },
): Float64Array {
  const { volume, airShare } = installation.ram.airVessel;
  const { atmosphericHead } = installation.water;
  const { vesselHead, beatFrequency } = film.point;
  const settled =
    (volume * airShare * atmosphericHead) / (atmosphericHead + Math.max(0, vesselHead));
  const taken = takenIn(film.time, film.deliveryFlow);
  const last = film.frames - 1;
  const isBeating = beatFrequency > 0;
  const meanFlow = isBeating ? (taken[last] ?? 0) / ((film.time[last] ?? 0) || 1) : 0;
  const beyond = taken.map((water, frame) => water - meanFlow * (film.time[frame] ?? 0));
  const middle = isBeating ? beyond.reduce((sum, water) => sum + water, 0) / film.frames : 0;
  return beyond.map((water) => Math.min(volume, Math.max(0, settled - (water - middle))));
}

/** Water that has come in up to each frame, by trapezoids. */
function takenIn(time: Float64Array, flow: Float64Array): Float64Array {
  const taken = new Float64Array(time.length);
  for (let i = 1; i < time.length; i++) {
    const mean = ((flow[i] as number) + (flow[i - 1] as number)) / 2;
    taken[i] = (taken[i - 1] as number) + mean * ((time[i] as number) - (time[i - 1] as number));
  }
  return taken;
}

/** The vessel as it is drawn: a cylinder under half a ball. */
export interface VesselShape {
  readonly radius: number;
  /** Where the half ball meets the cylinder, and where the cylinder ends. */
  readonly shoulder: number;
  readonly floor: number;
}

/** Height in the drawing at which the water stands when air fills a share of the vessel. */
export function waterLevel(airShare: number, { radius, shoulder, floor }: VesselShape): number {
  const dome = (2 / 3) * radius;
  const whole = floor - shoulder + dome;
  const air = Math.min(1, Math.max(0, airShare)) * whole;
  if (air >= dome) return shoulder + air - dome;
  // A cap of a ball: with x = 1 − depth/r, V/πr³ = (2 − 3x + x³)/3, and x³ − 3x + c = 0 is solved by a cosine.
  const c = 2 - (3 * air) / radius;
  const x = 2 * Math.cos((Math.acos(Math.min(1, Math.max(-1, -c / 2))) + 4 * Math.PI) / 3);
  return shoulder - radius * x;
}
