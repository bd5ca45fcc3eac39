/** What is needed at the tank: one amount, or who and what needs it; and the tank itself. */
import type { DrawName } from '@fallwright/engine';
import { useNotebook } from '../app/notebook.ts';
import { useStore } from '../app/use-store.ts';
import { AssumedValue } from '../fields/assumed-value.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { SelectField } from '../fields/select-field.tsx';
import { useNeedWorkedOut } from '../fields/worked-out.ts';
import { valueAt, withValue } from '../state/site-document.ts';
import { readCount } from './bare-count.ts';
import { CheckedField } from './checked-field.tsx';
import { isToldApart, withAmount } from './need-entry.ts';
import { NEED_PANEL } from './need-panel.tsx';
import { needSummary } from './need-summary.ts';

const DRAWS: readonly { readonly value: DrawName; readonly label: string }[] = [
  { value: 'evenly', label: 'evenly over the day' },
  { value: 'house', label: 'as in a house' },
  { value: 'stock', label: 'as animals drink, by daylight' },
  { value: 'evening', label: 'in the evening, 18 to 21 h' },
];

export function NeedFields({
  isOpen,
  toggle,
}: {
  /** Whether the form lies open under the thread. */
  readonly isOpen: boolean;
  readonly toggle: () => void;
}) {
  const { place, answer } = useNotebook();
  const summary = useStore(place, ({ document }) => needSummary(document));
  const isApart = useStore(place, ({ document }) => isToldApart(document.demand));
  const hasDemand = useStore(place, ({ document }) => document.demand !== undefined);
  const plan = useStore(answer, (state) => state.shown?.value.plan);
  return (
    <>
      <QuantityField
        path={['demand']}
        label="Water needed"
        called="the demand"
        purpose="daily"
        workedOut={useNeedWorkedOut()}
        whenEmpty="each day, for people, stock and garden"
        write={withAmount}
      />
      <button
        type="button"
        className="button plain need-opener"
        aria-expanded={isOpen}
        aria-controls={isOpen ? NEED_PANEL : undefined}
        onClick={toggle}
      >
        {summary === '' ? 'Who and what needs it' : `For ${summary}`}
      </button>
      <QuantityField
        path={['tank', 'volume']}
        label="The tank holds"
        called="the volume of the tank"
        purpose="volume"
        example={{ metric: '2000 L', us: '500 gal' }}
        whenEmpty={
          plan !== undefined && !plan.isVolumeGiven && plan.volume > 0 ? (
            <AssumedValue value={plan.volume} purpose="volume" />
          ) : undefined
        }
      />
      <CheckedField
        path={['tank', 'days']}
        label="Days it must last"
        called="the number of days"
        placeholder="like 2"
        isDecimal
        whenEmpty="with the ram stopped"
        check={(text) => readCount(text, 'the number of days', '2')}
        readBack={() => 'with the ram stopped'}
        read={(document) => valueAt(document, ['tank', 'days'])}
        write={(document, value) => withValue(document, ['tank', 'days'], value)}
      />
      <SelectField
        path={['tank', 'draw']}
        label="Water is drawn"
        called="the draw"
        none={!hasDemand || isApart ? 'each use in its own way' : 'as in a house, as usual'}
        options={DRAWS}
        isOptional={false}
      />
    </>
  );
}
