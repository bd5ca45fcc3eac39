/** What the fields of a test say together. Rig and ram are checked as those of a site are, at each setting. */
import { fieldName, type Path } from '../problem.ts';
import type { PathProblem } from '../schema-problems.ts';
import { checkSite, type PartialSite } from '../site/check-site.ts';
import type { BenchTest, ReadingForm } from './test-schema.ts';

type PartialTest = { readonly [Field in keyof BenchTest]?: BenchTest[Field] };

const READ = ['beats', 'delivered', 'wasted', 'supply', 'vesselPressure', 'peakPressure'] as const;

export function checkTest(test: PartialTest): readonly PathProblem[] {
  const found = [...checkRig(test)];
  for (const [index, reading] of (test.readings ?? []).entries()) {
    const at: Path = ['readings', index];
    found.push(...checkReading(reading, at), ...checkSetting(test, reading, at));
  }
  return found;
}

/** The rig and the ram by themselves. */
function checkRig({ rig, ram }: PartialTest): readonly PathProblem[] {
  const { delivery: _, ...rest } = rig ?? {};
  const problems = checkSite({ ...rest, ...(ram !== undefined && { ram }) });
  // Lengths of a delivery line are held against each lift.
  return problems.map((problem) => moved(problem, ['rig']));
}

/** The lift of a setting against the fall. */
function checkSetting(
  { rig }: PartialTest,
  { lift, backPressure, tuning }: ReadingForm,
  at: Path,
): readonly PathProblem[] {
  const height = lift ?? backPressure;
  const site: PartialSite = {
    ...(rig && { fall: rig.fall }),
    ...(height && { lift: height }),
    ...(rig?.delivery && lift && { delivery: rig.delivery }),
    ...(tuning && { ram: tuning }),
  };
  const field = lift ? 'lift' : 'backPressure';
  return checkSite(site).flatMap((problem) => {
    const [first, ...rest] = problem.path;
    // What is wrong with the fall is said once, with the rig.
    if (first === 'fall') return [];
    if (first === 'lift') return [placed(problem, [...at, field, ...rest])];
    if (first === 'ram') {
      // A tuning is no ram of its own: only its numbers are looked at.
      return rest.length === 1 && problem.kind !== 'missing'
        ? [placed(problem, [...at, 'tuning', ...rest])]
        : [];
    }
    return [placed(problem, ['rig', ...problem.path])];
  });
}

function checkReading(reading: ReadingForm, at: Path): readonly PathProblem[] {
  const problems: PathProblem[] = [];
  const report = (kind: PathProblem['kind'], path: Path, message: string): void => {
    problems.push({ kind, field: fieldName(path), path, message });
  };
  if (reading.lift === undefined && reading.backPressure === undefined) {
    report(
      'missing',
      at,
      'What the ram delivers against is missing. Write lift: 6 m, or backPressure: 0.6 bar for a throttled delivery.',
    );
  }
  if (reading.lift && reading.backPressure) {
    report(
      'contradiction',
      [...at, 'backPressure'],
      'A reading has a lift or a throttled back pressure, and not both. A gauge on the vessel is written vesselPressure.',
    );
  }
  if (READ.every((field) => reading[field] === undefined) && reading.handStrokes === undefined) {
    report(
      'missing',
      at,
      'Nothing was read at this setting. Write what was: beats: 62/min, delivered: 1.5 L/min, wasted: 12 L/min.',
    );
  }
  for (const field of ['delivered', 'wasted', 'supply', 'beats'] as const) {
    for (const [index, one] of (reading[field] ?? []).entries()) {
      const path = [...at, field, index];
      if ('times' in one) {
        for (const [place, time] of one.times.entries()) {
          if (!(time.value > 0)) {
            report(
              'outOfRange',
              [...path, 'times', place],
              'The time is nought. Write what the stopwatch showed.',
            );
          }
        }
        continue;
      }
      if (field === 'beats' && !(one.value > 0)) {
        report(
          'outOfRange',
          path,
          'The beats are nought. Leave them out where the ram stood still, and say so in remarks.',
        );
      }
    }
  }
  return problems;
}

function moved(problem: PathProblem, into: Path): PathProblem {
  return problem.path[0] === 'ram' ? problem : placed(problem, [...into, ...problem.path]);
}

function placed(problem: PathProblem, path: Path): PathProblem {
  return { ...problem, path, field: fieldName(path) };
}
