import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { AssumedValue } from '../fields/assumed-value.tsx';
import { More } from '../fields/more.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { SelectField } from '../fields/select-field.tsx';
import { useWorkedOut } from '../fields/worked-out.ts';
import { textOf } from '../state/entry.ts';
import { valueAt } from '../state/site-document.ts';
import { withStore } from '../state/source-entry.ts';

const STORE_OPTIONS = ['bucket', 'tank', 'spring box', 'pool'].map((value) => ({
  value,
  label: `a ${value}, which runs down`,
}));

const INTAKE_OPTIONS = ['open end', 'sharp edge', 'bell mouth', 'strainer', 'foot valve'].map(
  (value) => ({
    value,
    label: value,
  }),
);

export function SourceFields() {
  const { place, answer } = useNotebook();
  const store = useStore(place, (state) => textOf(valueAt(state.document, ['source', 'store'])));
  const gauged = useWorkedOut('sourceFlow');
  const hasMore = useStore(
    place,
    ({ document }) =>
      valueAt(document, ['temperature']) !== undefined ||
      valueAt(document, ['altitude']) !== undefined ||
      valueAt(document, ['source', 'intake']) !== undefined,
  );
  const temperature = useStore(
    answer,
    (state) => state.shown?.value.installation.water.temperature,
  );
  return (
    <>
      {store === '' ? (
        <QuantityField
          path={['source', 'flow']}
          label="Water it gives"
          called="the flow of the source"
          purpose="sourceFlow"
          words={['plenty']}
          workedOut={gauged}
          whenEmpty="all it gives, in the driest month; or: plenty"
          isRequired
        />
      ) : (
        <>
          <QuantityField
            path={['source', 'inflow']}
            label="Water that runs in"
            called="the inflow"
            purpose="sourceFlow"
            workedOut={gauged}
            isRequired={store === 'spring box' || store === 'pool'}
          />
          <QuantityField
            path={['source', 'volume']}
            label={`What the ${store} holds`}
            called={`the volume of the ${store}`}
            purpose="volume"
            whenEmpty="above the intake, when full"
            isRequired
          />
          <QuantityField
            path={['source', 'depth']}
            label="Depth over the intake"
            called="the depth over the intake"
            purpose="depth"
          />
        </>
      )}
      <SelectField
        path={['source', 'store']}
        label="Drawn from"
        called="the store"
        none="a stream or spring"
        options={STORE_OPTIONS}
        isOptional={false}
        write={withStore}
      />
      <More summary="Intake, temperature, altitude" isUsed={hasMore}>
        <SelectField
          path={['source', 'intake']}
          label="Intake"
          called="the intake"
          none="not said"
          options={INTAKE_OPTIONS}
        />
        <QuantityField
          path={['temperature']}
          label="Water temperature"
          called="the temperature of the water"
          purpose="temperature"
          whenEmpty={
            temperature !== undefined && <AssumedValue value={temperature} purpose="temperature" />
          }
        />
        <QuantityField
          path={['altitude']}
          label="Altitude"
          called="the altitude"
          purpose="altitude"
        />
      </More>
    </>
  );
}
