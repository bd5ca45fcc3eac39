/** What stands in the column `size`: which pipe it is, or which nominal size a part fits. */
import { findPipe, type Pipe } from '@fallwright/engine';
import { quoted, readQuantity } from '@fallwright/units';
import type { Given } from '../given.ts';
import { Assumptions } from '../site/assumption.ts';
import { orList } from '../site/fields.ts';
import { MATERIAL_WORDS, materialCalled } from '../site/materials.ts';
import type { PipeLength } from '../site/pipe-fields.ts';
import { pipeOf } from '../site/pipe-of.ts';
import { BY_INCHES } from '../site/ram-fields.ts';

/** Judgement: twice the longest name in the tables. */
const LONGEST = 80;

type PipeForm = Pick<PipeLength, 'pipe' | 'material' | 'bore' | 'wall' | 'rating'>;

export type PipeRead =
  | {
      readonly ok: true;
      readonly pipe: Pipe;
      /** As it would stand in a site file. */
      readonly form: PipeForm;
    }
  | { readonly ok: false; readonly message: string };

/**
 * `galvanised steel DN25` from the tables, or `PVC hose 25 x 4 mm`: material, bore and wall. A rating that stands beside it
 * counts before that of the table.
 */
export function pipeOfSize(text: string, rating?: Given): PipeRead {
  const assumptions = new Assumptions();
  const asked = text.slice(0, LONGEST);
  const found = findPipe(asked);
  const given = rating ? { rating } : {};
  const length: Given = { value: 1, text: '1 m', origin: 'stated' };
  if (found.ok && text.length <= LONGEST) {
    const form = { pipe: asked, ...given };
    return { ok: true, pipe: pipeOf({ ...form, length }, 'pipe', assumptions), form };
  }
  const [, words = '', bareBore = '', boreUnit = '', wallText] =
    /^(.*?\S)\s+(\d[\d.,/ ]*?)\s*(mm|cm|in|")?(?:\s*[x×]\s*(.+))?$/i.exec(asked) ?? [];
  const material = materialCalled(words);
  if (!material) {
    const nearest = found.ok ? [] : found.suggestions.slice(0, 3);
    const advice =
      nearest.length > 0 ? `Did you mean ${orList(nearest)}? Or spell it out` : 'Spell it out';
    return {
      ok: false,
      message: `No pipe in the tables is called ${quoted(text)}. ${advice}, as material, bore and wall: PVC hose 25 x 4 mm. Materials: ${orList(MATERIAL_WORDS)}.`,
    };
  }
  const unit = /[a-z"]+\s*$/i.exec(wallText ?? '')?.[0] ?? '';
  const bore = readQuantity(`${bareBore} ${boreUnit || unit}`, 'bore', 'the bore');
  const wall = wallText === undefined ? undefined : readQuantity(wallText, 'bore', 'the wall');
  const wrong = [bore, wall].find((read) => read && !read.ok);
  if (!bore.ok || (wall && !wall.ok)) {
    const why = wrong && !wrong.ok ? wrong.problems[0]?.message : '';
    return { ok: false, message: `${why} A pipe is spelled out like PVC hose 25 x 4 mm.` };
  }
  if (wall && wall.value.value > bore.value.value) {
    return {
      ok: false,
      message: `The wall of ${quoted(text)} is wider than its bore. Write the bore first: PVC hose 25 x 4 mm.`,
    };
  }
  const form: PipeForm = {
    material: words.trim(),
    bore: { ...bore.value, origin: 'stated' },
    ...(wall && { wall: { ...wall.value, origin: 'stated' } }),
    ...given,
  };
  return { ok: true, pipe: pipeOf({ ...form, length }, 'pipe', assumptions), form };
}

/** The size that a part fits, in metres: `DN25`, `1 in`, `25 mm`. */
export function partSize(text: string): number | undefined {
  const [, number] = /^dn\s*(\d+)$/i.exec(text.trim()) ?? [];
  if (number !== undefined) return Number(number) > 0 ? Number(number) / 1000 : undefined;
  const inches = /^([\d ./½¼¾-]+?)\s*(?:in|inch|")$/.exec(text.trim())?.[1];
  if (inches !== undefined) {
    const plain = inches
      .replace('½', ' 1/2')
      .replace('¼', ' 1/4')
      .replace('¾', ' 3/4')
      .replace(/(\d)-(\d)/, '$1 $2')
      .replace(/\s+/g, ' ')
      .trim();
    const named = Object.hasOwn(BY_INCHES, plain) ? BY_INCHES[plain] : undefined;
    if (named) return Number(named.slice(2)) / 1000;
  }
  const read = readQuantity(text, 'bore');
  return read.ok && read.value.value > 0 ? read.value.value : undefined;
}
