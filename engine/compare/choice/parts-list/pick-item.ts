/** Which item does for a need: of those that fit, the one that costs least altogether. */
import type { Metre, Newton, SquareMetre } from '../../../quantities.ts';
import { ITEM_UNITS, type ItemKind, type Money, type PricedItem } from '../offers.ts';
import type { Need } from './needs.ts';
import { nominalSize } from './nominal-size.ts';

/** Something without a price, or that nobody offers. */
export interface Lack {
  readonly kind: ItemKind | 'ram' | 'pipe' | 'vessel' | 'tank' | 'setUpTime';
  /** What is offered and has no price; absent when nothing of the kind is offered that would do. */
  readonly name?: string;
  /** Nominal size that it has to fit. */
  readonly size?: Metre;
  /** Open area, of a strainer, at the least. */
  readonly openArea?: SquareMetre;
}

/** What is bought for a need. */
export interface Picked {
  readonly item?: PricedItem;
  readonly needed: number;
  readonly bought: number;
  readonly total?: Money;
  readonly lack?: Lack;
}

export function pickItem(items: readonly PricedItem[], need: Need): Picked {
  let best: Picked | undefined;
  for (const item of items) {
    if (!fits(item, need)) continue;
    const needed = need.quantity * perNeed(item, need);
    const bought = boughtOf(item, needed);
    const picked: Picked =
      item.cost === undefined
        ? { item, needed, bought, lack: lackOf(need, item.name) }
        : { item, needed, bought, total: Math.round(item.cost * bought) };
    if (!best || isBetter(picked, best)) best = picked;
  }
  return best ?? { needed: need.quantity, bought: need.quantity, lack: lackOf(need) };
}

/** One with a price before one without, then the cheaper, then the first by key: the order of the list decides nothing. */
function isBetter(a: Picked, b: Picked): boolean {
  const gap = (a.total ?? Infinity) - (b.total ?? Infinity);
  if (gap < 0 || gap > 0) return gap < 0;
  return (a.item?.key ?? '') < (b.item?.key ?? '');
}

function fits(item: PricedItem, need: Need): boolean {
  if (item.kind !== need.kind) return false;
  const { size, materials, rams, openArea } = item;
  if (size !== undefined && need.bore !== undefined && nominalSize(size) !== nominalSize(need.bore))
    return false;
  if (size !== undefined && need.leastSize !== undefined && nominalSize(size) < need.leastSize)
    return false;
  if (materials && need.material && !materials.includes(need.material)) return false;
  if (rams && need.ram !== undefined && !rams.includes(need.ram)) return false;
  return openArea === undefined || need.openArea === undefined || openArea >= need.openArea;
}

/** Judgement: what one footing does not hold, several do: blocks along the pipe. */
function perNeed({ holds }: PricedItem, need: Need): number {
  return holds === undefined || need.holds === undefined ? 1 : footings(need.holds, holds);
}

function footings(push: Newton, holds: Newton): number {
  if (!(holds > 0)) throw new RangeError(`holds must be above zero, got ${holds} N`);
  return Math.max(1, Math.ceil(push / holds - 1e-9));
}

function boughtOf({ kind, soldLength }: PricedItem, needed: number): number {
  if (ITEM_UNITS[kind] === 'each') return Math.ceil(needed - 1e-9);
  if (soldLength === undefined || !(soldLength > 0)) return needed;
  return Math.ceil(needed / soldLength - 1e-9) * soldLength;
}

function lackOf({ kind, bore, leastSize, openArea }: Need, name?: string): Lack {
  const size = leastSize ?? (bore === undefined ? undefined : nominalSize(bore));
  return {
    kind,
    ...(name === undefined ? {} : { name }),
    ...(size === undefined ? {} : { size }),
    ...(openArea === undefined ? {} : { openArea }),
  };
}
