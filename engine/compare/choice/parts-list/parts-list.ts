/**
 * The list of parts and work for a combination, with what it costs: the choice compares by its total, and papers print its rows.
 *
 * A list is put together from sections that many combinations share: the drive side, the delivery line, each pipe, and what
 * is bought by the piece. Each is made once for a place and its offers, so that a hundred thousand combinations are priced in
 * a second or two.
 */
import { joukowskyPressure } from '../../../pipes/joukowsky.ts';
import type { PipeSegment } from '../../../pipes/pipe.ts';
import { waveSpeed } from '../../../pipes/wave-speed.ts';
import type { Metre, Newton, Second, SquareMetre } from '../../../quantities.ts';
import { GRAVITY } from '../../../quantities.ts';
import { boundsOf } from '../bounds.ts';
import type { Parts } from '../candidates.ts';
import { installationOf } from '../installation-of-parts.ts';
import {
  ITEM_UNITS,
  type ItemKind,
  type ItemUnit,
  type Money,
  type Offers,
  type PipeOffer,
  type PricedItem,
} from '../offers.ts';
import type { PlaceToFit } from '../place-to-fit.ts';
import { anchorForce } from '../sizing/anchor-force.ts';
import { type BoughtPiece, cutPlan, type LineName, type WantedLines } from './cut-plan.ts';
import { deliveryNeeds, driveNeeds, type Need, type PartsGroup } from './needs.ts';
import { nominalSize } from './nominal-size.ts';
import { type Lack, pickItem } from './pick-item.ts';

export type PartKind = ItemKind | 'ram' | 'pipe' | 'vessel' | 'tank';

export interface PartsRow {
  readonly group: PartsGroup;
  readonly kind: PartKind;
  /** The line that it belongs to, where a build has the like on several. */
  readonly line?: LineName;
  /** As it is offered; absent when nothing of the kind is offered that would do. */
  readonly name?: string;
  /** Nominal size. */
  readonly size?: Metre;
  /** Of a footing: push that it is made for. */
  readonly holds?: Newton;
  /** Of a strainer: open area at the least. */
  readonly openArea?: SquareMetre;
  readonly unit: ItemUnit;
  readonly needed: number;
  /** What has to be bought of it: whole pieces where it is sold so. */
  readonly bought: number;
  /** For one unit. Absent when it is not known, and for pipe in pieces, which have each their own. */
  readonly price?: Money;
  /** Absent when a price is missing. */
  readonly total?: Money;
  /** Of a pipe: the pieces to buy, and what each is cut into. */
  readonly pieces?: readonly BoughtPiece[];
}

export interface PartsList {
  /** In the order of the groups: as water meets them, then work and spares. */
  readonly rows: readonly PartsRow[];
  /** The sum of the rows; absent when a price is missing. */
  readonly total?: Money;
  readonly missing: readonly Lack[];
}

const GROUPS: readonly PartsGroup[] = [
  'source',
  'driveLine',
  'ram',
  'deliveryLine',
  'tank',
  'work',
  'spares',
];

/** A part of a list. */
interface Section {
  readonly rows: readonly PartsRow[];
  /** Of what has a price. */
  readonly sum: Money;
  readonly missing: readonly Lack[];
}

/** Makes lists for one place and one price list, and remembers what they share. */
export interface PartsLister {
  readonly listOf: (parts: Parts) => PartsList;
  /** The same total and what is missing, without the rows. */
  readonly costOf: (parts: Parts) => Pick<PartsList, 'total' | 'missing'>;
}

/** The list of one combination. Whoever wants many lists keeps a `partsLister`. */
export function partsListOf(
  place: PlaceToFit,
  offers: Pick<Offers, 'items' | 'leftOut'>,
  parts: Parts,
): PartsList {
  return partsLister(place, offers).listOf(parts);
}

