import { rangeJsonSchema, siteJsonSchema } from '@fallwright/records';
import { BadInput } from './bad-input.ts';

const SCHEMAS: Readonly<Record<string, () => unknown>> = {
  site: siteJsonSchema,
  range: rangeJsonSchema,
};

export function schemaCommand(record: string): void {
  const schema = Object.hasOwn(SCHEMAS, record) ? SCHEMAS[record] : undefined;
  if (!schema) {
    throw new BadInput('the command line', [
      {
        field: 'schema',
        message: `There is no schema called ${record}. Write: fallwright schema site, or fallwright schema range`,
      },
    ]);
  }
  process.stdout.write(`${JSON.stringify(schema(), null, 2)}\n`);
}
