import { writeRecord } from '../write-record.ts';
import { type Site, siteSchema } from './site-schema.ts';

/** A site back to a tidy YAML text, in the order of the water. */
export function writeSite(site: Site): string {
  return writeRecord(site, Object.keys(siteSchema.shape));
}
