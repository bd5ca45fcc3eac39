/** A site and what the engine answered, with the few ways of writing numbers that all the words share. */
import type { Answer, Installation, Limit } from '@fallwright/engine';
import { installationOf, type Site } from '@fallwright/records';
import { formatQuantity, type Purpose, plainFigures, type System } from '@fallwright/units';

export interface Answered {
  readonly answer: Answer;
  readonly site: Site;
  readonly installation: Installation;
  readonly system: System;
  readonly show: (value: number, purpose: Purpose, figures?: number) => string;
}

export function answered(answer: Answer, site: Site, system: System): Answered {
  return {
    answer,
    site,
    installation: installationOf(site).installation,
    system,
    show: (value, purpose, figures = 3) => formatQuantity(value, purpose, system, { figures }),
  };
}

export function limitCalled(answer: Answer, kind: Limit['kind']): Limit | undefined {
  return answer.verdict.limits.find((limit) => limit.kind === kind);
}

/** A share as a whole per cent. */
export function perCent(share: number): string {
  return `${plainFigures(Math.round(share * 100), 3)}\u00a0%`;
}

/** Minutes, hours or days, whichever reads best. */
export function duration(seconds: number): string {
  const steps = [
    ['second', 1],
    ['minute', 60],
    ['hour', 3600],
    ['day', 86_400],
  ] as const;
  const [word, size] = steps.findLast(([, least]) => seconds >= 2 * least) ?? steps[0];
  const count = plainFigures(seconds / size, 2);
  return `${count}\u00a0${word}${count === '1' ? '' : 's'}`;
}
