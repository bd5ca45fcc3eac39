/** What the page shows of a choice: plain data that a worker sends, in words of one system of units. */
import type { ChoiceProgress } from '@fallwright/engine';
import type { FrontRow, Proposal } from '@fallwright/papers';
import type { Plain } from '../state/site-document.ts';

/** A combination on the front or near it, for the picture. */
export interface FrontPoint {
  readonly key: string;
  /** In the currency's smallest unit; absent without a price. */
  readonly cost?: number;
  readonly water: number;
  readonly isOnFront: boolean;
  readonly what: string;
  /** What it is picked as; empty when it is not. */
  readonly pickedAs: string;
}

export interface ChoiceView {
  readonly isComplete: boolean;
  readonly progress: ChoiceProgress;
  /** Whether what is compared has prices; water alone otherwise. */
  readonly isPriced: boolean;
  readonly hasPrices: boolean;
  readonly hasRange: boolean;
  readonly currency?: string;
  readonly need?: number;
  readonly points: readonly FrontPoint[];
  readonly rows: readonly FrontRow[];
  /** Keys of the picks, the cheapest first. */
  readonly picks: readonly string[];
  readonly shortfall?: string;
  /** Where nothing works: which limits failed, and what would have to change. */
  readonly nothing?: { readonly misses: readonly string[]; readonly changes: readonly string[] };
  /** What lacks a price among what would work. */
  readonly lacks: readonly string[];
  readonly assumptions: readonly string[];
  readonly leftOut: readonly string[];
}

export interface ProposalView extends Omit<Proposal, 'list' | 'sizing'> {
  readonly what: string;
  /** What it would put on the sheet, or why it cannot. */
  readonly putting:
    | { readonly kind: 'site'; readonly fields: PutFields }
    | { readonly kind: 'severalRams' | 'fed' };
}

/** Fields of a site document that a proposal replaces. */
export type PutFields = Readonly<Partial<Record<'drive' | 'ram' | 'delivery' | 'tank', Plain>>>;

export interface WhyNotPage {
  /** How many combinations fit what is sought. */
  readonly found: number;
  readonly from: number;
  readonly rows: readonly {
    readonly key: string;
    readonly what: string;
    readonly cost: string;
    readonly why: string;
  }[];
}
