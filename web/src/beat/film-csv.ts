/** The film as a table for other programs: SI, the unit in each head, one row a frame. */
import type { BeatFilm } from '@fallwright/engine';

export function filmCsv(film: BeatFilm): string {
  const rows = [heads(film).join(',')];
  for (let frame = 0; frame < film.frames; frame++) rows.push(row(film, frame).join(','));
  return `${rows.join('\r\n')}\r\n`;
}

function heads({ distance }: BeatFilm): string[] {
  const along = (name: string, unit: string): string[] =>
    distance.map((at) => `${name} at ${figure(at)} m [${unit}]`);
  return [
    'time [s]',
    'waste valve opening [m]',
    'head at the ram [m]',
    'flow in the drive line at the ram [m3/s]',
    'flow to waste [m3/s]',
    'flow delivered [m3/s]',
    ...along('head', 'm'),
    ...along('flow', 'm3/s'),
  ];
}

function row(film: BeatFilm, frame: number): string[] {
  const { nodes } = film;
  const along = (values: Float32Array): string[] =>
    Array.from(values.subarray(frame * nodes, (frame + 1) * nodes), figure);
  return [film.time, film.opening, film.bodyHead, film.driveFlow, film.wasteFlow, film.deliveryFlow]
    .map((column) => figure(column[frame] ?? 0))
    .concat(along(film.lineHead), along(film.lineFlow));
}

/** Six figures: more than the model can mean, few enough for a small file. */
function figure(value: number): string {
  return String(Number(value.toPrecision(6)));
}
