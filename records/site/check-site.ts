/** What the fields of a site say together: missing halves, contradictions, and values no ram has ever seen. */
import { formatQuantity, type System, unitSystemOf } from '@fallwright/units';
import { fieldName, type Path, type ProblemKind } from '../problem.ts';
import type { PathProblem } from '../schema-problems.ts';
import { checkDemand, checkTank } from './check-demand.ts';
import { checkGauging } from './check-gauging.ts';
import { checkLimit } from './check-limits.ts';
import { checkMeasured } from './check-measured.ts';
import { checkPipes } from './check-pipes.ts';
import { checkRam } from './check-ram.ts';
import { checkSource } from './check-source.ts';
import { givensOf } from './givens.ts';
import { LIMITS } from './limits.ts';
import type { Site } from './site-schema.ts';

/** Adds a problem; `unusual` ones are warnings. */
export type Report = (kind: ProblemKind, path: Path, message: string) => void;

/** Fields that could not be read are absent, so that the rest is still checked. */
export type PartialSite = { readonly [Field in keyof Site]?: Site[Field] };

export function checkSite(
  site: PartialSite,
  /** Whether the pipes are still to be chosen, so that a line may be a way alone. */
  { mayLackPipes = false }: { readonly mayLackPipes?: boolean } = {},
): readonly PathProblem[] {
  const problems: PathProblem[] = [];
  const report: Report = (kind, path, message) => {
    problems.push({ kind, field: fieldName(path), path, message });
  };
  const system = site.units ?? unitSystemOf(givensOf(site).map(({ given }) => given.text));
  checkLimits(site, system, report);
  checkHeights(site, system, report);
  if (site.source) checkSource(site.source, report);
  if (site.demand) checkDemand(site.demand, system, report);
  if (site.tank) checkTank(site.tank, site.demand !== undefined, report);
  if (site.source) checkGauging(site.source, system, report);
  checkMeasured('fall', site.fall, system, report);
  checkMeasured('lift', site.lift, system, report);
  for (const line of ['drive', 'delivery'] as const) {
    const pipes = site[line];
    if (pipes) checkPipes(line, pipes, report, { mayLackPipes });
  }
  checkLengths(site, system, report);
  if (site.ram !== undefined && typeof site.ram !== 'string') checkRam(site.ram, report);
  return problems;
}

function checkLimits(site: PartialSite, system: System, report: Report): void {
  for (const { path, given } of givensOf(site)) {
    const limit = LIMITS[path.filter((step) => typeof step === 'string').join('.')];
    if (!limit) continue;
    checkLimit(given, limit, { path, system, report });
  }
}

function checkHeights({ fall, lift }: PartialSite, system: System, report: Report): void {
  if (!fall || !lift) return;
  const show = (value: number): string => formatQuantity(value, 'height', system);
  if (!(lift.value > fall.value)) {
    report(
      'contradiction',
      ['lift'],
      `The lift is ${show(lift.value)} ${lift.value === fall.value ? 'and so is' : 'but'} the fall${lift.value === fall.value ? '' : ` is ${show(fall.value)}`}. A ram lifts above its source. Check that both were measured from the waste valve’s outlet.`,
    );
  } else if (lift.value > 30 * fall.value) {
    // Common practice, no source: rams lift up to some 10 to 20 times their fall, a few to 30.
    report(
      'unusual',
      ['lift'],
      `The lift is ${show(lift.value)}, over 30 times the fall of ${show(fall.value)}. Few rams lift so far. Check both.`,
    );
  }
}

/** A pipe cannot be shorter than the height it spans. */
function checkLengths(
  { fall, lift, drive, delivery }: PartialSite,
  system: System,
  report: Report,
): void {
  const total = (pipes: PartialSite['drive']): number =>
    (pipes ?? []).reduce((sum, pipe) => sum + pipe.length.value, 0);
  const show = (value: number): string => formatQuantity(value, 'pipeLength', system);
  if (fall && drive && total(drive) < fall.value) {
    report(
      'contradiction',
      ['drive'],
      `The drive line is ${show(total(drive))} long but falls ${show(fall.value)}. It must be at least as long as the fall. Check both.`,
    );
  }
  if (lift && delivery && total(delivery) < lift.value) {
    report(
      'unusual',
      ['delivery'],
      `The delivery line is ${show(total(delivery))} long but rises ${show(lift.value)}. Check both, unless the lift stands for a pressure.`,
    );
  }
}
