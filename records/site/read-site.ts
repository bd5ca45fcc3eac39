/** A site file from its text: the site, or every problem with it by its line. */
import { readRecord } from '../read-record.ts';
import { asSite, SITE_KIND, type SiteRead, WAYS_KIND } from './site-from-data.ts';

/** Reads YAML or JSON text. Never throws on what a person wrote. */
export function readSite(source: string): SiteRead {
  return asSite(readRecord(source, SITE_KIND));
}

/** Reads a site to choose for: as a site, but a line may have a length and no pipe. Such a site cannot be answered yet. */
export function readPlace(source: string): SiteRead {
  return asSite(readRecord(source, WAYS_KIND));
}
