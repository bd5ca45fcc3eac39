/** A field with a box that is checked by itself: how many, over how many years, in which months. */
import { FieldFrame } from '../fields/field-frame.tsx';
import type { CheckedBoxProps } from './use-checked-box.ts';
import { useCheckedBox } from './use-checked-box.ts';

export function CheckedField({
  label,
  placeholder,
  whenEmpty,
  readBack,
  lack,
  isOptional = true,
  isDecimal = false,
  ...asked
}: CheckedBoxProps & {
  readonly label: string;
  readonly placeholder: string;
  readonly whenEmpty?: React.ReactNode;
  /** How a text that can be read was understood, where that is more than the text. */
  readonly readBack?: (good: string) => React.ReactNode;
  /** What is still to be filled in here before the part counts. */
  readonly lack?: string | undefined;
  readonly isOptional?: boolean;
  /** A phone then shows its keys for numbers. */
  readonly isDecimal?: boolean;
}) {
  const { good, isUnread, fault, isInside, box } = useCheckedBox(asked);
  return (
    <FieldFrame
      path={asked.path}
      label={label}
      isInside={isInside}
      isOptional={isOptional}
      fault={fault}
      kept={fault === undefined || good === '' ? undefined : good}
      reading={
        isUnread ? undefined : good !== '' ? (
          readBack?.(good)
        ) : lack === undefined ? (
          whenEmpty
        ) : (
          <StillNeeded what={lack} />
        )
      }
    >
      {(attributes) => (
        <input
          {...attributes}
          {...box}
          inputMode={isDecimal ? 'decimal' : undefined}
          placeholder={placeholder}
        />
      )}
    </FieldFrame>
  );
}

/** Until then the part waits, and the answer stands on the rest. */
export function StillNeeded({ what }: { readonly what: string }) {
  return <strong className="still-lacks">Still needed: {what}. Not counted yet.</strong>;
}
