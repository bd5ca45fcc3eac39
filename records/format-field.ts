/** The first line of a record: which record it is, and in which version. */
import * as z from 'zod/mini';

/** A literal such as `site@1`, with words for a file of another record, a newer one, or none of ours. */
export function formatField<const Format extends `${string}@${number}`>(format: Format) {
  const [record = '', version = ''] = format.split('@');
  const field = z.literal(format, {
    error: ({ input }) => formatMessage(input, record, Number(version)),
  });
  z.globalRegistry.add(field, {
    description: `Names this format: a ${record}, version ${version}.`,
  });
  return field;
}

function formatMessage(input: unknown, record: string, version: number): string {
  const format = `${record}@${version}`;
  const first = `Write this as the first line: fallwright: ${format}`;
  if (input === undefined) return `The line that names the format is missing. ${first}`;
  const [, other, number] = /^([\w-]+)@(\d+)$/.exec(String(input)) ?? [];
  if (other === record && Number(number) > version) {
    return `${other}@${number}: this file was written by a newer Fallwright. Use that one, or write the file anew as ${format}.`;
  }
  if (other !== undefined && other !== record) {
    return `This file is a ${other} and not a ${record}. ${first}`;
  }
  return `This format is not known here. ${first}`;
}
