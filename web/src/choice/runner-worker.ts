/** A worker that does what it is handed: runs, judges and quotes combinations, one after another. */
import type { ChoiceResult, ChoiceTask } from '@fallwright/engine';
import { performTask } from '@fallwright/engine';
import { expose } from 'comlink';
import type { ChoiceAsked, ReadChoice } from './choice-request.ts';
import { readChoice } from './choice-request.ts';

let about: ReadChoice | undefined;

const work = {
  /** What cannot be read is told by the chooser; nothing is handed out then. */
  prepare(asked: ChoiceAsked): void {
    const read = readChoice(asked);
    about = read.ok ? read.value : undefined;
  },

  perform(tasks: readonly ChoiceTask[]): ChoiceResult[] {
    if (about === undefined) throw new Error('what is to be chosen for must be told first');
    const { request, judge } = about;
    return tasks.map((task) => performTask(request.place, task, judge));
  },
};

export type RunnerWork = typeof work;

expose(work);
