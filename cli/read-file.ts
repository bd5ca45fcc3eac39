/** The text of a file or of standard input, never more of it than a site file may hold. */
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
  const name = file === '-' ? 'standard input' : file;
  const read = readSite(await textOf(file, name));
  if (!read.ok) throw new BadInput(name, read.problems);
  return read;
}

async function textOf(file: string, name: string): Promise<string> {
  try {
    if (file === '-') return await firstPart(process.stdin);
    const about = await stat(file);
    if (about.isDirectory()) throw fault(name, 'This is a folder. Name the site file in it.');
    return await firstPart(createReadStream(file));
  } catch (error) {
    if (error instanceof BadInput) throw error;
    throw fault(name, whyUnreadable(error as NodeJS.ErrnoException));
  }
}

/** Stops a little past the longest site file: a device or a film would never end. */
async function firstPart(stream: AsyncIterable<Uint8Array | string>): Promise<string> {
  const decoder = new TextDecoder();
  let text = '';
  for await (const chunk of stream) {
    text += typeof chunk === 'string' ? chunk : decoder.decode(chunk, { stream: true });
    if (text.length > LONGEST_TEXT) return text;
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
