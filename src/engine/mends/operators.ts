/**
 * The operators, in the place of the engine's own (0.25.1), which
 * – answer a comparison with a column from an index that knows no difference between empty, "" and 0, nor between 12 and
 *   "12", and drops errors and FALSE, from the second time on; and put the values of arrays on the way into it as if they
 *   stood in cells;
 * – take * and ? in a text that is compared for a pattern;
 * – say of a truth that it does not differ from a text or a number;
 * – compare all seventeen digits, so that 1.1^2 is not 1.21;
 * – take nothing for what lies beyond the shorter of two rows: {1,2,3}*{1,2} ends in #N/A;
 * – write numbers into texts with seventeen digits.
 * One rule serves all: each operator is a function of two single values, and over arrays of the values of each place.
 */
import {
  BaseFunction,
  type BaseValueObject,
  BooleanValueObject,
  ErrorType,
  NumberValueObject,
  StringValueObject,
} from '@univerjs/engine-formula';
import { toNumber, toText } from './coerce';
import { executor, failed, isError, type Mended, overEach } from './nativeFunction';
import { order, type Plain } from './sortOrder';

type Arithmetic = (one: NumberValueObject, other: number) => BaseValueObject;

/** What the engine does with two numbers stays its own: it is right in the last digit where binary is not. */
const arithmetic =
  (calculate: Arithmetic) =>
  (one: BaseValueObject, other: BaseValueObject): BaseValueObject =>
    overEach([one, other], (left, right) => {
      const a = toNumber(left as BaseValueObject);
      if (isError(a)) return a;
      const b = toNumber(right as BaseValueObject);
      return isError(b) ? b : calculate(NumberValueObject.create(a), b);
    });
const ARITHMETIC: Readonly<Record<string, Arithmetic>> = {
  PLUS: (one, other) => one.plusBy(other),
  MINUS: (one, other) => one.minusBy(other),
  MULTIPLY: (one, other) => one.multiplyBy(other),
  DIVIDED: (one, other) => one.dividedBy(other),
  POWER: (one, other) => one.pow(NumberValueObject.create(other)),
};

const IS: Readonly<Record<string, (sign: number) => boolean>> = {
  '=': (sign) => sign === 0,
  '<>': (sign) => sign !== 0,
  '<': (sign) => sign < 0,
  '<=': (sign) => sign <= 0,
  '>': (sign) => sign > 0,
  '>=': (sign) => sign >= 0,
};
const plain = (value: BaseValueObject): Plain => (value.isNull() ? null : value.getValue());

/** The engine asks its own for `setCompareType` before each comparison. */
class Compare extends BaseFunction {
  override minParams = 2;
  override maxParams = 2;
  #sign = '=';

  setCompareType(sign: string): void {
    this.#sign = sign;
  }

  override calculate(...values: BaseValueObject[]): BaseValueObject {
    const is = IS[this.#sign];
    return overEach(values, (one, other) => {
      const [left, right] = [one as BaseValueObject, other as BaseValueObject];
      if (!is || left.isLambda() || right.isLambda()) return failed(ErrorType.VALUE);
      return BooleanValueObject.create(is(order(plain(left), plain(right))));
    });
  }
}

/** Also the function CONCATENATE, which the engine has & do. */
const concatenate = (...values: BaseValueObject[]): BaseValueObject =>
  overEach(values, (...texts) => StringValueObject.create(texts.map(toText).join('')));

export const OPERATORS: readonly Mended[] = [
  ...Object.entries(ARITHMETIC).map(([name, calculate]): Mended => {
    const operator = arithmetic(calculate);
    return [executor(2, 2, (one, other) => operator(one as BaseValueObject, other as BaseValueObject)), name];
  }),
  [Compare, 'COMPARE'],
  [executor(1, 255, concatenate), 'CONCATENATE'],
];
