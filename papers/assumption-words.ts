import type { Assumption, Basis } from '@fallwright/records';
import { formatQuantity, type System } from '@fallwright/units';

const BASES = {
  commonPractice: 'common practice',
  judgement: 'judgement',
  table: 'from a table',
  computed: 'computed',
} as const satisfies Record<Basis, string>;

/** What was assumed and why. Things assumed for one reason stand together. */
export function assumptionsInWords(
  assumptions: readonly Assumption[],
  system: System,
): readonly string[] {
  const byReason = new Map<string, string[]>();
  for (const assumption of assumptions) {
    const reason = `${assumption.why}; ${BASES[assumption.basis]}`;
    const things = byReason.get(reason) ?? [];
    byReason.set(reason, [...things, `${assumption.what}: ${assumedValue(assumption, system)}`]);
  }
  return [...byReason].map(
    ([reason, things]) => `${startOfSentence(things.join('; '))} (${reason}).`,
  );
}

function startOfSentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

export function assumedValue({ value }: Assumption, system: System): string {
  return value.kind === 'words' ? value.words : formatQuantity(value.value, value.purpose, system);
}
