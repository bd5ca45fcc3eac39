/**
 * The worker that answers. It holds no state, so a new one can take its place at any time. Files are another worker's
 * work: the reading of YAML is a third of the code, and no answer needs it.
 */
import { answerFor } from '@fallwright/engine';
import {
  assumptionsInWords,
  cautions,
  changesInWords,
  reasonsInWords,
  startUpInWords,
} from '@fallwright/papers';
import type { SiteRead } from '@fallwright/records';
import { installationOf, siteFromData } from '@fallwright/records';
import type { System } from '@fallwright/units';
import { expose } from 'comlink';
import { alternativeFromChange } from '../alternatives/opened.ts';
import type { Glance } from './glance.ts';
import { glanceOf } from './glance.ts';
import type { Reply, SiteChanges, SiteOutcome } from './site-answer.ts';

/** The page sends its document as JSON. */
function readDocument(siteText: string): SiteRead {
  const data: unknown = JSON.parse(siteText);
  return siteFromData(data);
}

const work = {
  /** Verdict, flows, pressures and start-up: what a person waits for. */
  answer(siteText: string): Reply<SiteOutcome> {
    const read = readDocument(siteText);
    if (!read.ok) return { outcome: read };
    const { installation, demand, assumptions } = installationOf(read.site);
    const answer = answerFor(installation, {
      ...(demand === undefined ? {} : { demand }),
      changes: false,
      startUp: true,
    });
    const value = {
      installation,
      answer,
      assumptions,
      words: inBothSystems((system) => ({
        reasons: reasonsInWords(answer, read.site, system),
        start: startUpInWords(answer, read.site, system),
        assumptions: assumptionsInWords(assumptions, system),
      })),
      cautions: cautions(answer, read.site),
      warnings: read.warnings,
    };
    return { outcome: { ok: true, value } };
  },

  /** For lists of places: no pressures, no changes. */
  glance(siteText: string): Reply<Glance> {
    const read = readDocument(siteText);
    if (!read.ok)
      return { outcome: { kind: 'notEnoughYet', first: read.problems[0]?.field ?? '' } };
    const { installation, demand } = installationOf(read.site);
    const answer = answerFor(installation, {
      ...(demand === undefined ? {} : { demand }),
      changes: false,
      pressures: false,
    });
    return { outcome: glanceOf(answer) };
  },

  /** What would change the verdict: many runs, so it comes after. */
  changes(siteText: string): SiteChanges {
    const read = readDocument(siteText);
    if (!read.ok) throw new RangeError('changes are asked only of a site that has an answer');
    const { installation, demand } = installationOf(read.site);
    const answer = answerFor(installation, {
      ...(demand === undefined ? {} : { demand }),
      changes: true,
      startUp: false,
      pressures: false,
    });
    return {
      changes: answer.changes,
      alternatives: answer.changes.map((change) => alternativeFromChange(change, installation)),
      materials: answer.materials,
      sentences: inBothSystems((system) => changesInWords(answer, system)),
    };
  },
};

function inBothSystems<Words>(words: (system: System) => Words): Record<System, Words> {
  return { metric: words('metric'), us: words('us') };
}

export type SiteWork = typeof work;

expose(work);
