/** From a key to the new answer on screen, one key at a time, each of which changes what the answer says. */

import type { Workshop } from './browser.ts';
import { settled } from './browser.ts';
import type { Asked, KeyMoments } from './in-page.ts';
import { awaitKey } from './in-page.ts';

export interface Stroke extends KeyMoments {
  /** The question that the shown answer came from. */
  readonly asked: Asked & { readonly answered: number };
}

/** A box, the text that it begins with, and the digits typed one after another in the place of one of it. */
interface Typed {
  readonly id: string;
  readonly text: string;
  readonly digit: number;
  readonly keys: string;
}

/** Values that a person might well try at these places. */
const TYPED: Readonly<Record<string, readonly Typed[]>> = {
  'Larkrise spring': [
    { id: 'field-fall', text: '1.9 m', digit: 2, keys: '7859684957' },
    { id: 'field-lift', text: '12 m', digit: 1, keys: '3546172834' },
    { id: 'field-drive-0-length', text: '14 m', digit: 1, keys: '5638274659' },
    { id: 'field-delivery-0-length', text: '160 m', digit: 1, keys: '2947381529' },
  ],
  'Tarn Hollow': [
    { id: 'field-fall', text: '3.0 m', digit: 2, keys: '24135' },
    { id: 'field-lift', text: '21 m', digit: 1, keys: '35246' },
    { id: 'field-drive-0-length', text: '18 m', digit: 1, keys: '57469' },
    { id: 'field-delivery-0-length', text: '240 m', digit: 1, keys: '29385' },
  ],
};

/** How long the answer to a key is watched, and after how long there is none. */
const WATCHED = 600;
const PATIENCE = 10_000;
/** Rests between keys, in milliseconds, in turn: within a word, between two, and long enough for the search for changes. */
const RESTS = [0, 120, 250, 400];

export async function keystrokes(workshop: Workshop, place: string): Promise<Stroke[]> {
  const page = await workshop.context.newPage();
  await page.goto(await workshop.addressOf(place));
  await settled(page);
  const strokes: Stroke[] = [];
  for (const { id, text, digit, keys } of TYPED[place] ?? []) {
    await page.locator(`[id="${id}"]`).fill(text);
    await settled(page);
    for (const key of keys) {
      await page.waitForTimeout(RESTS[strokes.length % RESTS.length] ?? 0);
      await page.evaluate(awaitKey, { id, digit, watched: WATCHED, patience: PATIENCE });
      await page.keyboard.press(key);
      const { moments, asked } = await page.evaluate(async () => ({
        moments: await window.listening.key,
        asked: window.listening.asked,
      }));
      if (moments === undefined) throw new Error('The page did not listen to the key.');
      const source = asked.find(
        ({ posted, what, answered }) =>
          posted > moments.key && what === 'answer' && answered !== undefined,
      );
      if (source?.answered === undefined) throw new Error('No worker was asked about the key.');
      strokes.push({ ...moments, asked: { ...source, answered: source.answered } });
    }
  }
  await page.close();
  return strokes;
}
