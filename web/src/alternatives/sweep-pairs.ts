/** Runs the pairs one after another. A generator, so that whoever drives it can show progress and stop. */
import type { Installation, Ram } from '@fallwright/engine';
import { alternatives } from '@fallwright/engine';
import { installationOf } from '@fallwright/records';
import { readSettled } from '../answer/settled.ts';
import type { Plain, SiteDocument } from '../state/site-document.ts';
import type { Job, PairResult } from './pairs.ts';

export type KeyedResult = readonly [key: string, result: PairResult];

export function* sweepPairs(jobs: readonly Job[]): Generator<KeyedResult, void, void> {
  for (const job of jobs) yield* sweepRow(job);
}

interface ReadyRam {
  readonly key: string;
  readonly ram: Ram;
}

function* sweepRow({ driveName, site, rams }: Job): Generator<KeyedResult, void, void> {
  const ready: ReadyRam[] = [];
  let installation: Installation | undefined;
  for (const { key, entry } of rams) {
    const read = installationWith(site, entry);
    if (typeof read === 'string') {
      yield [key, { kind: 'refused', message: read }];
      continue;
    }
    // Lines and water are the same whichever ram stands there.
    installation ??= read;
    ready.push({ key, ram: read.ram });
  }
  if (installation === undefined) return;
  const drive = { name: driveName, driveLine: installation.driveLine };
  const ramsReady = ready.map(({ ram }) => ram);
  for (const alternative of alternatives(installation, [drive], ramsReady)) {
    const key = ready[alternative.ramIndex]?.key;
    if (key !== undefined) yield [key, { kind: 'answered', alternative }];
  }
}

/** The place with a ram in it, or why it cannot be put together. */
function installationWith(site: SiteDocument, ram: Plain): Installation | string {
  const read = readSettled({ ...site, ram });
  return read.ok
    ? installationOf(read.site).installation
    : read.problems.map(({ message }) => message).join(' ');
}
