/**
 * Photos, recordings and papers as files named by the SHA-256 of what is in them.
 *
 * A file is written under another name, brought to the disk, given its name, and only then entered in the store. So what the
 * store knows is there and whole; a file that nobody knows was cut off half way, and is swept up when the store is opened.
 */
import { createHash, randomUUID } from 'node:crypto';
import { mkdir, open, readdir, rename, rm, stat, unlink } from 'node:fs/promises';
import { join } from 'node:path';
import { attachmentType, BYTES_LOOKED_AT } from './attachment-kinds.ts';
import { type Attachment, type Records, StoreFullError, type StoreProblem } from './store.ts';

/** Judgement: a photo of a phone is 3–8 MB, five minutes of sound as WAV 26 MB. */
export const LARGEST_ATTACHMENT = 32 * 1024 * 1024;

/** Judgement: where several servers share a folder, no upload takes longer, so what is older is nobody's. */
export const LONGEST_UPLOAD = 60 * 60 * 1000;

export const SHA256 = /^[0-9a-f]{64}$/;

export type AttachOutcome =
  | { readonly kind: 'attached'; readonly attachment: Attachment; readonly isNew: boolean }
  | { readonly kind: 'tooLarge' }
  | { readonly kind: 'otherType' }
  /** What came is not what the name says: cut off, or changed on the way. */
  | { readonly kind: 'otherContent'; readonly sha256: string };

export interface AttachmentFiles {
  readonly attach: (
    content: AsyncIterable<Uint8Array>,
    about: { readonly sha256: string; readonly author: string; readonly device: string },
  ) => Promise<AttachOutcome>;
  readonly pathOf: (sha256: string) => string;
  /** Takes away what a broken upload left, and gives how many files; with 0 whatever their age, and whatever the clock says. */
  readonly sweep: (olderThan: number) => Promise<number>;
  /** Reads every file again. */
  readonly problems: () => Promise<readonly StoreProblem[]>;
}

export async function openAttachmentFiles({
  folder,
  records,
  now,
}: {
  readonly folder: string;
  readonly records: Records;
  readonly now: () => Date;
}): Promise<AttachmentFiles> {
  const incoming = join(folder, 'incoming');
  const kept = join(folder, 'kept');
  await mkdir(incoming, { recursive: true });
  await mkdir(kept, { recursive: true });

  const folderOf = (sha256: string): string => join(kept, sha256.slice(0, 2));
  const pathOf = (sha256: string): string => {
    if (!SHA256.test(sha256)) throw new RangeError(`no SHA-256: ${sha256}`);
    return join(folderOf(sha256), sha256);
  };

  const attach: AttachmentFiles['attach'] = async (content, { sha256, author, device }) => {
    const path = pathOf(sha256);
    const temporary = join(incoming, randomUUID());
    try {
      const written = await writeWhole(temporary, content);
      if (written.kind === 'tooLarge') return written;
      if (written.type === undefined) return { kind: 'otherType' };
      if (written.sha256 !== sha256) return { kind: 'otherContent', sha256: written.sha256 };
      await mkdir(folderOf(sha256), { recursive: true });
      await rename(temporary, path);
      await toDisk(folderOf(sha256));
      await toDisk(kept);
      const attachment: Attachment = {
        sha256,
        size: written.size,
        type: written.type,
        author,
        device,
        addedAt: now().toISOString(),
      };
      const isNew = await records.addAttachment(attachment);
      return {
        kind: 'attached',
        attachment: (await records.attachment(sha256)) ?? attachment,
        isNew,
      };
    } catch (error) {
      throw (error as NodeJS.ErrnoException).code === 'ENOSPC' ? new StoreFullError(error) : error;
    } finally {
      await rm(temporary, { force: true });
    }
  };

  /** All files, with the name that the content of a kept one should have. */
  const files = async (): Promise<readonly { readonly path: string; readonly name?: string }[]> => {
    const found: { path: string; name?: string }[] = [];
    for (const name of await readdir(incoming)) found.push({ path: join(incoming, name) });
    for (const part of await readdir(kept)) {
      for (const name of await readdir(join(kept, part))) {
        found.push({ path: join(kept, part, name), name });
      }
    }
    return found;
  };

  return {
    attach,
    pathOf,
    sweep: async (olderThan) => {
      const known = new Set((await records.attachments()).map(({ sha256 }) => sha256));
      let swept = 0;
      for (const { path, name } of await files()) {
        if (name !== undefined && known.has(name)) continue;
        const { mtimeMs } = await stat(path);
        if (olderThan > 0 && now().getTime() - mtimeMs < olderThan) continue;
        await unlink(path);
        swept += 1;
      }
      return swept;
    },
    problems: async () => {
      const problems: StoreProblem[] = [];
      const known = await records.attachments();
      for (const { sha256, size } of known) {
        const where = `attachment ${sha256}`;
        const found = await contentOf(pathOf(sha256));
        if (found === undefined) problems.push({ where, message: 'its file is missing' });
        else if (found.sha256 !== sha256 || found.size !== size) {
          problems.push({ where, message: 'its file holds something else' });
        }
      }
      const names = new Set(known.map(({ sha256 }) => sha256));
      for (const { path, name } of await files()) {
        if (name === undefined || !names.has(name)) {
          problems.push({ where: path, message: 'no record of the store knows this file' });
        }
      }
      return problems;
    },
  };
}

type Whole =
  | { readonly kind: 'tooLarge' }
  | {
      readonly kind: 'whole';
      readonly sha256: string;
      readonly size: number;
      readonly type: string | undefined;
    };

async function writeWhole(path: string, content: AsyncIterable<Uint8Array>): Promise<Whole> {
  const file = await open(path, 'wx');
  try {
    const hash = createHash('sha256');
    let first = Buffer.alloc(0);
    let type: string | undefined;
    let size = 0;
    for await (const chunk of content) {
      size += chunk.length;
      if (size > LARGEST_ATTACHMENT) return { kind: 'tooLarge' };
      if (first.length < BYTES_LOOKED_AT) {
        first = Buffer.concat([first, chunk.subarray(0, BYTES_LOOKED_AT)]);
        type = attachmentType(first);
        // What is of no kind is not written to its end.
        if (first.length >= BYTES_LOOKED_AT && type === undefined) break;
      }
      hash.update(chunk);
      await file.writeFile(chunk);
    }
    await file.sync();
    return { kind: 'whole', sha256: hash.digest('hex'), size, type };
  } finally {
    await file.close();
  }
}

/** A name in a folder is on the disk when the folder is. */
async function toDisk(folder: string): Promise<void> {
  // Windows brings names to the disk by itself, and cannot open a folder.
  if (process.platform === 'win32') return;
  const handle = await open(folder, 'r');
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

async function contentOf(
  path: string,
): Promise<{ readonly sha256: string; readonly size: number } | undefined> {
  const hash = createHash('sha256');
  let size = 0;
  try {
    const file = await open(path, 'r');
    for await (const chunk of file.createReadStream()) {
      hash.update(chunk);
      size += chunk.length;
    }
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
  return { sha256: hash.digest('hex'), size };
}
