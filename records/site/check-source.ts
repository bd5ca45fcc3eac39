import type { Report } from './check-site.ts';
import type { SourceForm } from './source-fields.ts';

const STORE_FIELDS = ['volume', 'area', 'depth', 'inflow'] as const;

export function checkSource(source: SourceForm, report: Report): void {
  const at = (field: string) => ['source', field];
  if (source.store === undefined) {
    const stray = STORE_FIELDS.filter((field) => source[field] !== undefined);
    for (const field of stray) {
      report(
        'contradiction',
        at(field),
        `A ${field} belongs to a source that can be drawn down. Add which: store: bucket, tank, spring box or pool.`,
      );
    }
    const isKnown = source.flow ?? source.gauging ?? source.drySeason;
    if (isKnown === undefined && stray.length === 0) {
      report(
        'missing',
        ['source'],
        'What the source gives is missing. Write flow: 14 L/min, or flow: plenty when no ram could empty it, or store: tank with its volume and inflow.',
      );
    }
    return;
  }
  if (source.flow !== undefined) {
    report(
      'contradiction',
      at('flow'),
      `A ${source.store} is drawn down, so it has an inflow and not a flow. Write inflow in place of flow, or take store out.`,
    );
  }
  if (source.volume === undefined && source.area === undefined) {
    report(
      'missing',
      ['source'],
      `How much the ${source.store} holds is missing. Write its volume, like 200 L, or the area of its surface, like 0.3 m2.`,
    );
  }
  const inflow = source.inflow ?? source.gauging ?? source.drySeason;
  if (inflow === undefined && (source.store === 'spring box' || source.store === 'pool')) {
    report(
      'missing',
      ['source'],
      `The inflow of the ${source.store} is missing: what runs into it decides how long the ram can run. Write inflow: 3 L/min.`,
    );
  }
}
