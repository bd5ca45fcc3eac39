/** Input that cannot be used: every problem with its line, its field, and what to write instead. */
import type { Problem } from '@fallwright/records';
import { wrapped } from './wrap.ts';

export class BadInput extends Error {
  readonly file: string;
  readonly problems: readonly Pick<Problem, 'field' | 'line' | 'message'>[];

  constructor(file: string, problems: BadInput['problems']) {
    super(`${file} cannot be used`);
    this.file = file;
    this.problems = problems;
  }
}

export function printBadInput({ file, problems }: BadInput): void {
  const count = problems.length === 1 ? 'One problem' : `${problems.length} problems`;
  const lines = problems.flatMap(({ field, line, message }) => {
    const where = [line === undefined ? '' : `line ${line}`, field].filter((part) => part !== '');
    return [
      ...(where.length > 0 ? [`  ${where.join(', ')}`] : []),
      ...wrapped(message, { indent: '    ' }),
    ];
  });
  process.stderr.write(`${count} in ${file}:\n${lines.join('\n')}\n`.replaceAll('\u00a0', ' '));
}
