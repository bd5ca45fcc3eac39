/**
 * What a test shows against the prediction, in plain words: which quantity is off, by how much, at which lifts, and where to
 * look.
 *
 * Where to look is common practice, no source; what beats, waste and delivery do together narrows it.
 */
import type { BenchQuantity, ReadingAnswer, Residual, RunOutcome } from '@fallwright/engine';
import { formatQuantity, type System } from '@fallwright/units';
import { type Comparison, gapInWords } from './share-words.ts';

const OF_FLOW: Comparison = { less: 'less', more: 'more', asMuch: 'much' };
const OF_HEAD: Comparison = { less: 'lower', more: 'higher', asMuch: 'high' };
const OF_RATE: Comparison = { less: 'slower', more: 'faster', asMuch: 'fast' };

const SUBJECT: Readonly<Record<BenchQuantity, { readonly verb: string; readonly of: Comparison }>> =
  {
    beatFrequency: { verb: 'Beats', of: OF_RATE },
    deliveryFlow: { verb: 'Delivers', of: OF_FLOW },
    wasteFlow: { verb: 'Wastes', of: OF_FLOW },
    supplyFlow: { verb: 'Takes', of: OF_FLOW },
    vesselHead: { verb: 'The head in the vessel is', of: OF_HEAD },
    peakHead: { verb: 'The peak is', of: OF_HEAD },
  };

const AGREES: Readonly<Record<BenchQuantity, string>> = {
  beatFrequency: 'Beats',
  deliveryFlow: 'Delivery',
  wasteFlow: 'Waste',
  supplyFlow: 'Supply',
  vesselHead: 'Head in the vessel',
  peakHead: 'Peak',
};

const STOPPED: Readonly<Partial<Record<RunOutcome, string>>> = {
  staysOpen: 'the waste valve stays open',
  staysShut: 'the waste valve stays shut',
  noDelivery: 'it beats and delivers nothing',
  sourceEmpty: 'the supply runs dry',
};

interface Off {
  readonly lift: number;
  readonly residual: Residual;
}

type Where = 'everywhere' | 'high' | 'low' | 'some';

/** Sentences, what is off before what agrees. */
export function findings(answers: readonly ReadingAnswer[], system: System): readonly string[] {
  const stopped = answers.filter(({ predicted }) => !predicted.runs);
  const compared = answers.filter(({ predicted }) => predicted.residuals.length > 0);
  const quantities = Object.keys(SUBJECT) as BenchQuantity[];
  const off: Finding[] = [];
  const agree: string[] = [];
  for (const quantity of quantities) {
    const all = compared
      .flatMap(({ reading, predicted }) =>
        predicted.residuals
          .filter((residual) => residual.quantity === quantity)
          .map((residual): Off => ({ lift: reading.lift.value, residual })),
      )
      .sort((a, b) => a.lift - b.lift);
    if (all.length === 0) continue;
    const wrong = wrongWay(all);
    if (wrong.length === 0) agree.push(AGREES[quantity]);
    else off.push(findingOf(quantity, wrong, all, compared, system));
  }
  return [
    ...stopped.map(({ reading, predicted }) => {
      const why = STOPPED[predicted.outcome] ?? 'it does not go on';
      return `At ${liftOf(reading.lift.value, system)} the simulation does not run: ${why}. If the ram did, something of it is not as written: check weight, stroke, bore and fall.`;
    }),
    ...off.map(({ what, look }, place) => {
      // Where beats and waste lead to the same place it is said once.
      const isSaid = off.findIndex((other) => other.look === look) < place;
      return isSaid ? `${what}.` : `${what}: ${look}.`;
    }),
    ...agreeing(agree, compared.length),
  ];
}

/** The readings that are off the same way as most of those that are off, the largest counting. */
function wrongWay(all: readonly Off[]): readonly Off[] {
  const wrong = all.filter(({ residual }) => !residual.agrees);
  const sum = wrong.reduce((total, { residual }) => total + residual.share, 0);
  return wrong.filter(({ residual }) => residual.share * sum > 0);
}

interface Finding {
  readonly what: string;
  readonly look: string;
}

function findingOf(
  quantity: BenchQuantity,
  wrong: readonly Off[],
  all: readonly Off[],
  compared: readonly ReadingAnswer[],
  system: System,
): Finding {
  const where = placeOf(wrong, all);
  const largest = wrong.reduce((best, one) =>
    Math.abs(one.residual.share) > Math.abs(best.residual.share) ? one : best,
  );
  const { share } = largest.residual;
  const lifts = liftsOf(wrong, system);
  const middle = wrong.reduce((sum, { residual }) => sum + residual.share, 0) / wrong.length;
  const places: Readonly<Record<Where, string>> = {
    everywhere: all.length === 1 ? ` at ${lifts}` : ' at every lift',
    high: ` at high lift (${lifts})`,
    low: ` at low lift (${lifts})`,
    some: ` at ${lifts}`,
  };
  const gap = where === 'everywhere' ? middle : share;
  const look = whereToLook(quantity, gap, where, compared);
  const { verb, of } = SUBJECT[quantity];
  return { what: `${verb} ${gapInWords(gap, of)} predicted${places[where]}`, look };
}

