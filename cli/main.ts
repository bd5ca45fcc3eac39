/** The command line program: reads the arguments, runs one command, sets the exit status. */
import { CommanderError } from 'commander';
import { BadInput, printBadInput } from './bad-input.ts';
import { program } from './program.ts';

/** Status of the shell's own convention for wrong use, and ours for input that cannot be read. */
const BAD_INPUT = 2;
const OWN_MISTAKE = 1;

// A reader that has seen enough, such as `head`, closes the pipe: that is no fault.
process.stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(process.exitCode ?? 0);
});

try {
  await program().parseAsync(process.argv);
} catch (error) {
  process.exitCode = exitStatusOf(error);
}

function exitStatusOf(error: unknown): number {
  if (error instanceof BadInput) {
    printBadInput(error);
    return BAD_INPUT;
  }
  // Commander has printed its own line; asking for help or the version is no fault.
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : BAD_INPUT;
  const words = error instanceof Error ? error.message : String(error);
  console.error(`fallwright made a mistake of its own: ${words}`);
  if (process.env.FALLWRIGHT_DEBUG && error instanceof Error) console.error(error.stack);
  else
    console.error('Please report it with the file that shows it. FALLWRIGHT_DEBUG=1 prints where.');
  return OWN_MISTAKE;
}
