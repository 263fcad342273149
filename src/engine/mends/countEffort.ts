/**
 * The engine goes on with a formula whatever it takes: it can be held by no one. Here it counts, for those who set limits.
 *
 * For @univerjs/engine-formula 0.25.1.
 */
import {
  type BaseFunction,
  BaseReferenceObject,
  type BaseValueObject,
  FormulaRuntimeService,
  Interpreter,
} from '@univerjs/engine-formula';
import { begin, look, make, step } from '../limits';
import { isArray, native } from './nativeFunction';
import { replaceMethod } from './replaceMethod';

replaceMethod<unknown[], void>(
  FormulaRuntimeService.prototype,
  'setCurrent',
  (original) =>
    function (...args) {
      begin();
      original.apply(this, args);
    },
);
replaceMethod<unknown[], unknown>(
  Interpreter.prototype,
  '_execute',
  (original) =>
    function (...args) {
      step();
      return original.apply(this, args);
    },
);
replaceMethod<unknown[], unknown>(
  BaseReferenceObject.prototype,
  'toArrayValueObject',
  (original) =>
    function (...args) {
      const { startRow, endRow, startColumn, endColumn } = (this as BaseReferenceObject).getRangePosition();
      look((endRow - startRow + 1) * (endColumn - startColumn + 1));
      return original.apply(this, args);
    },
);

const number = (value: BaseValueObject | undefined): number =>
  value?.isNumber() ? Number(value.getValue()) : 1;
const sides = (value: BaseValueObject | undefined): readonly [rows: number, columns: number] =>
  value && isArray(value) ? [value.getRowCount(), value.getColumnCount()] : [1, 1];

/** How many cells functions make that take the size from a number. */
const MADE: Readonly<Record<string, (values: readonly BaseValueObject[]) => number>> = {
  SEQUENCE: ([rows, columns]) => number(rows) * number(columns),
  RANDARRAY: ([rows, columns]) => number(rows) * number(columns),
  MAKEARRAY: ([rows, columns]) => number(rows) * number(columns),
  EXPAND: ([array, rows, columns]) =>
    Math.max(number(rows), sides(array)[0]) * Math.max(number(columns), sides(array)[1]),
  MUNIT: ([side]) => number(side) ** 2,
  MMULT: ([one, other]) => sides(one)[0] * sides(other)[1],
};

for (const [name, size] of Object.entries(MADE))
  replaceMethod<BaseValueObject[], BaseValueObject>(
    (native(name) as unknown as { readonly prototype: BaseFunction }).prototype,
    'calculate',
    (original) =>
      function (...values) {
        make(size(values));
        return original.apply(this, values);
      },
  );
