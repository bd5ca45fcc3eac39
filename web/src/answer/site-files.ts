/** Site files in and out of the browser. */

import { textOf } from '../state/entry.ts';
import { withoutEmptyPipes } from '../state/lines.ts';
import type { SiteDocument } from '../state/site-document.ts';
import type { Outcome } from './answerer.ts';
import type { SiteProblem } from './site-answer.ts';

export interface SiteFiles {
  readonly read: (file: File) => Promise<Outcome<SiteDocument, SiteProblem>>;
  readonly save: (document: SiteDocument) => Promise<void>;
  readonly copy: (document: SiteDocument) => Promise<void>;
}

export interface Scribe {
  readonly read: (fileText: string) => Promise<Outcome<SiteDocument, SiteProblem>>;
  readonly write: (siteText: string) => Promise<string>;
}

/** Judgement: the longest site file is far below this; beyond it the browser need not even read the bytes. */
const LARGEST_FILE = 2 * 1024 * 1024;

export function siteFiles(scribe: Scribe): SiteFiles {
  const textFor = (site: SiteDocument): Promise<string> =>
    scribe.write(JSON.stringify(withoutEmptyPipes(site)));
  return {
    read: async (file) => {
      if (file.size > LARGEST_FILE) return tooLarge(file);
      return scribe.read(await file.text());
    },
    save: async (site) => {
      offerFile(await textFor(site), {
        name: fileName(textOf(site.name)),
        type: 'application/yaml',
      });
    },
    copy: async (site) => {
      if (navigator.clipboard === undefined) {
        throw new Error(
          'this browser lets only pages from its own machine or over https copy text',
        );
      }
      await navigator.clipboard.writeText(await textFor(site));
    },
  };
}

function tooLarge(file: File): Outcome<never, SiteProblem> {
  const message = `It holds ${Math.round(file.size / 1024 / 1024)} MB. A site file is a short text that begins with: fallwright: site@1`;
  return { ok: false, problems: [{ kind: 'unreadable', field: '', message }] };
}

/** `Larkrise spring` becomes `larkrise-spring.yaml`. */
export function fileName(placeName: string): string {
  const stem = placeName
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 60);
  return `${stem === '' ? 'site' : stem}.yaml`;
}

/** Hands a text to the person as a download. */
export function offerFile(
  text: string,
  { name, type }: { readonly name: string; readonly type: string },
): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  // The download has begun by then; the browser keeps what it needs.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