export function partsLister(
  place: PlaceToFit,
  { items, leftOut = [] }: Pick<Offers, 'items' | 'leftOut'>,
): PartsLister {
  const kinds = new Map<ItemKind, PricedItem[]>();
  for (const item of items) kinds.set(item.kind, [...(kinds.get(item.kind) ?? []), item]);
  const pick = (need: Need) => pickItem(kinds.get(need.kind) ?? [], need);
  const isLeftOut = (kind: ItemKind): boolean => leftOut.includes(kind);
  const memo = new Map<string, Section>();
  const shared = (key: string, make: () => Section): Section => {
    let section = memo.get(key);
    if (!section) {
      section = make();
      memo.set(key, section);
    }
    return section;
  };
  const pushes = new Map<string, Newton>();
  const pushOf = (parts: Parts): Newton => {
    const { ram, tuning, drivePipe, driveLength, feeder } = parts;
    const key = `${ram.key}|${tuning.name}|${drivePipe.key}|${driveLength}|${feeder?.length ?? ''}`;
    let push = pushes.get(key);
    if (push === undefined) {
      push = largestPush(place, parts);
      pushes.set(key, push);
    }
    return push;
  };

  const itemsSection = (needs: readonly Need[]): Section => {
    const rows: PartsRow[] = [];
    const missing: Lack[] = [];
    let sum = 0;
    for (const need of needs) {
      if (isLeftOut(need.kind)) continue;
      const { item, needed, bought, total, lack } = pick(need);
      const size = need.leastSize ?? (need.bore === undefined ? undefined : nominalSize(need.bore));
      if (lack) missing.push(lack);
      sum += total ?? 0;
      rows.push({
        group: need.group,
        kind: need.kind,
        ...(need.line === undefined ? {} : { line: need.line }),
        ...(item ? { name: item.name } : {}),
        ...(size === undefined ? {} : { size }),
        ...(need.holds === undefined ? {} : { holds: need.holds }),
        ...(need.openArea === undefined ? {} : { openArea: need.openArea }),
        unit: ITEM_UNITS[need.kind],
        needed,
        bought,
        ...(item?.cost === undefined ? {} : { price: item.cost }),
        ...(total === undefined ? {} : { total }),
      });
    }
    return { rows, sum, missing };
  };

  const pipeSection = (offer: PipeOffer, wanted: readonly WantedLines[]): Section => {
    const { innerDiameter: bore, material } = offer.pipe;
    const line = (wanted[0] as WantedLines).line;
    const group: PartsGroup =
      line === 'drive' ? 'driveLine' : line === 'feeder' ? 'source' : 'deliveryLine';
    const socketNeed: Need = { group, kind: 'socket', quantity: 1, line, bore, material };
    const socketCost = isLeftOut('socket') ? 0 : (pick(socketNeed).total ?? 0);
    const size = nominalSize(bore);
    const needed = wanted.reduce((total, { length, count }) => total + length * count, 0);
    const plan = cutPlan(offer, wanted, socketCost);
    const isCutToLength = (offer.soldLengths ?? []).length === 0;
    const row: PartsRow = {
      group,
      kind: 'pipe',
      line,
      name: offer.name,
      size,
      unit: 'metre',
      needed,
      bought: plan ? plan.pieces.reduce((total, { length }) => total + length, 0) : needed,
      ...(isCutToLength && offer.costPerMetre !== undefined ? { price: offer.costPerMetre } : {}),
      ...(plan?.cost === undefined ? {} : { total: plan.cost }),
      ...(plan ? { pieces: plan.pieces } : {}),
    };
    const missing: Lack[] =
      plan?.cost === undefined ? [{ kind: 'pipe', name: offer.name, size }] : [];
    const joints = plan && plan.joints > 0 ? [{ ...socketNeed, quantity: plan.joints }] : [];
    const sockets = itemsSection(joints);
    return {
      rows: [row, ...sockets.rows],
      sum: (plan?.cost ?? 0) + sockets.sum,
      missing: [...missing, ...sockets.missing],
    };
  };

  const pieceSection = (
    group: PartsGroup,
    kind: 'ram' | 'vessel' | 'tank',
    { name, cost }: { readonly name: string; readonly cost?: Money },
    count: number,
  ): Section => {
    const row = { group, kind, name, unit: 'each', needed: count, bought: count } as const;
    if (cost === undefined) return { rows: [row], sum: 0, missing: [{ kind, name }] };
    const total = cost * count;
    return { rows: [{ ...row, price: cost, total }], sum: total, missing: [] };
  };

  const labourSection = ({ ram, count }: Parts): Section => {
    if (isLeftOut('labour')) return { rows: [], sum: 0, missing: [] };
    const time = ram.setUpTime;
    const need = { group: 'work', kind: 'labour', quantity: 0, ram: ram.key } as const;
    if (time === undefined) {
      const missing = [{ kind: 'setUpTime', name: ram.name } as const];
      return { rows: [], sum: 0, missing };
    }
    return itemsSection([{ ...need, quantity: (count * time) / HOUR }]);
  };

  function sectionsOf(parts: Parts): Section[] {
    const { ram, tuning, count, drivePipe, driveLength, feeder, deliveryPipe, vessel, tank } =
      parts;
    const fed = feeder ? `${feeder.pipe.key}|${feeder.length}` : '';
    const sections = [
      shared(
        `drive|${ram.key}|${tuning.name}|${count}|${drivePipe.key}|${driveLength}|${fed}`,
        () => itemsSection(driveNeeds(place, parts, pushOf(parts))),
      ),
      shared(`delivery|${count}|${deliveryPipe.key}`, () =>
        itemsSection(deliveryNeeds(place, parts)),
      ),
      shared(`ram|${ram.key}|${count}`, () => pieceSection('ram', 'ram', ram, count)),
      shared(`labour|${ram.key}|${count}`, () => labourSection(parts)),
      shared('carriage', () => itemsSection([{ group: 'work', kind: 'carriage', quantity: 1 }])),
    ];
    if (vessel) {
      sections.push(
        shared(`vessel|${vessel.key}|${count}`, () => pieceSection('ram', 'vessel', vessel, count)),
      );
    }
    if (tank) {
      sections.push(shared(`tank|${tank.key}`, () => pieceSection('tank', 'tank', tank, 1)));
    }
    // One pipe on several lines is bought together: an off-cut of one may do for another.
    const lines: (WantedLines & { readonly offer: PipeOffer })[] = [
      { offer: drivePipe, line: 'drive', length: driveLength, count },
      ...(feeder
        ? [{ offer: feeder.pipe, line: 'feeder', length: feeder.length, count: 1 } as const]
        : []),
      { offer: deliveryPipe, line: 'delivery', length: place.deliveryRoute.length, count: 1 },
    ];
    lines.forEach(({ offer }, index) => {
      if (lines.findIndex((other) => other.offer.key === offer.key) < index) return;
      const alike = lines.filter((other) => other.offer.key === offer.key);
      const key = alike.map(({ line, length, count: n }) => `${line} ${length} ${n}`).join('|');
      sections.push(shared(`pipe|${offer.key}|${key}`, () => pipeSection(offer, alike)));
    });
    return sections;
  }

  const costOf: PartsLister['costOf'] = (parts) => {
    const sections = sectionsOf(parts);
    let total = 0;
    let isKnown = true;
    for (const { sum, missing } of sections) {
      total += sum;
      isKnown &&= missing.length === 0;
    }
    return isKnown ? { total, missing: [] } : { missing: lacksOf(sections) };
  };

  return {
    costOf,
    listOf: (parts) => {
      const rows = sectionsOf(parts).flatMap((section) => section.rows);
      return {
        rows: GROUPS.flatMap((group) => {
          const own = rows.filter((row) => row.group === group);
          return [...own.filter(isMain), ...own.filter((row) => !isMain(row))];
        }),
        ...costOf(parts),
      };
    },
  };
}

