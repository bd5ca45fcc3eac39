/** A choice made while a person looks on: how far it is stands on standard error, and a signal ends it with what stands by then. */
import {
  type Choice,
  type ChoiceProgress,
  type ChoiceRequest,
  choose,
  type Installation,
  type UncertainInput,
} from '@fallwright/engine';
import { ChoicePool } from './choice-pool.ts';
import type { WorkerSetUp } from './choice-worker.ts';

export interface ChoiceInView {
  readonly choice: Choice;
  readonly seconds: number;
}

type Screen = Pick<NodeJS.WriteStream, 'isTTY' | 'write'>;

export async function chooseInView(
  request: ChoiceRequest,
  setUp: WorkerSetUp,
  {
    workers,
    unsureOf,
    signal,
  }: {
    readonly workers: number;
    /** What is not sure of a build; absent when nothing is to be judged. */
    readonly unsureOf?: (installation: Installation) => readonly UncertainInput[];
    readonly signal?: AbortSignal;
  },
  screen: Screen = process.stderr,
): Promise<ChoiceInView> {
  const from = performance.now();
  const pool = new ChoicePool(workers, setUp);
  const line = new StatusLine(screen);
  const stop = (): void => pool.stop();
  signal?.addEventListener('abort', stop);
  try {
    const search = choose(request, { judges: unsureOf !== undefined });
    let step = search.next();
    while (!step.done) {
      const { tasks, progress } = step.value;
      const kind = tasks[0]?.kind;
      const sent = tasks.map((task) => ({
        task,
        inputs: task.kind === 'judge' ? (unsureOf?.(task.installation) ?? []) : [],
      }));
      const results = await pool.perform(sent, (done) => {
        line.show(
          kind === 'run'
            ? runsInWords(progress)
            : `${kind === 'judge' ? 'How sure' : 'Picks worked out'}: ${done} of ${tasks.length}`,
        );
      });
      step = search.next({ results, stop: pool.isStopped });
    }
    return { choice: step.value, seconds: (performance.now() - from) / 1000 };
  } finally {
    signal?.removeEventListener('abort', stop);
    line.clear();
    await pool.close();
  }
}

function runsInWords({ combinations, rejected, pruned, decided, runs }: ChoiceProgress): string {
  const done = rejected + pruned + decided;
  const share = Math.floor((100 * done) / Math.max(1, combinations));
  return `${share} % of ${combinations.toLocaleString('en')} combinations, ${runs.toLocaleString('en')} runs`;
}

/** Judgement: five times a second is as often as anybody reads it. */
const BETWEEN_LOOKS = 200;

/** One line that is written over itself, on a terminal alone. */
class StatusLine {
  readonly #screen: Screen;
  #shown = '';
  #last = -Infinity;

  constructor(screen: Screen) {
    this.#screen = screen;
  }

  show(text: string): void {
    const now = performance.now();
    if (!this.#screen.isTTY || now - this.#last < BETWEEN_LOOKS) return;
    this.#last = now;
    this.#screen.write(`\r${text.padEnd(this.#shown.length)}`);
    this.#shown = text;
  }

  clear(): void {
    if (this.#shown !== '') this.#screen.write(`\r${' '.repeat(this.#shown.length)}\r`);
    this.#shown = '';
  }
}
