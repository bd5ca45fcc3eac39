/** Who and what needs the water: people, animals, garden, drip line, other uses, and what makes a month differ. */
import type { Planting, WateringMethod } from '@fallwright/engine';
import { PLANT_FACTORS, WATERING_EFFICIENCIES } from '@fallwright/engine';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { QuantityField } from '../fields/quantity-field.tsx';
import { SelectField } from '../fields/select-field.tsx';
import { textOf } from '../state/entry.ts';
import type { Path } from '../state/site-document.ts';
import { AnimalRows } from './animal-rows.tsx';
import { readCount } from './bare-count.ts';
import { CheckedField, StillNeeded } from './checked-field.tsx';
import { gardenFigure, personFigure, SERVICES } from './figures.ts';
import { Group } from './group.tsx';
import { MonthTable } from './month-table.tsx';
import { isToldApart, lacksOf, needPart, withNeedPart } from './need-entry.ts';
import { Published } from './published.tsx';
import { SEASON_FAULT, seasonRead } from './season-text.ts';

export function NeedForm() {
  const { place } = useNotebook();
  const document = useStore(place, (state) => state.document);
  const isOneAmount = document.demand !== undefined && !isToldApart(document.demand);
  const lacks = lacksOf(document);
  return (
    <div className="need-form">
      {isOneAmount && (
        <p className="note">
          The one amount above counts as other uses. Take it out there if it is what you tell apart
          here.
        </p>
      )}
      <div className="need-groups">
        <Needs title="People" parts={[['people'], ['perPerson'], ['service']]} isFirst>
          <People lacks={lacks} />
        </Needs>
        <Needs title="Animals" parts={[['animals']]}>
          <AnimalRows lacks={lacks} />
        </Needs>
        <Needs title="Garden" parts={[['garden']]}>
          <Garden lacks={lacks} />
        </Needs>
        <Needs title="Drip line" parts={[['drip']]}>
          <Drip lacks={lacks} />
        </Needs>
        <Needs
          title="Other uses, losses, growth"
          parts={[['losses'], ['growth'], ['years'], ['other']]}
        >
          <Rest lacks={lacks} />
        </Needs>
        <MonthTable />
      </div>
    </div>
  );
}

type Lacks = Readonly<Record<string, string>>;

/** Open where the file says something of it, or where a text waits in one of its boxes. */
function Needs({
  title,
  parts,
  isFirst = false,
  children,
}: {
  readonly title: string;
  readonly parts: readonly Path[];
  readonly isFirst?: boolean;
  readonly children: React.ReactNode;
}) {
  const { place } = useNotebook();
  const isUsed = useStore(place, ({ document, unread }) =>
    parts.some(
      (part) =>
        needPart(document, part) !== undefined ||
        Object.keys(unread).some((key) => key.startsWith(`demand.${part.join('.')}`)),
    ),
  );
  return (
    <Group title={title} isUsed={isFirst || isUsed}>
      <div className="need-boxes">{children}</div>
    </Group>
  );
}

function People({ lacks }: { readonly lacks: Lacks }) {
  const { place } = useNotebook();
  const service = useStore(place, ({ document }) => textOf(needPart(document, ['service'])));
  const isLocal = useStore(
    place,
    ({ document }) => needPart(document, ['perPerson']) !== undefined,
  );
  const figure = personFigure(service);
  return (
    <>
      <CountField
        path={['people']}
        label="How many people"
        called="the number of people"
        example="6"
        lack={lacks.people}
      />
      {(!isLocal || service !== '') && (
        <SelectField
          path={['demand', 'service']}
          label="How water comes to them"
          called="the service"
          none="one tap on the plot, as usual"
          options={SERVICES}
          isOptional={false}
          read={(document) => needPart(document, ['service'])}
          write={(document, value) => withNeedPart(document, ['service'], value)}
        />
      )}
      <NeedQuantity
        path={['perPerson']}
        label="One person takes"
        called="the need of a person"
        purpose="daily"
        example={{ metric: '60 L/day', us: '16 gal/day' }}
        whenEmpty={figure && <Published figure={figure} purpose="daily" />}
      />
    </>
  );
}

const PLANTS: readonly { readonly value: Planting; readonly label: string }[] = [
  { value: 'vegetables', label: 'vegetables' },
  { value: 'lawn', label: 'lawn' },
  { value: 'shrubs', label: 'shrubs' },
];
const METHODS: readonly { readonly value: WateringMethod; readonly label: string }[] = [
  { value: 'drip', label: 'drip' },
  { value: 'sprinkler', label: 'sprinkler' },
];

