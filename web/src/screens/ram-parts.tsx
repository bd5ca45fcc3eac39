/** The parts of a ram that is not a typical one, or that differs from it in more than stroke and weight. */
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { AssumedValue } from '../fields/assumed-value.tsx';
import { More } from '../fields/more.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { SelectField } from '../fields/select-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { textOf } from '../state/entry.ts';
import { ramPart, withRamPart } from '../state/ram-entry.ts';
import type { SiteDocument } from '../state/site-document.ts';

const KINDS = [
  { value: 'weighted', label: 'by its weight' },
  { value: 'sprung', label: 'by a spring' },
  { value: 'swing', label: 'a hinged flap' },
];

/** Parts beyond size, stroke and weight, any of which opens the fold. */
const FOLDED = ['name', 'bore', 'wasteValve', 'deliveryValve', 'airVessel', 'snifter', 'rating'];

export function RamParts() {
  const { place, answer } = useNotebook();
  const kind = useStore(place, ({ document }) => textOf(ramPart(document, ['wasteValve', 'kind'])));
  // What a ram of the range is made of stands there.
  const isUsed = useStore(
    place,
    ({ document }) =>
      ramPart(document, ['range']) === undefined &&
      FOLDED.some((part) => ramPart(document, [part]) !== undefined),
  );
  const ram = useStore(answer, (state) => state.shown?.value.installation.ram);
  const isHeldByForce = kind === 'sprung' || kind === 'swing';
  return (
    <More summary="Parts of the ram" isUsed={isUsed}>
      <TextField
        path={['ram', 'name']}
        label="What it is called"
        called="the name of the ram"
        read={(document) => ramPart(document, ['name'])}
        write={(document, value) => withRamPart(document, ['name'], value)}
      />
      <Part
        path={['bore']}
        label="Bore of the ram"
        called="the bore of the ram"
        purpose="bore"
        assumed={ram?.bore}
      />
      <SelectField
        path={['ram', 'wasteValve', 'kind']}
        label="Waste valve held open"
        called="the kind of waste valve"
        none="by its weight, as usual"
        options={KINDS}
        isOptional={false}
        read={(document) => ramPart(document, ['wasteValve', 'kind'])}
        write={withKind}
      />
      <Part
        path={['wasteValve', 'seat']}
        label="Seat of the waste valve"
        called="the seat of the waste valve"
        purpose="bore"
        assumed={ram?.wasteValve.seatDiameter}
      />
      {isHeldByForce && (
        <>
          <Part
            path={['wasteValve', 'forceOpen']}
            label="Force when open"
            called="the force when open"
            purpose="force"
            isRequired
          />
          <Part
            path={['wasteValve', 'forceShut']}
            label="Force when shut"
            called="the force when shut"
            purpose="force"
            assumed={ram?.wasteValve.kind === 'weighted' ? undefined : ram?.wasteValve.forceAtShut}
          />
        </>
      )}
      <Part
        path={['deliveryValve', 'bore']}
        label="Bore of the delivery valve"
        called="the bore of the delivery valve"
        purpose="bore"
        example={{ metric: '12 mm', us: '1/2 in' }}
        assumed={ram && Math.sqrt((4 / Math.PI) * ram.deliveryValve.area)}
      />
      <Part
        path={['deliveryValve', 'backFlow']}
        label="Back-flow at each beat"
        called="the back-flow of the delivery valve"
        purpose="smallVolume"
        assumed={ram?.deliveryValve.backFlowPerBeat}
      />
      <Part
        path={['airVessel', 'volume']}
        label="Air vessel holds"
        called="the volume of the air vessel"
        purpose="volume"
        example={{ metric: '1.5 L', us: '0.4 gal' }}
        assumed={ram?.airVessel.volume}
      />
      <Part
        path={['airVessel', 'air']}
        label="Air in the open vessel"
        called="the air in the vessel"
        purpose="share"
        example={{ metric: '100 %', us: '100 %' }}
        assumed={ram?.airVessel.airShare}
      />
      <Part
        path={['snifter']}
        label="Snifter hole"
        called="the snifter"
        purpose="stroke"
        words={['none']}
        example={{ metric: '1.2 mm', us: '1/16 in' }}
        assumed={ram?.snifter?.diameter}
      />
      <Part path={['rating']} label="Rating" called="the rating of the ram" purpose="pressure" />
    </More>
  );
}

/** What held the valve open before goes with its kind: a spring has no weight, a weight no spring. */
function withKind(document: SiteDocument, value: string | undefined): SiteDocument {
  const gone =
    value === 'sprung' || value === 'swing'
      ? ['weight', 'weightInWater']
      : ['forceOpen', 'forceShut'];
  const cleared = gone.reduce(
    (from, part) => withRamPart(from, ['wasteValve', part], undefined),
    withRamPart(document, ['wasteValve', 'kind'], value),
  );
  return value === 'sprung' || value === 'swing'
    ? withRamPart(cleared, ['weight'], undefined)
    : cleared;
}

function Part({
  path,
  assumed,
  ...asked
}: {
  readonly path: readonly string[];
  /** What the answer takes while the box is empty, in SI. */
  readonly assumed?: number | undefined;
} & Pick<
  React.ComponentProps<typeof QuantityField>,
  'label' | 'called' | 'purpose' | 'isRequired' | 'words' | 'example'
>) {
  return (
    <QuantityField
      {...asked}
      path={['ram', ...path]}
      whenEmpty={assumed !== undefined && <AssumedValue value={assumed} purpose={asked.purpose} />}
      read={(document) => ramPart(document, path)}
      write={(document, entry) => withRamPart(document, path, entry)}
    />
  );
}
