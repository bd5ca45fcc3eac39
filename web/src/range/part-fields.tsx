/** What a ram is made of: by the typical rule of a size, by its own parts, or a typical one with parts of its own. */
import type { Ram } from '@fallwright/engine';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { AssumedValue } from '../fields/assumed-value.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { SelectField } from '../fields/select-field.tsx';
import { textOf } from '../state/entry.ts';
import { ramPart, withRamPart } from '../state/ram-entry.ts';
import type { Path, Plain, SiteDocument } from '../state/site-document.ts';
import { isRecord } from '../state/site-document.ts';
import { ramPath, ramsIn, withRam } from './range-document.ts';
import { SIZES } from './sizes.ts';

const KINDS = [
  { value: 'weighted', label: 'by its weight' },
  { value: 'sprung', label: 'by a spring' },
  { value: 'swing', label: 'a hinged flap' },
];

type Partial = Pick<
  React.ComponentProps<typeof QuantityField>,
  'label' | 'called' | 'purpose' | 'isRequired' | 'words' | 'example'
>;

/** A part of one ram of the range: reading and writing as a place does with its own. */
function inRam(index: number, path: Path) {
  const ramOf = (document: SiteDocument): SiteDocument => ramsIn(document)[index] ?? {};
  return {
    path: ramPath(index, 'ram', ...path),
    read: (document: SiteDocument): Plain | undefined => ramPart(ramOf(document), path),
    write: (document: SiteDocument, value: Plain | undefined): SiteDocument =>
      withRam(document, index, withRamPart(ramOf(document), path, value)),
  };
}

export function PartFields({
  index,
  built,
}: {
  readonly index: number;
  /** The ram as it can be read now, for what stands in for empty boxes. */
  readonly built: Ram | undefined;
}) {
  const { place } = useNotebook();
  const part = (path: Path) => textOf(ramPart(ramsIn(place.get().document)[index] ?? {}, path));
  const kind = useStore(place, () => part(['wasteValve', 'kind']));
  const isTypical = useStore(place, () => part(['typical']) !== '');
  const isHeldByForce = kind === 'sprung' || kind === 'swing';
  const valve = built?.wasteValve;
  return (
    <>
      <section className="ram-section" aria-labelledby="made-title">
        <h2 id="made-title">Made from</h2>
        <div className="ram-fields">
          <SelectField
            {...inRam(index, ['typical'])}
            label="Begins from"
            called="what the ram begins from"
            none="its own parts"
            options={SIZES}
            isOptional={false}
            reading={
              isTypical ? 'the typical rule of this size, with what is written below' : undefined
            }
          />
          <Part
            at={inRam(index, ['bore'])}
            label="Bore"
            called="the bore"
            purpose="bore"
            isRequired={!isTypical}
            assumed={isTypical ? built?.bore : undefined}
          />
          <Part
            at={inRam(index, ['rating'])}
            label="Rating"
            called="the rating"
            purpose="pressure"
          />
        </div>
      </section>
      <section className="ram-section" aria-labelledby="waste-title">
        <h2 id="waste-title">Waste valve</h2>
        <div className="ram-fields">
          <SelectField
            {...inRam(index, ['wasteValve', 'kind'])}
            write={(document, value) => withKind(document, index, value)}
            label="Held open"
            called="the kind of waste valve"
            none="by its weight, as usual"
            options={KINDS}
            isOptional={false}
          />
          <Part
            at={inRam(index, ['wasteValve', 'seat'])}
            label="Seat"
            called="the seat"
            purpose="bore"
            isRequired={!isTypical}
            assumed={isTypical ? valve?.seatDiameter : undefined}
          />
          <Part
            at={inRam(index, ['stroke'])}
            label="Stroke"
            called="the stroke"
            purpose="stroke"
            isRequired={!isTypical}
            assumed={isTypical ? valve?.stroke : undefined}
          />
          {isHeldByForce ? (
            <>
              <Part
                at={inRam(index, ['wasteValve', 'forceOpen'])}
                label="Force when open"
                called="the force when open"
                purpose="force"
                isRequired
              />
              <Part
                at={inRam(index, ['wasteValve', 'forceShut'])}
                label="Force when shut"
                called="the force when shut"
                purpose="force"
                assumed={valve?.kind === 'weighted' ? undefined : valve?.forceAtShut}
              />
              <Part
                at={inRam(index, ['wasteValve', 'mass'])}
                label="Moving mass"
                called="the moving mass"
                purpose="mass"
                assumed={valve?.movingMass}
              />
            </>
          ) : (
            <Part
              at={inRam(index, ['weight'])}
              label="Valve weight"
              called="the valve weight"
              purpose="weight"
              isRequired={!isTypical}
              assumed={isTypical && valve !== undefined ? valve.movingMass * GRAVITY : undefined}
            />
          )}
        </div>
      </section>
      <section className="ram-section" aria-labelledby="delivery-title">
        <h2 id="delivery-title">Delivery valve and air vessel</h2>
        <div className="ram-fields">
          <Part
            at={inRam(index, ['deliveryValve', 'bore'])}
            label="Opening of the delivery valve"
            called="the opening of the delivery valve"
            purpose="bore"
            example={{ metric: '12 mm', us: '1/2 in' }}
            assumed={built && Math.sqrt((4 / Math.PI) * built.deliveryValve.area)}
          />
          <Part
            at={inRam(index, ['deliveryValve', 'backFlow'])}
            label="Back-flow at each beat"
            called="the back-flow of the delivery valve"
            purpose="smallVolume"
            assumed={built?.deliveryValve.backFlowPerBeat}
          />
          <Part
            at={inRam(index, ['airVessel', 'volume'])}
            label="Air vessel holds"
            called="the volume of the air vessel"
            purpose="volume"
            example={{ metric: '1.2 L', us: '0.3 gal' }}
            assumed={built?.airVessel.volume}
          />
          <Part
            at={inRam(index, ['snifter'])}
            label="Snifter hole"
            called="the snifter"
            purpose="stroke"
            words={['none']}
            example={{ metric: '1.2 mm', us: '1/16 in' }}
            assumed={built?.snifter?.diameter}
          />
        </div>
      </section>
    </>
  );
}

