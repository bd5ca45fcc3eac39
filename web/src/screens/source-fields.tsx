import { formatQuantity } from '@fallwright/units';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { AssumedValue } from '../fields/assumed-value.tsx';
import {
  FlowBeside,
  FlowPanel,
  MeasuredFlow,
  MeasureFold,
  WhenFetched,
} from '../fields/measure-fold.tsx';
import { More } from '../fields/more.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { SelectField } from '../fields/select-field.tsx';
import { textOf } from '../state/entry.ts';
import { gaugingsOf } from '../state/measured-entry.ts';
import { valueAt } from '../state/site-document.ts';
import { withStore } from '../state/source-entry.ts';
import { runsInside, watchName } from '../state/watches.ts';

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
  const { place, answer, settings, watches } = useNotebook();
  const store = useStore(place, (state) => textOf(valueAt(state.document, ['source', 'store'])));
  const hasMore = useStore(
    place,
    ({ document }) =>
      valueAt(document, ['temperature']) !== undefined ||
      valueAt(document, ['altitude']) !== undefined ||
      valueAt(document, ['source', 'intake']) !== undefined,
  );
  const count = useStore(place, ({ document }) => gaugingsOf(document).length);
  const isWritten = useStore(
    place,
    ({ document }) => valueAt(document, ['source', store === '' ? 'flow' : 'inflow']) !== undefined,
  );
  const isLimited = useStore(
    place,
    ({ document }) =>
      valueAt(document, ['source', 'drySeason']) !== undefined ||
      valueAt(document, ['source', 'share']) !== undefined,
  );
  const measured = (
    <WhenFetched meanwhile="measured">
      <MeasuredFlow />
    </WhenFetched>
  );
  const beside = count > 0 && isWritten && (
    <WhenFetched>
      <FlowBeside name={store === '' ? 'flow' : 'inflow'} />
    </WhenFetched>
  );
  const siteId = useStore(place, ({ id }) => id);
  const isTiming = useStore(watches.running, (running) =>
    runsInside(running, watchName(siteId, 'source.gauging')),
  );
  const measuring = (
    <MeasureFold
      key={siteId}
      summary={
        count === 0
          ? 'Measure the flow'
          : `Measured: ${timesCounted(count)}${isTiming ? '; the watch runs' : ''}`
      }
      // A place that opens with a watch running shows it.
      isOpenAtFirst={isTiming}
    >
      <FlowPanel />
    </MeasureFold>
  );
  const temperature = useStore(
    answer,
    (state) => state.shown?.value.installation.water.temperature,
  );
  const countedOn = useStore(answer, ({ shown }) => {
    const source = shown?.value.installation.source;
    return source?.kind === 'store' ? source.inflow : source?.yield;
  });
  const system = useStore(settings, (state) => state.system);
  return (
    <>
      {store === '' ? (
        <QuantityField
          path={['source', 'flow']}
          label="Water it gives"
          called="the flow of the source"
          purpose="sourceFlow"
          words={['plenty']}
          whenEmpty={count > 0 ? measured : 'all it gives, in the driest month; or: plenty'}
          after={beside}
          isRequired
          mayBeEmptied={count > 0}
        />
      ) : (
        <>
          <QuantityField
            path={['source', 'inflow']}
            label="Water that runs in"
            called="the inflow"
            purpose="sourceFlow"
            isRequired={store === 'spring box' || store === 'pool'}
            whenEmpty={count > 0 ? measured : undefined}
            after={beside}
            mayBeEmptied={count > 0}
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
      {measuring}
      <More summary="Dry season, share allowed" isUsed={isLimited}>
        <QuantityField
          path={['source', 'drySeason']}
          label="Flow in the driest time"
          called="the dry-season flow"
          purpose="sourceFlow"
          whenEmpty="it counts when it is the lower one"
        />
        <QuantityField
          path={['source', 'share']}
          label="Share that may be taken"
          called="the share"
          purpose="share"
          whenEmpty="as the owner or the local authority allows"
          example={{ metric: '50 %', us: '50 %' }}
        />
        {isLimited && countedOn !== undefined && (
          <p className="note">
            The ram is counted on {formatQuantity(countedOn, 'sourceFlow', system)}.
          </p>
        )}
      </More>
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

const timesCounted = (count: number): string =>
  count === 1 ? '1 measurement' : `${count} measurements`;
