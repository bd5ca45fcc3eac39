/** A few choices side by side, native radio buttons under the look. */
import { useId } from 'react';

export interface Option<Value extends string> {
  readonly value: Value;
  readonly label: string;
  readonly className?: string;
}

export function Choice<Value extends string>({
  legend,
  options,
  value,
  onChoose,
  className = '',
}: {
  readonly legend: string;
  readonly options: readonly Option<Value>[];
  readonly value: Value;
  readonly onChoose: (value: Value) => void;
  readonly className?: string;
}) {
  const name = useId();
  return (
    <fieldset className={`choices ${className}`}>
      <legend className="for-ears">{legend}</legend>
      {options.map((option) => (
        <label key={option.value} className={option.className}>
          <input
            type="radio"
            name={name}
            value={option.value}
            checked={option.value === value}
            onChange={() => onChoose(option.value)}
          />
          <span>{option.label}</span>
        </label>
      ))}
    </fieldset>
  );
}
