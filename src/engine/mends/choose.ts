/** CHOOSE of several, {1,2}: 0.25.1 makes the answer as large as the numbers alone, and cuts off what is chosen. */
import { type BaseValueObject, ErrorType } from '@univerjs/engine-formula';
import { toNumber } from './coerce';
import {
  failed,
  isArray,
  isError,
  type Mended,
  overAll,
  referenceExecutor,
  single,
  valuesIn,
} from './nativeFunction';

const chosen = (index: BaseValueObject, choices: readonly BaseValueObject[]): BaseValueObject => {
  const number = toNumber(index);
  return isError(number) ? number : (choices[Math.trunc(number) - 1] ?? failed(ErrorType.VALUE));
};

/** One number chooses what is there as it is: cells stay a reference. */
const choose = (index: BaseValueObject, ...choices: BaseValueObject[]): BaseValueObject => {
  const one = single(valuesIn(index));
  if (!isArray(one)) return chosen(one, choices);
  return overAll([one, ...choices.map(valuesIn)], (each, ...others) =>
    chosen(each as BaseValueObject, others),
  );
};

export const CHOICE: readonly Mended[] = [
  [referenceExecutor(2, 255, (index, ...choices) => choose(index as BaseValueObject, ...choices)), 'CHOOSE'],
];
