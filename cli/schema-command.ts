import { rangeJsonSchema, siteJsonSchema, testJsonSchema } from '@fallwright/records';
import { BadInput } from './bad-input.ts';

const SCHEMAS: Readonly<Record<string, () => unknown>> = {
  site: siteJsonSchema,
  range: rangeJsonSchema,
  test: testJsonSchema,
};

export function schemaCommand(record: string): void {
  const schema = Object.hasOwn(SCHEMAS, record) ? SCHEMAS[record] : undefined;
  if (!schema) {
    const known = Object.keys(SCHEMAS).map((name) => `fallwright schema ${name}`);
    throw new BadInput('the command line', [
      {
        field: 'schema',
        message: `There is no schema called ${record}. Write: ${known.join(', or ')}`,
      },
    ]);
  }
  process.stdout.write(`${JSON.stringify(schema(), null, 2)}\n`);
}
