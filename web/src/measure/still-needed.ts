/** Which boxes of a measurement are still to be filled, by the names that stand over them. */
import { GAUGING_METHODS } from '@fallwright/records';
import { textOf } from '../state/entry.ts';
import type { HeightName } from '../state/measured-entry.ts';
import { heightWay } from '../state/measured-entry.ts';
import type { PlainRecord } from '../state/site-document.ts';
import { isRecord } from '../state/site-document.ts';
import { listAt } from './spot.ts';
import { FLOW_WAYS } from './ways.ts';

/** Undefined when nothing that is asked lacks. */
export function gaugingNeeds(gauging: PlainRecord): string | undefined {
  const method = GAUGING_METHODS.find((one) => one === gauging.method);
  if (method === undefined) return undefined;
  const { dimensions, readings, alsoListed } = FLOW_WAYS[method];
  // A section that was written as an area needs no width and no depths.
  const isGiven = (key: string): boolean =>
    gauging[key] !== undefined ||
    (method === 'float' && gauging.area !== undefined && ['width', 'depths'].includes(key));
  const boxes = dimensions.filter(({ key, isNeeded }) => isNeeded && !isGiven(key));
  const lists = [alsoListed, readings].filter(
    (list) => list !== undefined && !isGiven(list.key) && listAt(gauging, list.key).length === 0,
  );
  return needed([...boxes, ...lists].flatMap((one) => (one ? [one.label] : [])));
}

export function heightNeeds(readings: PlainRecord, height: HeightName): string | undefined {
  switch (heightWay(readings)) {
    case 'gauge':
      return needed([
        ...(readings.class === undefined ? ['Class on the dial'] : []),
        ...(readings.range === undefined ? ['Range of the dial'] : []),
      ]);
    case 'barometric':
    case 'satellite': {
      const ends = [
        height === 'fall' ? 'the height at the water' : 'the height at the tank',
        'the height at the ram',
      ];
      const texts = listAt(readings, heightWay(readings) ?? '').map(textOf);
      return needed(ends.filter((_, index) => (texts[index] ?? '') === ''));
    }
    case 'levels': {
      const rows = listAt(readings, 'levels').filter(isRecord);
      if (rows.length < 2) return needed(['a second point, with its fore sight']);
      const [first, last] = [rows[0], rows.at(-1)];
      const isClosed =
        last?.fore !== undefined && last.back === undefined && first?.back !== undefined;
      return isClosed &&
        first.at === last.at &&
        first.at !== undefined &&
        readings.between === undefined
        ? `The book comes back to ${textOf(first.at)}. Choose between which two points the height lies.`
        : undefined;
    }
    default:
      return undefined;
  }
}

function needed(labels: readonly string[]): string | undefined {
  if (labels.length === 0) return undefined;
  const words = labels.map((label) => label.charAt(0).toLowerCase() + label.slice(1));
  return `Still needed: ${words.join('; ')}.`;
}
