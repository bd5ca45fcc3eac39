/** The commands and their options, with an example for each that works as it stands in a clone. */
import { readFileSync } from 'node:fs';
import { Command, Option } from 'commander';
import { answerCommand } from './answer-command.ts';
import { beatsCommand } from './beats-command.ts';
import { chooseCommand } from './choose/choose-command.ts';
import { fitCommand } from './fit-command.ts';
import { pipesCommand } from './pipes-command.ts';
import { profileCommand } from './profile-command.ts';
import { schemaCommand } from './schema-command.ts';
import { testCommand } from './test-command.ts';
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
    .option('--samples <number>', 'tries behind "How sure"', '200')
    .option('--seed <number>', 'whole number that the tries are drawn from', '1')
    .option('--no-band', 'leave out how sure it is')
    .option('--range <file>', 'say what a newer revision of its ram would give (range file)')
    .addHelpText('after', example('fallwright answer examples/larkrise-spring.yaml --units us'))
    .action(answerCommand);

  fallwright
    .command('choose')
    .description('what to build at a place: rams, pipes, vessel and tank, by cost and water')
    .argument(
      '<file>',
      'site file (YAML or JSON); its lines may lack pipes; - reads standard input',
    )
    .option('--range <file>', 'the rams to choose from (range file); typical ones when left out')
    .option('--prices <file>', 'what can be bought (CSV); by water alone when left out')
    .option('--keep-good', 'go on with the good rows of a price list that has bad ones')
    .option('--need <flow>', 'water needed, like "900 L/day"; that of the site when left out')
    .option('--rams <number>', 'most rams side by side', '1')
    .option('--lengths <list>', 'drive lengths to try, like "12 m, 15 m"')
    .option('--vessels', 'try the vessels of the price list in place of the rams’ own')
    .option('--likely <share>', 'chance that a pick must have of doing it', '80 %')
    .option('--why <words>', 'why the builds with all these words were left out')
    .option('--write <file>', 'write a pick as a site file')
    .addOption(
      new Option('--pick <pick>', 'which pick to write')
        .choices(['cheapest', 'water', 'forgiving'])
        .default('cheapest'),
    )
    .addOption(unitsOption())
    .option('--json', 'the choice for programs')
    .option('--samples <number>', 'tries behind each chance', '100')
    .option('--seed <number>', 'whole number that the tries are drawn from', '1')
    .option('--no-chance', 'leave chances out; picks rest on margins alone')
    .option('--workers <number>', 'threads; as many as processors when left out')
    .addHelpText(
      'after',
      `\nExample:\n  $ npx fallwright choose examples/workshop/otter-beck.yaml \\\n      --range examples/workshop/rams.yaml --prices examples/workshop/prices.csv\n`,
    )
    .action(chooseCommand);

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
    .command('profile')
    .description('the profile of a line from a survey: crests, sags, and the block for a site file')
    .argument('<file>', 'survey (GPX or CSV); - reads standard input')
    .addOption(
      new Option('--line <line>', 'which line it is')
        .choices(['drive', 'delivery'])
        .default('drive'),
    )
    .option('--track <number>', 'which line of the file, when it holds several')
    .option('--fall <height>', 'known height of the start of a drive line')
    .option('--lift <height>', 'known height of the end of a delivery line')
    .option('--bore <width>', 'bore of the pipe, for the air its crests may hold')
    .option('--points <number>', 'most points to keep', '40')
    .option('--smooth <length>', 'ground over which heights are averaged; 0 m for not at all')
    .option('--reverse', 'the line was walked against the water')
    .option('--as-far-as-read', 'go on with what could be read of a damaged file')
    .addOption(unitsOption())
    .addHelpText(
      'after',
      example('fallwright profile examples/larkrise-delivery.gpx --line delivery --lift "12 m"'),
    )
    .action(profileCommand);

  fallwright
    .command('beats')
    .description('counts the beats in a recording (WAV) or a pressure log (CSV)')
    .argument('<file>', 'recording or pressure log; - reads standard input')
    .option('--column <name>', 'column of the pressures, when the log holds several')
    .addOption(unitsOption())
    .option('--json', 'every beat with its time, for programs')
    .addHelpText('after', example('fallwright beats examples/bench/tarn-hollow-log.csv'))
    .action(beatsCommand);

  fallwright
    .command('test')
    .description('a bench test: efficiencies, balance, and measured against predicted')
    .argument('<file>', 'test file (YAML or JSON); - reads standard input')
    .addOption(unitsOption())
    .option('--json', 'the same for programs')
    .addHelpText('after', example('fallwright test examples/bench/swallow-test.yaml'))
    .action(testCommand);

  fallwright
    .command('fit')
    .description('fits the uncertain parts of a ram to its bench tests, with 90 % limits')
    .argument('<range>', 'range file (YAML or JSON) that the ram stands in')
    .argument('<tests...>', 'test files of that ram')
    .option('--ram <id>', 'which ram of the range; that of the tests when left out')
    .option('--write', 'write the fitted ram into the range file, as a new revision')
    .addOption(unitsOption())
    .option('--json', 'the same for programs')
    .addHelpText(
      'after',
      `\nExample:\n  $ npx fallwright fit examples/workshop/rams.yaml \\\n      examples/bench/swallow-test.yaml --ram swallow-25\n`,
    )
    .action(fitCommand);

  fallwright
    .command('schema')
    .description('the JSON Schema of a record')
    .argument('<record>', 'which record: site, range or test')
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
