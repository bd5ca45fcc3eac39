/** A dimension of a measurement, in a box like every other, and the words that may stand with it. */
import type { Purpose } from '@fallwright/units';
import { More } from '../fields/more.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { stepName, useDocument } from './edit.ts';
import type { Spot } from './spot.ts';
import { readAt, writeAt } from './spot.ts';

export function DimensionField({
  spot,
  name,
  label,
  purpose,
  isNeeded,
  whenEmpty,
  example,
}: {
  readonly spot: Spot;
  readonly name: string;
  readonly label: string;
  readonly purpose: Purpose;
  readonly isNeeded: boolean;
  readonly whenEmpty?: string | undefined;
  readonly example?: { readonly metric: string; readonly us: string } | undefined;
}) {
  return (
    <QuantityField
      path={[...spot.path, name]}
      label={label}
      called={stepName(`the ${label.toLowerCase()}`, spot)}
      purpose={purpose}
      isRequired={isNeeded}
      mayBeEmptied
      isReading
      whenEmpty={whenEmpty}
      example={example}
      read={readAt(spot, [name])}
      write={writeAt(spot, [name])}
    />
  );
}

const WORDS = [
  { key: 'date', label: 'Date' },
  { key: 'by', label: 'By' },
  { key: 'note', label: 'Note' },
] as const;

/** When it was measured, by whom, and what is worth keeping. */
export function WhenAndWho({ spot }: { readonly spot: Spot }) {
  const readings = spot.read(useDocument());
  return (
    <More
      summary="When, by whom, a note"
      isUsed={readings.by !== undefined || readings.note !== undefined}
    >
      {WORDS.map(({ key, label }) => (
        <TextField
          key={key}
          path={[...spot.path, key]}
          label={label}
          called={stepName(`the ${label.toLowerCase()}`, spot)}
          read={readAt(spot, [key])}
          write={writeAt(spot, [key])}
        />
      ))}
    </More>
  );
}

/** Today as it is written in a file. */
export function today(now = new Date()): string {
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
