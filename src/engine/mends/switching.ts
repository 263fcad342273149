/**
 * SWITCH compares by the letters in 0.25.1, so that 5 is "5" and TRUE is "TRUE". Its values are the same as = has them be.
 */
import { type BaseValueObject, ErrorType } from '@univerjs/engine-formula';
import { executor, failed, isError, type Mended, overAll, single } from './nativeFunction';
import { cellOf, order } from './sortOrder';

function isSame(one: BaseValueObject, other: BaseValueObject): boolean {
  const [left, right] = [cellOf(one), cellOf(other)];
  return !isError(left) && !isError(right) && order(left, right) === 0;
}

/** Values and results in turn, and behind them, if they are odd in number, what holds for all else. */
function choose(value: BaseValueObject, ...choices: BaseValueObject[]): BaseValueObject {
  if (value.isError()) return value;
  for (let i = 0; i + 1 < choices.length; i += 2) {
    const [wanted, result] = choices.slice(i, i + 2);
    if (wanted?.isError()) return wanted;
    if (wanted && result && isSame(value, wanted)) return result;
  }
  return (choices.length % 2 === 1 ? choices.at(-1) : undefined) ?? failed(ErrorType.NA);
}

/** One value gives what it chooses as it is, an array whole. */
const switched = (value: BaseValueObject, ...choices: BaseValueObject[]): BaseValueObject => {
  const all = [single(value), ...choices];
  const isOne =
    !single(value).isArray() && choices.every((each, i) => i % 2 === 1 || !single(each).isArray());
  const [first, ...others] = all as [BaseValueObject, ...BaseValueObject[]];
  if (isOne) return choose(first, ...others.map((each, i) => (i % 2 === 0 ? single(each) : each)));
  return overAll(all, (...each) => choose(...(each as [BaseValueObject])));
};

export const SWITCHING: readonly Mended[] = [
  [executor(3, 255, (value, ...choices) => switched(value as BaseValueObject, ...choices)), 'SWITCH'],
];
