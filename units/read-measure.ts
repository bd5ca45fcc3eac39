/** A number and its unit, before anyone asks what it is for: `6 ft 3 in`, `1/2"`, `14 L/min`. */
import { readNumber } from './read-number.ts';
import { type Unit, unitCalled } from './unit-words.ts';

export interface Measure {
  /** The number as written, for a single number. */
  readonly amount: number;
  readonly unit: Unit;
  /** Value in SI. */
  readonly value: number;
}

export type MeasureRead =
  | { readonly ok: true; readonly measure: Measure }
  | { readonly ok: false; readonly fault: 'notANumber' }
  | { readonly ok: false; readonly fault: 'noUnit'; readonly amount: number }
  | {
      readonly ok: false;
      readonly fault: 'unknownUnit';
      readonly unitText: string;
      readonly amount: number;
    };

/** The written unit falls back to `defaultUnit`, as in `1.9 ± 0.1 m`, where the first number has none of its own. */
export function readMeasure(text: string, defaultUnit?: Unit): MeasureRead {
  const number = readNumber(text);
  if (!number) return { ok: false, fault: 'notANumber' };
  const amount = number.value;
  if (number.rest === '') {
    return defaultUnit
      ? { ok: true, measure: inUnit(amount, defaultUnit) }
      : { ok: false, fault: 'noUnit', amount };
  }
  const unit = unitCalled(number.rest);
  if (unit) return { ok: true, measure: inUnit(amount, unit) };
  return (
    readTwoParts(amount, number.rest) ?? {
      ok: false,
      fault: 'unknownUnit',
      unitText: number.rest,
      amount,
    }
  );
}

function inUnit(amount: number, unit: Unit): Measure {
  return { amount, unit, value: amount * unit.factor + unit.offset };
}

const TWO_PARTS = /^([^\d½¼¾⅓⅔⅛⅜⅝⅞]+?),?\s*([\d½¼¾⅓⅔⅛⅜⅝⅞].*)$/;

/** A large unit and a smaller one of the same kind: `6 ft 3 in`, `6'3"`, `1 lb 4 oz`. */
function readTwoParts(amount: number, rest: string): MeasureRead | undefined {
  const [, firstUnitText = '', secondText = ''] = TWO_PARTS.exec(rest) ?? [];
  const unit = unitCalled(firstUnitText);
  if (!unit) return undefined;
  const second = readNumber(secondText);
  if (!second) return undefined;
  // `6' 3` and `6 ft 3` mean inches to everyone who writes them so.
  const smallUnit = unitCalled(
    second.rest === '' && unit === unitCalled('ft') ? 'in' : second.rest,
  );
  if (smallUnit?.kind !== unit.kind || smallUnit.factor >= unit.factor || unit.offset !== 0) {
    return undefined;
  }
  const small = second.value * smallUnit.factor;
  const large = amount * unit.factor;
  return { ok: true, measure: { amount, unit, value: large < 0 ? large - small : large + small } };
}
