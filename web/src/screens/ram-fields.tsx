import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { AssumedValue, useAssumedWords } from '../fields/assumed-value.tsx';
import { Firm } from '../fields/origin-choice.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { SelectField } from '../fields/select-field.tsx';
import { otherRamParts, ramParts, withRamPart } from '../state/ram-entry.ts';

/** Nominal sizes with the inch sizes people call them by. Source: ISO 6708 and ASME B36.10M pair them so (memory). */
const SIZE_OPTIONS = [
  { value: 'DN15', label: 'DN15, 1/2 in' },
  { value: 'DN20', label: 'DN20, 3/4 in' },
  { value: 'DN25', label: 'DN25, 1 in' },
  { value: 'DN32', label: 'DN32, 1 1/4 in' },
  { value: 'DN40', label: 'DN40, 1 1/2 in' },
  { value: 'DN50', label: 'DN50, 2 in' },
  { value: 'DN65', label: 'DN65, 2 1/2 in' },
  { value: 'DN80', label: 'DN80, 3 in' },
  { value: 'DN100', label: 'DN100, 4 in' },
];

export function RamFields() {
  const { place, answer } = useNotebook();
  const assumed = useAssumedWords('ram');
  const others = useStore(place, (state) => otherRamParts(state.document).join(', '));
  const ram = useStore(answer, (state) => state.shown?.value.installation.ram);
  return (
    <>
      <SelectField
        path={['ram']}
        label="Typical ram"
        called="the ram"
        none="the one that fits"
        isOptional={false}
        options={SIZE_OPTIONS}
        read={(document) => ramParts(document).typical}
        write={(document, size) => withRamPart(document, 'typical', size)}
        reading={
          assumed === undefined ? (
            <span>a usual one; put in your own parts below</span>
          ) : (
            <Firm origin="assumed">{assumed}</Firm>
          )
        }
      />
      <QuantityField
        path={['ram', 'stroke']}
        label="Stroke"
        called="the stroke"
        purpose="stroke"
        whenEmpty={
          ram !== undefined && <AssumedValue value={ram.wasteValve.stroke} purpose="stroke" />
        }
        read={(document) => ramParts(document).stroke}
        write={(document, entry) => withRamPart(document, 'stroke', entry)}
      />
      <QuantityField
        path={['ram', 'weight']}
        label="Valve weight"
        called="the valve weight"
        purpose="weight"
        whenEmpty={
          ram?.wasteValve.kind === 'weighted' && (
            <AssumedValue value={ram.wasteValve.movingMass} purpose="mass" />
          )
        }
        read={(document) => ramParts(document).weight}
        write={(document, entry) => withRamPart(document, 'weight', entry)}
      />
      {others !== '' && (
        <p className="note">The file also gives: {others}. They are kept and used.</p>
      )}
    </>
  );
}