const HOUR: Second = 3600;

/** What the rest of a group goes with: it stands first. */
function isMain({ kind }: PartsRow): boolean {
  return kind === 'ram' || kind === 'pipe' || kind === 'vessel' || kind === 'tank';
}

/** Each once. */
function lacksOf(sections: readonly Section[]): Lack[] {
  const lacks = new Map<string, Lack>();
  for (const { missing } of sections) {
    for (const lack of missing) {
      const { kind, name, size, openArea } = lack;
      lacks.set(`${kind}|${name ?? ''}|${size ?? ''}|${openArea ?? ''}`, lack);
    }
  }
  return [...lacks.values()];
}

/**
 * Push of a drive line on its ram, for a footing that is priced before anything has been run.
 *
 *   F = (ρ g H + ρ a V) A
 *
 * V is the most that bounds.ts lets the line gather, so it is no less than the Joukowsky bound of a run; a spike in the body
 * may stand above both, and the footing's safety has to cover it (a test looks).
 */
function largestPush(place: PlaceToFit, parts: Parts): Newton {
  const installation = installationOf(place, parts);
  const { water, fall, driveLine } = installation;
  const last = driveLine.segments.at(-1) as PipeSegment;
  const { innerDiameter } = last.pipe;
  const { fastestFlow } = boundsOf(installation, parts);
  const stopped = fastestFlow / ((Math.PI / 4) * innerDiameter ** 2);
  const hammer = joukowskyPressure({
    waveSpeed: waveSpeed(last, water),
    velocityChange: stopped,
    density: water.density,
  });
  return anchorForce({ peakPressure: water.density * GRAVITY * fall + hammer, innerDiameter });
}