/** Source: standard gravity, CGPM 1901. */
const GRAVITY = 9.80665;

function Part({
  at,
  assumed,
  ...asked
}: {
  readonly at: ReturnType<typeof inRam>;
  /** What is taken while the box is empty, in SI. */
  readonly assumed?: number | undefined;
} & Partial) {
  return (
    <QuantityField
      {...asked}
      {...at}
      whenEmpty={assumed !== undefined && <AssumedValue value={assumed} purpose={asked.purpose} />}
    />
  );
}

/** What held the valve open before goes with its kind: a spring has no weight, a weight no spring. */
function withKind(document: SiteDocument, index: number, value: string | undefined): SiteDocument {
  const gone: readonly Path[] =
    value === 'sprung' || value === 'swing'
      ? [['weight'], ['wasteValve', 'weight'], ['wasteValve', 'weightInWater']]
      : [
          ['wasteValve', 'forceOpen'],
          ['wasteValve', 'forceShut'],
        ];
  const ram = gone.reduce<SiteDocument>(
    (from, path) => withRamPart(from, path, undefined),
    withRamPart(ramsIn(document)[index] ?? {}, ['wasteValve', 'kind'], value),
  );
  const { settings, ...others } = ram;
  // Weights that can be fitted are of no use to a spring, nor springs to a weight.
  const held = value === 'sprung' || value === 'swing' ? 'weights' : 'springs';
  if (!isRecord(settings) || settings[held] === undefined) return withRam(document, index, ram);
  const { [held]: _of, ...kept } = settings;
  return withRam(
    document,
    index,
    Object.keys(kept).length === 0 ? others : { ...others, settings: kept },
  );
}
