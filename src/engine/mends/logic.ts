/**
 * IF, AND, OR, XOR and NOT: in 0.25.1 any text is true to IF, and AND, OR and XOR pass over it. A text that stands alone is
 * #VALUE! unless it is TRUE or FALSE; among cells it does not count. Microsoft's help of AND says both.
 */
import {
  type BaseValueObject,
  BooleanValueObject,
  ErrorType,
  type ErrorValueObject,
} from '@univerjs/engine-formula';
import { toTruth } from './coerce';
import {
  executor,
  failed,
  isArray,
  isError,
  type Mended,
  NOTHING,
  overAll,
  overEach,
  rowsOf,
  single,
} from './nativeFunction';

function choose(test: BaseValueObject, yes: BaseValueObject, no: BaseValueObject): BaseValueObject {
  const truth = toTruth(test);
  if (isError(truth)) return truth;
  return truth ? yes : no;
}
const FALSE = BooleanValueObject.create(false);
/** One test gives what it chooses as it is, an array whole; of several each chooses in its place. */
function iff(
  test: BaseValueObject,
  yes: BaseValueObject = NOTHING,
  no: BaseValueObject = FALSE,
): BaseValueObject {
  const one = single(test);
  return isArray(one)
    ? overAll([one, yes, no], (each, a, b) =>
        choose(each as BaseValueObject, a as BaseValueObject, b as BaseValueObject),
      )
    : choose(one, yes, no);
}

type Truth = boolean | ErrorValueObject;
const counts = (value: BaseValueObject): boolean => value.isError() || value.isBoolean() || value.isNumber();
/** The truths among the values: of cells and lists those that are one. */
const truthsIn = (value: BaseValueObject): Truth[] => {
  if (isArray(value)) return rowsOf(value).flat().filter(counts).map(toTruth);
  return value.isNull() ? [] : [toTruth(value)];
};

const joined = (join: (truths: readonly boolean[]) => boolean) =>
  executor(1, 255, (...values) => {
    const truths = values.flatMap(truthsIn);
    const error = truths.find(isError);
    if (error || truths.length === 0) return error ?? failed(ErrorType.VALUE);
    return BooleanValueObject.create(join(truths as boolean[]));
  });

const not = (value: BaseValueObject): BaseValueObject => {
  const truth = toTruth(value);
  return isError(truth) ? truth : BooleanValueObject.create(!truth);
};

export const LOGIC: readonly Mended[] = [
  [executor(2, 3, (test, ...branches) => iff(test as BaseValueObject, ...branches)), 'IF'],
  [joined((truths) => truths.every(Boolean)), 'AND'],
  [joined((truths) => truths.some(Boolean)), 'OR'],
  [joined((truths) => truths.filter(Boolean).length % 2 === 1), 'XOR'],
  [
    executor(1, 1, (value) => overEach([value as BaseValueObject], (each) => not(each as BaseValueObject))),
    'NOT',
  ],
];
