/**
 * Functions of single numbers, in 0.25.1 wrong where they are given cells or lists: a cell with the text "12" is #VALUE! to
 * ROUND, an empty text 0 to MROUND, EOMONTH and WORKDAY, ROUND({1.26,2.26,3.26},{1,0}) rounds the third by nothing, and WORKDAY.INTL counts from
 * the day 0 where its date stands in a cell. They are given what stands in each place, as a number.
 */
import { type BaseValueObject, NumberValueObject } from '@univerjs/engine-formula';
import { toNumber } from './coerce';
import { type Executor, isError, type Mended, native, overEach, rewired, single } from './nativeFunction';

const asNumber = (value: BaseValueObject): BaseValueObject => {
  if (!value.isString() && !value.isNull()) return value;
  const number = toNumber(value);
  return isError(number) ? number : NumberValueObject.create(number);
};

const each = (name: string): Executor =>
  class extends native(name) {
    override calculate(...values: BaseValueObject[]) {
      return overEach(values, (...given) => {
        const numbers = given.map(asNumber);
        return numbers.find(isError) ?? (super.calculate(...numbers) as BaseValueObject);
      });
    }
  };

/** An argument as one value; none where it was left out. */
const given = (
  value: BaseValueObject | undefined,
  as: (one: BaseValueObject) => BaseValueObject = (one) => one,
): BaseValueObject[] => (value ? [as(single(value))] : []);

// prettier-ignore
const OF_NUMBERS = [
  'ABS', 'SQRT', 'EXP', 'LN', 'LOG10', 'SIN', 'COS', 'TAN', 'ASIN', 'ACOS', 'ATAN', 'ATAN2', 'SINH', 'COSH', 'TANH', 'ASINH',
  'ACOSH', 'ATANH', 'MOD', 'ROUND', 'ROUNDUP', 'ROUNDDOWN', 'MROUND', 'QUOTIENT', 'ACOT', 'ACOTH',
  'ISEVEN', 'ISODD', 'EOMONTH', 'YEAR', 'MONTH', 'DAY', 'DEC2BIN', 'DEC2HEX', 'DEC2OCT',
];

export const SCALARS: readonly Mended[] = [
  ...OF_NUMBERS.map((name): Mended => [each(name), name]),
  // Their days off are a list.
  rewired('WORKDAY', ([start, days, ...off]) => [...given(start), ...given(days, asNumber), ...off]),
  rewired('WORKDAY.INTL', ([start, days, weekend, ...off]) => [
    ...given(start),
    ...given(days, asNumber),
    ...given(weekend),
    ...off,
  ]),
];
