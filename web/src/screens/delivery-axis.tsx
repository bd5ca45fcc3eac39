import type { System } from '@fallwright/units';
import { formatNumber, formatQuantity, readQuantity, unitShown } from '@fallwright/units';
import type { DeliveredAmount } from '../answer/words.ts';
import { layOutDeliveryAxis } from '../drawing/delivery-axis.ts';

const percent = (share: number): string => `${(100 * share).toFixed(2)}%`;
const anchorAt = (share: number): 'start' | 'middle' | 'end' =>
  share < 0.15 ? 'start' : share > 0.85 ? 'end' : 'middle';

/** What reaches the tank against what is needed, on an axis from nought: a stroke, and a band once it is known how sure it is. */
export function DeliveryAxis({
  amount,
  band,
  system,
}: {
  readonly amount: DeliveredAmount;
  readonly band?: { readonly low: number; readonly high: number } | undefined;
  readonly system: System;
}) {
  const { delivered, needed, inWords, neededInWords } = amount;
  const axis = layOutDeliveryAxis({ delivered, needed, band, unit: dailyUnit(system) });
  const words = [
    inWords,
    ...(band === undefined
      ? []
      : [
          `likely ${formatNumber(band.low, 'daily', system)} to ${formatNumber(band.high, 'daily', system)}`,
        ]),
    ...(neededInWords === undefined ? [] : [`${neededInWords} needed`]),
  ].join('; ');
  return (
    <svg className="delivery-axis" role="img" aria-label={words}>
      {axis.band !== undefined && (
        <rect
          className="band"
          x={percent(axis.band.low)}
          width={percent(axis.band.high - axis.band.low)}
          y="15"
          height="18"
        />
      )}
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
