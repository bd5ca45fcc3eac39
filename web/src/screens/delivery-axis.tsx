import type { System } from '@fallwright/units';
import { formatQuantity, readQuantity, unitShown } from '@fallwright/units';
import type { DeliveredAmount } from '../answer/words.ts';
import { layOutDeliveryAxis } from '../drawing/delivery-axis.ts';

const percent = (share: number): string => `${(100 * share).toFixed(2)}%`;
const anchorAt = (share: number): 'start' | 'middle' | 'end' =>
  share < 0.15 ? 'start' : share > 0.85 ? 'end' : 'middle';

/** What reaches the tank against what is needed, on an axis from nought. A point, not a band, while no spread is known. */
export function DeliveryAxis({
  amount,
  system,
}: {
  readonly amount: DeliveredAmount;
  readonly system: System;
}) {
  const { delivered, needed, inWords, neededInWords } = amount;
  const axis = layOutDeliveryAxis({ delivered, needed, unit: dailyUnit(system) });
  const words = neededInWords === undefined ? inWords : `${inWords}; ${neededInWords} needed`;
  return (
    <svg className="delivery-axis" role="img" aria-label={words}>
      <line className="axis" x1="0" y1="24" x2="100%" y2="24" />
      <text className="end" x="0" y="50">
        0
      </text>
      <text className="end" x="100%" y="50" textAnchor="end">
        {formatQuantity(axis.end, 'daily', system)}
      </text>
      <line
        className="delivered"
        x1={percent(axis.delivered)}
        x2={percent(axis.delivered)}
        y1="12"
        y2="36"
      />
      {axis.needed !== undefined && (
        <>
          <line
            className="needed"
            x1={percent(axis.needed)}
            x2={percent(axis.needed)}
            y1="14"
            y2="36"
          />
          <svg x={percent(axis.needed)} y="6" style={{ overflow: 'visible' }} aria-hidden="true">
            <path className="wedge" d="M0 8l-5-8h10z" />
          </svg>
          <text x={percent(axis.needed)} y="66" textAnchor={anchorAt(axis.needed)}>
            {neededInWords} needed
          </text>
        </>
      )}
    </svg>
  );
}

/** One litre a day, or one gallon a day, in SI: asked of the units themselves. */
function dailyUnit(system: System): number {
  const read = readQuantity(`1 ${unitShown('daily', system)}`, 'daily');
  if (!read.ok) throw new RangeError(`1 ${unitShown('daily', system)} should be readable`);
  return read.value.value;
}
