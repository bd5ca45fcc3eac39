import { answerFor } from '@fallwright/engine';
import { answerRecord } from '@fallwright/papers';
import { installationOf, systemOf } from '@fallwright/records';
import type { System } from '@fallwright/units';
import { answerPage } from './answer-page.ts';
import { readSiteFile } from './read-file.ts';
import { sampledInView, samplePlan } from './sampled-in-view.ts';

export async function answerCommand(
  file: string,
  options: {
    readonly units?: System;
    readonly json?: boolean;
    readonly samples: string;
    readonly seed: string;
    readonly band: boolean;
  },
): Promise<void> {
  const plan = samplePlan(options);
  const { site, warnings } = await readSiteFile(file);
  const { installation, demand, assumptions } = installationOf(site);
  const system = options.units ?? systemOf(site);
  const answer = answerFor(installation, {
    changes: true,
    startUp: true,
    ...(demand !== undefined && { demand }),
  });
  const sampled = options.band ? sampledInView(site, plan) : undefined;
  const output = options.json
    ? JSON.stringify(answerRecord(answer, site, system, sampled), null, 2)
    : answerPage({ answer, site, assumptions, warnings, system, sampled });
  process.stdout.write(`${output}\n`);
}
