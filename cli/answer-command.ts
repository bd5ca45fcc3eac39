import { type Answer, answerFor } from '@fallwright/engine';
import { answerRecord, answersCompared, rangeNewsRecord } from '@fallwright/papers';
import { installationOf, type Site, siteWithNewest, systemOf } from '@fallwright/records';
import type { System } from '@fallwright/units';
import { answerPage, type RangeNews } from './answer-page.ts';
import { rangeIn } from './choose/choose-command.ts';
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
    readonly range?: string;
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
  const news =
    options.range === undefined ? undefined : await newsFrom(options.range, site, answer);
  const output = options.json
    ? JSON.stringify(
        {
          ...answerRecord(answer, site, system, sampled),
          ...(news && { range: rangeNewsRecord(news.news, news.compared, system) }),
        },
        null,
        2,
      )
    : answerPage({ answer, site, assumptions, warnings, system, sampled, news });
  process.stdout.write(`${output}\n`);
}

/** What the range says of the ram of a site, with the answer that its newest revision would have. */
async function newsFrom(file: string, site: Site, answer: Answer): Promise<RangeNews> {
  const news = siteWithNewest(site, (await rangeIn(file)).value);
  if (!('site' in news)) return { news };
  const { installation } = installationOf(news.site);
  return { news, compared: answersCompared(answer, answerFor(installation, { changes: false })) };
}
