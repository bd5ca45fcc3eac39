/**
 * The worker that answers. It holds no state, so a new one can take its place at any time. Files are another worker's
 * work: the reading of YAML is a third of the code, and no answer needs it.
 */
import type { Answer } from '@fallwright/engine';
import {
  answerFor,
  earlyAnswer,
  sampleAnswer,
  whatWouldChange,
  withPressures,
} from '@fallwright/engine';
import {
  assumptionsInWords,
  cautions,
  changesInWords,
  demandInWords,
  howSureInWords,
  lineNotes,
  measuredInWords,
  reasonsInWords,
  startUpInWords,
  tankInWords,
  waterPlanOf,
} from '@fallwright/papers';
import type { SiteRead } from '@fallwright/records';
import { installationOf, uncertaintiesOf } from '@fallwright/records';
import type { System } from '@fallwright/units';
import { expose } from 'comlink';
import { alternativeFromChange } from '../alternatives/opened.ts';
import type { Glance } from './glance.ts';
import { glanceOf } from './glance.ts';
import type { HowSure } from './how-sure.ts';
import { readSettled } from './settled.ts';
import type { Reply, SiteChanges, SiteOutcome, SitePressures } from './site-answer.ts';

/** The page sends its document as JSON. */
function readDocument(siteText: string): SiteRead {
  const data: unknown = JSON.parse(siteText);
  return readSettled(data);
}

/** @throws RangeError when the document is none that an answer was given for. */
function readAnswered(siteText: string) {
  const read = readDocument(siteText);
  if (!read.ok) throw new RangeError('this is asked only of a site that has an answer');
  return { site: read.site, ...installationOf(read.site) };
}

const work = {
  /** Verdict, flows and start-up: what a person waits for. */
  answer(siteText: string, depth: 'early' | 'whole'): Reply<SiteOutcome> {
    const read = readDocument(siteText);
    if (!read.ok) return { outcome: read };
    const { installation, demand, assumptions } = installationOf(read.site);
    const early = earlyAnswer(installation, {
      ...(demand === undefined ? {} : { demand }),
      changes: false,
    });
    const isEarly = early.lacksPressures && depth === 'early';
    const answer =
      early.lacksPressures && !isEarly ? withPressures(installation, early.answer) : early.answer;
    const plan = waterPlanOf(answer, read.site);
    const value = {
      installation,
      answer,
      ...(plan === undefined ? {} : { plan }),
      assumptions,
      words: inBothSystems((system) => ({
        reasons: reasonsInWords(answer, read.site, system),
        start: startUpInWords(answer, read.site, system),
        assumptions: assumptionsInWords(assumptions, system),
        measured: measuredInWords(read.site, system),
        water: [
          ...demandInWords(answer, read.site, system),
          ...tankInWords(answer, read.site, system),
        ],
        along: lineNotes(answer, read.site, system),
      })),
      cautions: cautions(answer, read.site),
      warnings: read.warnings,
    };
    return { outcome: { ok: true, value, isEarly } };
  },

  /** The pressures of a site that has its early answer: as much work again. */
  pressures(siteText: string, early: Answer): SitePressures {
    const { site, installation } = readAnswered(siteText);
    const answer = withPressures(installation, early);
    return { answer, cautions: cautions(answer, site) };
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

  /** What would change the verdict: many runs, so it comes after, and is left off when nobody waits for it any more. */
  async changes(siteText: string): Promise<Reply<SiteChanges | undefined>> {
    const { installation, demand } = readAnswered(siteText);
    searches += 1;
    const mine = searches;
    const search = whatWouldChange(installation, demand);
    let step = search.next();
    while (step.done !== true) {
      await letOthersIn();
      if (mine !== searches) return { outcome: undefined };
      step = search.next();
    }
    const found = step.value;
    const { changes, materials } = found;
    const outcome = {
      changes,
      materials,
      alternatives: changes.map((change) => alternativeFromChange(change, installation)),
      sentences: inBothSystems((system) => changesInWords(found, system)),
    };
    return { outcome };
  },

  /** The chance that it runs and the band of what it gives, with every number as sure as it is. */
  async howSure(siteText: string): Promise<Reply<HowSure | undefined>> {
    const { site, installation, demand } = readAnswered(siteText);
    searches += 1;
    const mine = searches;
    const run = sampleAnswer(installation, uncertaintiesOf(site), {
      samples: SAMPLES,
      seed: SEED,
      ...(demand === undefined ? {} : { demand }),
    });
    let step = run.next();
    while (step.done !== true) {
      if (step.value.done % SAMPLES_AT_ONCE === 0) {
        await letOthersIn();
        if (mine !== searches) return { outcome: undefined };
      }
      step = run.next();
    }
    const sampled = step.value;
    const { low, high } = sampled.deliveryBand;
    const words = inBothSystems((system) => howSureInWords(sampled, site, system));
    return { outcome: { low, high, words } };
  },

  /** Leaves off the search or the sampling that is running. */
  dropChanges(): void {
    searches += 1;
  },
};

/** Counts the long pieces of work: only the last one goes on. */
let searches = 0;

/** Judgement: the chance is then good to some 3 %, as on the command line. */
const SAMPLES = 200;
const SEED = 1;
/** Judgement: a few milliseconds of work between two looks at what else is asked. */
const SAMPLES_AT_ONCE = 5;

/** A turn for what has been asked meanwhile. */
function letOthersIn(): Promise<void> {
  return new Promise((resolve) => setTimeout(resolve));
}

function inBothSystems<Words>(words: (system: System) => Words): Record<System, Words> {
  return { metric: words('metric'), us: words('us') };
}

export type SiteWork = typeof work;

expose(work);
