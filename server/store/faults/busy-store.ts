/**
 * A server that is killed in a test: it opens a store and saves and uploads without end, and says of each what was
 * acknowledged. Run: node busy-store.ts '{"folder":"…"}' NAME
 */
import { createHash, randomBytes } from 'node:crypto';
import { writeSync } from 'node:fs';
import { openStore, type StoreOptions } from '../open-store.ts';

const [options = '{}', name = 'busy'] = process.argv.slice(2);
/** Straight to the pipe: what is said is said when the process dies. */
const say = (word: string, of: string | number): void => {
  writeSync(1, `${word} ${of}\n`);
};

say('begun', name);
const store = await openStore(JSON.parse(options) as StoreOptions);
say('open', name);
const uploads = async (): Promise<void> => {
  while (true) {
    const photo = Buffer.concat([Buffer.from([0xff, 0xd8, 0xff]), randomBytes(200_000)]);
    const sha256 = createHash('sha256').update(photo).digest('hex');
    const parts = async function* () {
      for (let at = 0; at < photo.length; at += 16_384) yield photo.subarray(at, at + 16_384);
    };
    const { kind } = await store.files.attach(parts(), { sha256, author: 'Ann', device: name });
    if (kind === 'attached') say('attached', sha256);
  }
};
const saves = async (): Promise<void> => {
  for (let revision = 1; ; revision += 1) {
    const { kind } = await store.records.save({
      kind: 'site',
      id: name,
      base: revision - 1,
      document: { fallwright: 'site@1', name, notes: `state ${revision}` },
      changed: 'the notes',
      author: 'Ann',
      device: name,
      operation: `${revision}`,
    });
    if (kind !== 'saved') throw new Error(`a save ended as ${kind}`);
    say('saved', revision);
  }
};
await Promise.all([saves(), uploads()]);
