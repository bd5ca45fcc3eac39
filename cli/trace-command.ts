import { writeFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { traceRun } from '@fallwright/engine';
import { installationOf } from '@fallwright/records';
import { BadInput } from './bad-input.ts';
import { readSiteFile } from './read-file.ts';
import { traceCsv } from './trace-csv.ts';

/** Judgement: ten minutes at some thousand steps a second is a file of some 50 MB; nobody reads more. */
const MOST_SECONDS = 600;

export async function traceCommand(
  file: string,
  options: { readonly out?: string; readonly seconds: string },
): Promise<void> {
  const duration = Number(options.seconds);
  if (!(duration > 0 && duration <= MOST_SECONDS)) {
    throw new BadInput('the command line', [
      {
        field: '--seconds',
        message: `${options.seconds} is no length of time. Write a number of seconds above 0 and at most ${MOST_SECONDS}, like --seconds 3.`,
      },
    ]);
  }
  const { site } = await readSiteFile(file);
  const trace = traceRun(installationOf(site).installation, { duration });
  const csv = traceCsv(trace);
  if (options.out === undefined || options.out === '-') {
    process.stdout.write(csv);
    return;
  }
  writeTo(options.out, file, csv);
  process.stderr.write(`${options.out}: ${trace.time.length} rows.\n`);
}

function writeTo(out: string, site: string, csv: string): void {
  if (resolve(out) === resolve(site)) {
    throw new BadInput(out, [
      { field: '--out', message: 'This is the site file itself. Name another file for the trace.' },
    ]);
  }
  try {
    writeFileSync(out, csv);
  } catch (error) {
    const { message } = error as NodeJS.ErrnoException;
    throw new BadInput(out, [
      {
        field: '--out',
        message: `The trace cannot be written there: ${message}. Name another file.`,
      },
    ]);
  }
}
