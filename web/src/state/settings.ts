/** How a person likes to see things. Kept apart from the place: it belongs to the reader, not to the site. */
import type { System } from '@fallwright/units';
import type { Store } from './store.ts';
import { createStore } from './store.ts';

export type Theme = 'system' | 'paper' | 'night';

export interface Settings {
  readonly system: System;
  readonly theme: Theme;
}

/** What settings need of a browser's storage: enough to be tested with a plain object. */
export interface Keep {
  readonly getItem: (key: string) => string | null;
  readonly setItem: (key: string, value: string) => void;
}

const KEY = 'fallwright.settings';
const THEMES: readonly Theme[] = ['system', 'paper', 'night'];

/** The three countries that measure in feet and gallons; everyone else gets metres until they say otherwise. */
const US_REGIONS = /-(US|LR|MM)\b/i;

export function readSettings(keep: Keep, locale: string): Settings {
  const usual: Settings = { system: US_REGIONS.test(locale) ? 'us' : 'metric', theme: 'system' };
  const text = readQuietly(keep);
  if (text === null) return usual;
  const kept: unknown = parseQuietly(text);
  if (typeof kept !== 'object' || kept === null) return usual;
  const { system, theme } = kept as Partial<Record<keyof Settings, unknown>>;
  return {
    system: system === 'metric' || system === 'us' ? system : usual.system,
    theme: THEMES.find((known) => known === theme) ?? usual.theme,
  };
}

/** A store of settings that writes each change down. */
export function createSettings(keep: Keep, locale: string): Store<Settings> {
  const store = createStore(readSettings(keep, locale));
  store.subscribe(() => {
    try {
      keep.setItem(KEY, JSON.stringify(store.get()));
    } catch {
      // Storage may be full or forbidden: a lost preference is set again with one touch and is not worth a message.
    }
  });
  return store;
}

function readQuietly(keep: Keep): string | null {
  try {
    return keep.getItem(KEY);
  } catch {
    // A browser may forbid storage altogether; then every visit begins with the usual settings.
    return null;
  }
}

function parseQuietly(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
