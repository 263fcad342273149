/**
 * The deviation of no numbers at all is #DIV/0!, as Microsoft's help of STDEV.S and VAR.S has it of fewer than two; in 0.25.1 it
 * is 0, so that a column of texts, or one not filled in yet, has none.
 */
import { type BaseValueObject, ErrorType } from '@univerjs/engine-formula';
import { type Executor, failed, type Mended, native, rowsOf } from './nativeFunction';

const isNumbered = (value: BaseValueObject): boolean =>
  !value.isArray() ||
  rowsOf(value)
    .flat()
    .some((each) => each.isNumber() || each.isError());

const ofSome = (name: string): Executor =>
  class extends native(name) {
    override calculate(...values: BaseValueObject[]) {
      return values.some(isNumbered) ? super.calculate(...values) : failed(ErrorType.DIV_BY_ZERO);
    }
  };

export const SPREAD: readonly Mended[] = ['STDEV', 'STDEV.S', 'VAR', 'VAR.S'].map((name) => [
  ofSome(name),
  name,
]);
