/** When nothing works, or nothing gives enough: what would have to change. */
import {
  type Contender,
  type Field,
  installationOfParts,
  missesOf,
  whatWouldChange,
} from '@fallwright/engine';
import { changesNeeded, missesInWords, shortfallInWords } from '@fallwright/papers';
import { plainFigures } from '@fallwright/units';
import type { ChoiceAbout } from './choice-about.ts';

/** Which bounds failed, and what would make the build run that came nearest. */
export function whatWouldHelp({ choice, request, reader }: ChoiceAbout): readonly string[] {
  const [nearest] = missesOf(choice);
  const parts = nearest && choice.candidate(nearest.key)?.parts;
  const misses = missesInWords(choice, reader);
  if (!nearest || !parts) return misses;
  const search = whatWouldChange(installationOfParts(request.place, parts));
  let step = search.next();
  while (!step.done) step = search.next();
  return [...misses, ...changesNeeded(choice, nearest, step.value, reader)];
}

/** The need is above what can be counted on: how far, and whether more rams side by side would do. */
export function notEnough(about: ChoiceAbout, field: Field): readonly string[] {
  const { request, reader } = about;
  const { shortfall } = field.picks;
  const words = shortfallInWords(field, reader);
  if (!shortfall || words === undefined) return [];
  const most = request.wish.mostRams ?? 1;
  if (shortfall.mostWater >= shortfall.need) {
    const smaller =
      most > 1
        ? ''
        : ' Smaller rams side by side can share the water and be stopped one by one when it is short: try --rams 2.';
    return [
      words,
      `Measure what is not sure, take one with more to spare, or lower the wish with --likely.${smaller}`,
    ];
  }
  const more = ramsThatWouldDo(about, field.contenders, shortfall.need);
  return [
    words,
    more !== undefined && more > most
      ? `${plainFigures(more, 2)} rams side by side, each on its own drive line, would give about that, and the source has the water for them: try --rams ${more}.`
      : 'A larger ram, more fall or a richer source would give more. --why tells what each build was left out for.',
  ];
}

/** Judgement: rams side by side want looking after one by one. */
const MOST_RAMS = 6;

/** The fewest rams alike that would give the need on what the source gives in its driest time. */
function ramsThatWouldDo(
  { request }: ChoiceAbout,
  contenders: readonly Contender[],
  need: number,
): number | undefined {
  const { source, dryFlow } = request.place;
  const given = dryFlow ?? (source.kind === 'steady' ? (source.yield ?? Infinity) : source.inflow);
  const counts = contenders.flatMap(({ run }) => {
    const count = Math.ceil(need / run.deliveryFlow);
    return count <= MOST_RAMS && count * run.supplyFlow <= given ? [count] : [];
  });
  return counts.length === 0 ? undefined : Math.min(...counts);
}
