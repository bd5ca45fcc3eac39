/**
 * One place answered by a program: will it run, how much reaches the tank, and how the water falls off with the lift.
 *
 * Run it in a clone with: node examples/answer-a-place.ts
 */
import { answerFor } from '@fallwright/engine';
import { reasonsInWords, verdictWords } from '@fallwright/papers';
import { installationOf, readSite } from '@fallwright/records';
import { formatQuantity } from '@fallwright/units';

const PLACE = `
fallwright: site@1
name: Heron Beck
source: { flow: 30 L/min }
fall: 2.5 m ± 0.1 m
drive: { pipe: galvanised steel DN25, length: 15 m }
ram: DN25
lift: 14 m
delivery: { pipe: PE100 SDR11 20, length: 90 m }
`;

/** The lines that the program prints. */
export function answerAPlace(): readonly string[] {
  const read = readSite(PLACE);
  if (!read.ok) return read.problems.map(({ line, message }) => `line ${line}: ${message}`);

  const { installation } = installationOf(read.site);
  const answer = answerFor(installation, { changes: false });
  const lines = [
    `${read.site.name}: ${verdictWords(answer.verdict.kind)}`,
    ...reasonsInWords(answer, read.site, 'metric'),
  ];
  for (const lift of [8, 14, 20, 30]) {
    const { operatingPoint } = answerFor(
      { ...installation, lift },
      { changes: false, startUp: false, pressures: false },
    );
    const delivered = operatingPoint
      ? formatQuantity(operatingPoint.deliveryFlow, 'daily', 'metric')
      : 'nothing';
    lines.push(`lifted ${formatQuantity(lift, 'height', 'metric')}: ${delivered}`);
  }
  return lines;
}

if (import.meta.main) console.log(answerAPlace().join('\n'));
