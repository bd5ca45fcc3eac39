/** The source in a site document: a flow that keeps its level, or a store that runs down. */
import type { SiteDocument } from './site-document.ts';
import { valueAt, withValue } from './site-document.ts';

/**
 * The document with another kind of source. What was known of the water goes along: the flow of a spring becomes what runs
 * into its box, and back. Only the word `plenty` cannot be an inflow.
 */
export function withStore(document: SiteDocument, store: string | undefined): SiteDocument {
  const flow = valueAt(document, ['source', 'flow']);
  const inflow = valueAt(document, ['source', 'inflow']);
  if (store === undefined) {
    const emptied = ['store', 'volume', 'area', 'depth', 'inflow'].reduce(
      (changed, key) => withValue(changed, ['source', key], undefined),
      document,
    );
    return inflow === undefined ? emptied : withValue(emptied, ['source', 'flow'], inflow);
  }
  const stored = withValue(
    withValue(document, ['source', 'flow'], undefined),
    ['source', 'store'],
    store,
  );
  return flow === undefined || flow === 'plenty'
    ? stored
    : withValue(stored, ['source', 'inflow'], flow);
}
