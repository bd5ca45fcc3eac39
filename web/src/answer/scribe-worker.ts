/** The worker that reads and writes site files. It is hired when the first file is opened, saved or copied. */
import { readSite, siteFromData, writeSite } from '@fallwright/records';
import { expose } from 'comlink';
import type { SiteDocument } from '../state/site-document.ts';
import type { Outcome } from './answerer.ts';
import { documentOf } from './document-of.ts';
import { isOfMeasurement } from './settled.ts';
import type { Reply, SiteProblem } from './site-answer.ts';

const work = {
  /** A file's text as a document. One that only lacks something is taken: the page asks for the rest. */
  read(fileText: string): Reply<Outcome<SiteDocument, SiteProblem>> {
    const read = readSite(fileText);
    if (read.ok) return { outcome: { ok: true, value: documentOf(read.site) } };
    const unfinished = unfinishedDocument(fileText);
    return { outcome: unfinished === undefined ? read : { ok: true, value: unfinished } };
  },

  /** The document as the text of a file; unfinished ones as JSON, which is YAML too. */
  write(siteText: string): string {
    const data: unknown = JSON.parse(siteText);
    const read = siteFromData(data);
    return read.ok
      ? writeSite(read.site)
      : `${JSON.stringify(data, undefined, 2)}
`;
  },
};
/** What `write` makes of a place that still lacks something: nothing in it is wrong, but it is not whole. */
function unfinishedDocument(fileText: string): SiteDocument | undefined {
  let data: unknown;
  try {
    data = JSON.parse(fileText);
  } catch {
    return undefined;
  }
  const read = siteFromData(data);
  const isSite = typeof data === 'object' && data !== null && 'fallwright' in data;
  const onlyLacks =
    !read.ok &&
    read.problems.every(
      (problem) => problem.kind === 'missing' || isOfMeasurement(problem, data as SiteDocument),
    );
  return onlyLacks && isSite ? (data as SiteDocument) : undefined;
}

export type ScribeWork = typeof work;

expose(work);
