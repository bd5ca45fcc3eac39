/** The commands and their options, with an example for each that works as it stands in a clone. */
import { readFileSync } from 'node:fs';
import { Command, Option } from 'commander';
import { answerCommand } from './answer-command.ts';
import { pipesCommand } from './pipes-command.ts';
import { schemaCommand } from './schema-command.ts';
import { traceCommand } from './trace-command.ts';

export function program(): Command {
  const fallwright = new Command('fallwright')
    .description(
      'Will a hydraulic ram run on this water, with this pipe, and how much reaches the tank?',
    )
    .version(versionOf())
    .addHelpText('after', example('fallwright answer examples/larkrise-spring.yaml'))
    .exitOverride()
    .showSuggestionAfterError();

  fallwright
    .command('answer')
    .description('the verdict for a site, why, and what would change it')
    .argument('<file>', 'site file (YAML or JSON); - reads standard input')
    .addOption(unitsOption())
    .option('--json', 'the answer for programs')
    .addHelpText('after', example('fallwright answer examples/larkrise-spring.yaml --units us'))
    .action(answerCommand);

  fallwright
    .command('trace')
    .description('heads, flows and valve against time, as CSV in SI units')
    .argument('<file>', 'site file (YAML or JSON); - reads standard input')
    .option('--out <file>', 'where to write the CSV; standard output when left out')
    .option('--seconds <number>', 'how long to follow the ram', '5')
    .addHelpText(
      'after',
      example('fallwright trace examples/larkrise-spring.yaml --out trace.csv --seconds 3'),
    )
    .action(traceCommand);

  fallwright
    .command('pipes')
    .description('the pipes that a site file may name')
    .argument('[search...]', 'only names with all these words')
    .addOption(unitsOption())
    .addHelpText('after', example('fallwright pipes PE100 25'))
    .action(pipesCommand);

  fallwright
    .command('schema')
    .description('the JSON Schema of a record')
    .argument('<record>', 'which record: site')
    .addHelpText('after', example('fallwright schema site'))
    .action(schemaCommand);

  for (const command of fallwright.commands) command.exitOverride();
  return fallwright;
}

function unitsOption(): Option {
  return new Option(
    '--units <system>',
    'units of the answer; those of the file when left out',
  ).choices(['metric', 'us']);
}

function example(line: string): string {
  return `\nExample:\n  $ npx ${line}\n`;
}

function versionOf(): string {
  const text = readFileSync(new URL('./package.json', import.meta.url), 'utf8');
  const { version } = JSON.parse(text) as { readonly version: string };
  return version;
}