function placeOf(wrong: readonly Off[], all: readonly Off[]): Where {
  if (wrong.length === all.length) {
    // All are off, but the highest far more than the lowest: it is the lift that brings it out.
    const [first, last] = [all[0] as Off, all.at(-1) as Off];
    const grows = Math.abs(last.residual.share) / Math.abs(first.residual.share);
    if (all.length > 2 && grows > 2) return 'high';
    return 'everywhere';
  }
  const count = wrong.length;
  const isRun = (part: readonly Off[]): boolean => part.every((one) => wrong.includes(one));
  if (isRun(all.slice(-count))) return 'high';
  if (isRun(all.slice(0, count))) return 'low';
  return 'some';
}

function whereToLook(
  quantity: BenchQuantity,
  gap: number,
  where: Where,
  compared: readonly ReadingAnswer[],
): string {
  const way = (of: BenchQuantity): number => wayOf(of, compared);
  const isLess = gap < 0;
  switch (quantity) {
    case 'deliveryFlow':
      if (!isLess)
        return 'its delivery valve loses less than was taken; check the jug and the watch too';
      if (where === 'high')
        return 'look at the delivery valve: its seat, its loss, and what runs back through it at each beat';
      if (way('peakHead') < 0)
        return 'the hammer is weak: look for air in the body or the drive line, or a pipe that gives';
      return 'look at the delivery valve, and for leaks behind it';
    case 'beatFrequency':
    case 'wasteFlow':
    case 'supplyFlow': {
      const beats = way('beatFrequency');
      const waste = way('wasteFlow') || way('supplyFlow');
      if (beats > 0 && waste < 0)
        return 'the waste valve shuts sooner than was taken: less weight or stroke than written, or more drag';
      if (beats < 0 && waste > 0)
        return 'the waste valve shuts later than was taken: more weight or stroke than written, or less drag';
      if (beats < 0 && waste < 0)
        return 'the drive line passes less than was taken: look for a choked strainer, a valve half shut, a rougher or longer pipe';
      if (beats > 0 && waste > 0)
        return 'the drive line passes more than was taken: check its bore and length, and the fall';
      if (quantity === 'beatFrequency')
        return 'check the weight, the stroke and the length of the drive line';
      return isLess
        ? 'check the bucket and the watch, and for water that bypasses it'
        : 'water passes the waste valve as it shuts: look at its seat';
    }
    case 'vesselHead':
      return isLess
        ? 'the delivery line loses less than was taken: check its bore and length'
        : 'the delivery line loses more than was taken: look for a valve half shut or a kink';
    case 'peakHead':
      return isLess
        ? 'a gauge or a slow sensor shows less than the first spike; if it is fast, look for air in the body'
        : 'judge ratings by the measured peak: the body gives less than was taken';
  }
}

/** Which way a quantity is off over the test: −1, 0 or 1. */
function wayOf(quantity: BenchQuantity, compared: readonly ReadingAnswer[]): number {
  const shares = compared.flatMap(({ predicted }) =>
    predicted.residuals
      .filter((residual) => residual.quantity === quantity && !residual.agrees)
      .map(({ share }) => share),
  );
  return Math.sign(shares.reduce((sum, share) => sum + share, 0));
}

function agreeing(names: readonly string[], readings: number): readonly string[] {
  const [first, ...rest] = names;
  if (first === undefined) return [];
  const list = [first, ...rest.map((name) => name.toLowerCase())];
  const words = list.length === 1 ? first : `${list.slice(0, -1).join(', ')} and ${list.at(-1)}`;
  const verb = list.length === 1 && !first.endsWith('s') ? 'agrees' : 'agree';
  const where = readings === 1 ? '' : ` at all ${readings} readings`;
  return [`${words} ${verb} with the prediction${where}, within twice what they are good to.`];
}

function liftsOf(wrong: readonly Off[], system: System): string {
  const [first, last] = [wrong[0] as Off, wrong.at(-1) as Off];
  return wrong.length === 1
    ? liftOf(first.lift, system)
    : `${liftOf(first.lift, system)} to ${liftOf(last.lift, system)}`;
}

function liftOf(lift: number, system: System): string {
  return formatQuantity(lift, 'height', system);
}
