import type { Report } from './check-site.ts';
import type { PipeLength } from './pipe-fields.ts';

const SPELLED_OUT = ['material', 'bore', 'wall', 'roughness', 'rating'] as const;

export function checkPipes(
  line: 'drive' | 'delivery',
  pipes: readonly PipeLength[],
  report: Report,
  { mayLackPipes }: { readonly mayLackPipes: boolean },
): void {
  for (const [index, pipe] of pipes.entries()) {
    if (!mayLackPipes || !isWithoutPipe(pipe)) checkPipe([line, index], pipe, report);
    checkPlaces([line, index], pipe, report);
  }
}

/** Only the way is known: its pipe is still to be chosen. */
export function isWithoutPipe(length: PipeLength): boolean {
  return length.pipe === undefined && SPELLED_OUT.every((field) => length[field] === undefined);
}

function checkPipe(at: readonly (string | number)[], pipe: PipeLength, report: Report): void {
  const nested = typeof pipe.pipe === 'object' ? pipe.pipe : undefined;
  if (pipe.pipe !== undefined) {
    // The rating printed on a hose may stand beside its name: the tables know none.
    const overrides = SPELLED_OUT.filter(
      (field) => pipe[field] !== undefined && (nested || field !== 'rating'),
    );
    for (const field of overrides) {
      report(
        'contradiction',
        [...at, field],
        `The pipe already has its ${field}. Write a name from the tables, or material, bore and wall, and not both.`,
      );
    }
    if (!nested) return;
  }
  const spelled = nested ?? pipe;
  const where = nested ? [...at, 'pipe'] : at;
  if (spelled.material === undefined && spelled.bore === undefined) {
    report(
      'missing',
      where,
      'Which pipe it is is missing. Write pipe: PE100 SDR11 25 (list the names with: fallwright pipes), or material, bore and wall.',
    );
    return;
  }
  if (spelled.material === undefined) {
    report(
      'missing',
      where,
      'The material of the pipe is missing: it decides how hard the water can hit. Write material: PVC hose.',
    );
  }
  if (spelled.bore === undefined) {
    report(
      'missing',
      where,
      'The bore of the pipe is missing: its inside width. Write bore: 12.7 mm.',
    );
  }
  if (
    spelled.bore &&
    spelled.wall &&
    spelled.bore.value > 0 &&
    spelled.wall.value > spelled.bore.value
  ) {
    report(
      'contradiction',
      [...where, 'wall'],
      `The wall is ${spelled.wall.text} but the bore is ${spelled.bore.text}. Check that they are not swapped.`,
    );
  }
}

/** Air and profile points must lie on their own pipe. */
function checkPlaces(at: readonly (string | number)[], pipe: PipeLength, report: Report): void {
  for (const [index, air] of (pipe.air ?? []).entries()) {
    if (air.at && air.at.value > pipe.length.value) {
      report(
        'contradiction',
        [...at, 'air', index],
        `The air is ${air.at.text} along a pipe that is ${pipe.length.text} long. Count from the upper end of this pipe.`,
      );
    }
  }
  for (const [index, vent] of (pipe.vents ?? []).entries()) {
    if (vent.value > pipe.length.value) {
      report(
        'contradiction',
        [...at, 'vents', index],
        `The vent is ${vent.text} along a pipe that is ${pipe.length.text} long. Count from the upper end of this pipe.`,
      );
    }
  }
  let last = -1;
  for (const [index, point] of (pipe.profile ?? []).entries()) {
    if (point.at.value > pipe.length.value) {
      report(
        'contradiction',
        [...at, 'profile', index],
        `The point is ${point.at.text} along a pipe that is ${pipe.length.text} long. Count from the upper end of this pipe.`,
      );
    }
    if (!(point.at.value > last)) {
      report(
        'contradiction',
        [...at, 'profile', index],
        'The points of a profile must follow one another from the upper end down. Put them in order, each place once.',
      );
    }
    last = point.at.value;
  }
}
