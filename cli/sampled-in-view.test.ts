/** Tries drawn while a person waits. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { readSite } from '@fallwright/records';
import { expect, test } from 'vitest';
import { BadInput } from './bad-input.ts';
import { sampledInView, samplePlan } from './sampled-in-view.ts';

function larkrise() {
  const path = join(import.meta.dirname, '..', 'examples', 'larkrise-spring.yaml');
  const read = readSite(readFileSync(path, 'utf8'));
  if (!read.ok) throw new Error('the example cannot be read');
  return read.site;
}

test('a terminal sees how far it is, and a clean line after; anything else sees nothing', () => {
  const seen: string[] = [];
  const screen = (isTTY: boolean) => ({
    isTTY,
    write: (text: string | Uint8Array) => {
      seen.push(String(text));
      return true;
    },
  });
  const shown = sampledInView(larkrise(), { samples: 40, seed: 1 }, screen(true));
  expect(seen.slice(0, 2)).toEqual(['\rHow sure: 20 of 40 tries', '\rHow sure: 40 of 40 tries']);
  expect(seen.at(-1)).toMatch(/^\r +\r$/);
  seen.length = 0;
  expect(sampledInView(larkrise(), { samples: 40, seed: 1 }, screen(false))).toEqual(shown);
  expect(seen).toEqual([]);
});

test('numbers that are none are refused together', () => {
  expect(samplePlan({ samples: '500', seed: '-3' })).toEqual({ samples: 500, seed: -3 });
  for (const [samples, seed, count] of [
    ['19', '1', 1],
    ['20001', '1', 1],
    ['many', '0.5', 2],
    ['50.5', ' ', 2],
    ['50', '1e300', 1],
  ] as const) {
    const refused = (() => {
      try {
        return samplePlan({ samples, seed });
      } catch (error) {
        return error;
      }
    })();
    if (!(refused instanceof BadInput)) throw new Error(`${samples}, ${seed} passed`);
    expect(refused.problems).toHaveLength(count);
  }
});
