/** Input that cannot be used: every problem with its line, its field, and what to write instead. */
import type { Problem } from '@fallwright/records';
import { wrapped } from './wrap.ts';

export class BadInput extends Error {
  readonly file: string;
  readonly problems: readonly Pick<Problem, 'field' | 'line' | 'message'>[];
  /** What can be done about all of them at once. */
  readonly advice: string | undefined;

  constructor(file: string, problems: BadInput['problems'], advice?: string) {
    super(`${file} cannot be used`);
    this.file = file;
    this.problems = problems;
    this.advice = advice;
  }
}

export function printBadInput({ file, problems, advice }: BadInput): void {
  const count = problems.length === 1 ? 'One problem' : `${problems.length} problems`;
  const lines = problems.flatMap(({ field, line, message }) => {
    const where = [line === undefined ? '' : `line ${line}`, field].filter((part) => part !== '');
    return [
      ...(where.length > 0 ? [`  ${where.join(', ')}`] : []),
      ...wrapped(message, { indent: '    ' }),
    ];
  });
  if (advice !== undefined) lines.push(...wrapped(advice));
  process.stderr.write(`${count} in ${file}:\n${lines.join('\n')}\n`.replaceAll('\u00a0', ' '));
}
