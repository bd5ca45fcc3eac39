/** The text of a file or of standard input, never more of it than such a file may hold. */
import { createReadStream } from 'node:fs';
import { stat } from 'node:fs/promises';
import { LONGEST_TEXT, type Problem, readSite, type Site } from '@fallwright/records';
import { BadInput } from './bad-input.ts';

export interface SiteFile {
  readonly site: Site;
  readonly warnings: readonly Problem[];
}

/** @throws BadInput when there is no such file, or it is no site. */
export async function readSiteFile(file: string): Promise<SiteFile> {
  const name = nameOf(file);
  const read = readSite(await textOf(file, { longest: LONGEST_TEXT, called: 'site file' }));
  if (!read.ok) throw new BadInput(name, read.problems);
  return read;
}

/** What a file is called in messages. */
export function nameOf(file: string): string {
  return file === '-' ? 'standard input' : file;
}

/**
 * A text, cut a little past its longest so that its reader can refuse it.
 *
 * @throws BadInput when there is no such file, or it may not be read.
 */
export async function textOf(
  file: string,
  { longest, called }: { readonly longest: number; readonly called: string },
): Promise<string> {
  const name = nameOf(file);
  try {
    if (file === '-') return await firstPart(process.stdin, longest);
    const about = await stat(file);
    if (about.isDirectory()) throw fault(name, `This is a folder. Name the ${called} in it.`);
    return await firstPart(createReadStream(file), longest);
  } catch (error) {
    if (error instanceof BadInput) throw error;
    throw fault(name, whyUnreadable(error as NodeJS.ErrnoException));
  }
}

/**
 * The bytes of a file, cut a little past the most that such a file may hold.
 *
 * @throws BadInput when there is no such file, or it may not be read.
 */
export async function bytesOf(
  file: string,
  { longest, called }: { readonly longest: number; readonly called: string },
): Promise<Uint8Array> {
  const name = nameOf(file);
  try {
    const parts: Uint8Array[] = [];
    let length = 0;
    if (file !== '-' && (await stat(file)).isDirectory()) {
      throw fault(name, `This is a folder. Name the ${called} in it.`);
    }
    const stream: AsyncIterable<Uint8Array> = file === '-' ? process.stdin : createReadStream(file);
    for await (const part of stream) {
      parts.push(part);
      length += part.length;
      if (length > longest) break;
    }
    return Buffer.concat(parts);
  } catch (error) {
    if (error instanceof BadInput) throw error;
    throw fault(name, whyUnreadable(error as NodeJS.ErrnoException));
  }
}

/** Stops a little past the longest text: a device or a film would never end. */
async function firstPart(
  stream: AsyncIterable<Uint8Array | string>,
  longest: number,
): Promise<string> {
  const decoder = new TextDecoder();
  let text = '';
  for await (const chunk of stream) {
    text += typeof chunk === 'string' ? chunk : decoder.decode(chunk, { stream: true });
    if (text.length > longest) return text;
  }
  return text + decoder.decode();
}

function whyUnreadable(error: NodeJS.ErrnoException): string {
  switch (error.code) {
    case 'ENOENT':
    case 'ENOTDIR':
      return 'There is no such file. Check the name and the folder.';
    case 'EACCES':
    case 'EPERM':
      return 'This file may not be read. Check its permissions.';
    default:
      return `This file cannot be read: ${error.message}.`;
  }
}

function fault(name: string, message: string): BadInput {
  return new BadInput(name, [{ field: '', message }]);
}
