/** Samples drawn while a person looks on: how far they are stands on standard error, if that is a terminal. */
import { type SampledAnswer, sampleAnswer } from '@fallwright/engine';
import { installationOf, type Site, uncertaintiesOf } from '@fallwright/records';
import { BadInput } from './bad-input.ts';

export interface SamplePlan {
  readonly samples: number;
  readonly seed: number;
}

/** Judgement: fewer than 20 say nothing of a tenth, and 20,000 take half a minute. */
const FEWEST = 20;
const MOST = 20_000;
/** Tries between two looks at the screen. */
const STRIDE = 20;

/** @throws BadInput when the options are no such numbers. */
export function samplePlan(options: {
  readonly samples: string;
  readonly seed: string;
}): SamplePlan {
  const samples = Number(options.samples);
  const seed = Number(options.seed);
  const isCount = Number.isInteger(samples) && samples >= FEWEST && samples <= MOST;
  const isSeed = options.seed.trim() !== '' && Number.isSafeInteger(seed);
  const faults = [
    ...(isCount
      ? []
      : [
          {
            field: '--samples',
            message: `${options.samples} is no number of tries. Write a whole number from ${FEWEST} to ${MOST}, like --samples 500.`,
          },
        ]),
    ...(isSeed
      ? []
      : [
          {
            field: '--seed',
            message: `${options.seed} is no seed. Write a whole number, like --seed 7.`,
          },
        ]),
  ];
  if (faults.length > 0) throw new BadInput('the command line', faults);
  return { samples, seed };
}

export function sampledInView(
  site: Site,
  plan: SamplePlan,
  screen: Pick<NodeJS.WriteStream, 'isTTY' | 'write'> = process.stderr,
): SampledAnswer {
  const { installation, demand } = installationOf(site);
  const run = sampleAnswer(installation, uncertaintiesOf(site), {
    ...plan,
    ...(demand !== undefined && { demand }),
  });
  let line = '';
  let step = run.next();
  while (!step.done) {
    const { done, of } = step.value;
    if (screen.isTTY && done % STRIDE === 0) {
      line = `How sure: ${done} of ${of} tries`;
      screen.write(`\r${line}`);
    }
    step = run.next();
  }
  // The line was for the wait alone.
  if (line !== '') screen.write(`\r${' '.repeat(line.length)}\r`);
  return step.value;
}