function Garden({ lacks }: { readonly lacks: Lacks }) {
  const { place } = useNotebook();
  const part = (name: string): string => textOf(needPart(place.get().document, ['garden', name]));
  const perArea = useStore(place, () => part('perArea'));
  const plants = useStore(place, () => part('plants'));
  const by = useStore(place, () => part('by'));
  const factor = Object.entries(PLANT_FACTORS).find(([name]) => name === plants)?.[1];
  const reaches = Object.entries(WATERING_EFFICIENCIES).find(([name]) => name === by)?.[1];
  return (
    <>
      <NeedQuantity
        path={['garden', 'area']}
        label="Area that is watered"
        called="the area of the garden"
        purpose="surfaceArea"
        example={{ metric: '60 m2', us: '600 ft2' }}
        whenEmpty={lacks['garden.area'] && <StillNeeded what={lacks['garden.area']} />}
      />
      <NeedQuantity
        path={['garden', 'perArea']}
        label="The ground is given"
        called="the garden’s need"
        purpose="watering"
        whenEmpty={
          part('evapotranspiration') === '' ? (
            <Published figure={gardenFigure} purpose="watering" />
          ) : (
            'as the evapotranspiration below tells'
          )
        }
      />
      {perArea === '' && (
        <>
          <NeedQuantity
            path={['garden', 'evapotranspiration']}
            label="Or evapotranspiration"
            called="the evapotranspiration"
            purpose="watering"
            example={{ metric: '5 mm/day', us: '0.2 in/day' }}
            whenEmpty={
              lacks['garden.evapotranspiration'] ? (
                <StillNeeded what={lacks['garden.evapotranspiration']} />
              ) : (
                'of a reference meadow, as a weather station tells it'
              )
            }
          />
          <SelectField
            path={['demand', 'garden', 'plants']}
            label="Plants"
            called="the plants"
            none="take all of it"
            options={PLANTS}
            reading={factor && <Published figure={factor} purpose="share" />}
            read={(document) => needPart(document, ['garden', 'plants'])}
            write={(document, value) => withNeedPart(document, ['garden', 'plants'], value)}
          />
        </>
      )}
      <SelectField
        path={['demand', 'garden', 'by']}
        label="Watered by"
        called="the way of watering"
        none="not said: nothing is lost"
        options={METHODS}
        isOptional={false}
        reading={
          reaches && (
            <span>
              reaches the roots: <Published figure={reaches} purpose="share" />
            </span>
          )
        }
        read={(document) => needPart(document, ['garden', 'by'])}
        write={(document, value) => withNeedPart(document, ['garden', 'by'], value)}
      />
      <SeasonField path={['garden', 'season']} what="the garden" />
    </>
  );
}

function Drip({ lacks }: { readonly lacks: Lacks }) {
  return (
    <>
      <CountField
        path={['drip', 'plants']}
        label="Plants on the line"
        called="the number of plants"
        example="120"
        lack={lacks['drip.plants']}
      />
      <NeedQuantity
        path={['drip', 'perPlant']}
        label="One plant takes"
        called="the need of a plant"
        purpose="daily"
        example={{ metric: '2 L/day', us: '0.5 gal/day' }}
        whenEmpty={lacks['drip.perPlant'] && <StillNeeded what={lacks['drip.perPlant']} />}
      />
      <SeasonField path={['drip', 'season']} what="the drip line" />
    </>
  );
}

function Rest({ lacks }: { readonly lacks: Lacks }) {
  return (
    <>
      <NeedQuantity
        path={['other']}
        label="Other uses"
        called="the other need"
        purpose="daily"
        example={{ metric: '100 L/day', us: '25 gal/day' }}
        whenEmpty="besides all that stands above"
      />
      <NeedQuantity
        path={['losses']}
        label="Leaks and spills"
        called="the share that is lost"
        purpose="share"
        example={{ metric: '10 %', us: '10 %' }}
        whenEmpty="share of what leaves the tank"
      />
      <NeedQuantity
        path={['growth']}
        label="Growth in a year"
        called="the growth"
        purpose="share"
        example={{ metric: '2 %', us: '2 %' }}
        whenEmpty={lacks.growth ? <StillNeeded what={lacks.growth} /> : 'of people and animals'}
      />
      <CountField
        path={['years']}
        label="Over how many years"
        called="the number of years"
        example="10"
        lack={lacks.years}
      />
    </>
  );
}

function NeedQuantity({
  path,
  ...asked
}: { readonly path: Path } & Pick<
  React.ComponentProps<typeof QuantityField>,
  'label' | 'called' | 'purpose' | 'example' | 'whenEmpty'
>) {
  return (
    <QuantityField
      {...asked}
      path={['demand', ...path]}
      read={(document) => needPart(document, path)}
      write={(document, entry) => withNeedPart(document, path, entry)}
    />
  );
}

function CountField({
  path,
  label,
  called,
  example,
  lack,
}: {
  readonly path: Path;
  readonly label: string;
  readonly called: string;
  readonly example: string;
  readonly lack: string | undefined;
}) {
  return (
    <CheckedField
      path={['demand', ...path]}
      label={label}
      called={called}
      placeholder={`like ${example}`}
      isDecimal
      lack={lack}
      check={(text) => readCount(text, called, example)}
      read={(document) => needPart(document, path)}
      write={(document, value) => withNeedPart(document, path, value)}
    />
  );
}

function SeasonField({ path, what }: { readonly path: Path; readonly what: string }) {
  return (
    <CheckedField
      path={['demand', ...path]}
      label="In which months"
      called={`the season of ${what}`}
      placeholder="like may to sep"
      whenEmpty="all year"
      check={(text) =>
        seasonRead(text) === undefined
          ? { ok: false, fault: SEASON_FAULT }
          : { ok: true, value: text }
      }
      readBack={seasonRead}
      read={(document) => needPart(document, path)}
      write={(document, value) => withNeedPart(document, path, value)}
    />
  );
}
