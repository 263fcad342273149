/**
 * The functions that count texts count each as 0, also "2", which 0.25.1 takes for 2: Microsoft's help of AVERAGEA says so. And
 * the deviation of nothing at all is #DIV/0!, which it has as 0 of a sample.
 */
import { type BaseValueObject, ErrorType, NumberValueObject } from '@univerjs/engine-formula';
import { type Executor, failed, isArray, type Mended, native, replaced, rowsOf } from './nativeFunction';

const ZERO = NumberValueObject.create(0);
const textsAsZero = (value: BaseValueObject): BaseValueObject =>
  isArray(value) ? replaced(value, (each) => (each.isString() ? ZERO : each)) : value;
const isSomething = (value: BaseValueObject): boolean =>
  !isArray(value) ||
  rowsOf(value)
    .flat()
    .some((each) => !each.isNull());

const ofAll = (name: string): Executor =>
  class extends native(name) {
    override calculate(...values: BaseValueObject[]) {
      return values.some(isSomething)
        ? super.calculate(...values.map(textsAsZero))
        : failed(ErrorType.DIV_BY_ZERO);
    }
  };

export const AVERAGES: readonly Mended[] = ['AVERAGEA', 'STDEVA', 'STDEVPA', 'VARA', 'VARPA'].map((name) => [
  ofAll(name),
  name,
]);
