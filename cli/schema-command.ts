import { siteJsonSchema } from '@fallwright/records';
import { BadInput } from './bad-input.ts';

export function schemaCommand(record: string): void {
  if (record !== 'site') {
    throw new BadInput('the command line', [
      {
        field: 'schema',
        message: `There is no schema called ${record}. Write: fallwright schema site`,
      },
    ]);
  }
  process.stdout.write(`${JSON.stringify(siteJsonSchema(), null, 2)}\n`);
}
