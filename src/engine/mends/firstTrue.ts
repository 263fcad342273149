/**
 * IFS gives what stands behind the first truth, and nothing behind that is asked: 0.25.1 ends with an error that a later test
 * has, and takes an empty cell for no answer. Microsoft's help of IFS.
 */
import { type BaseValueObject, ErrorType } from '@univerjs/engine-formula';
import { toTruth } from './coerce';
import { executor, failed, isArray, isError, type Mended, overAll, single } from './nativeFunction';

/** Tests and results in turn; a result behind one truth is handed on as it is, an array whole. */
function firstTrue(pairs: readonly BaseValueObject[]): BaseValueObject {
  const [first, result, ...others] = pairs;
  if (!first || !result) return failed(ErrorType.NA);
  const test = single(first);
  if (isArray(test)) return overAll(pairs, (...each) => firstTrue(each));
  const truth = toTruth(test);
  if (isError(truth)) return truth;
  return truth ? result : firstTrue(others);
}

export const FIRST_TRUE: readonly Mended[] = [
  [executor(2, 254, (...pairs) => (pairs.length % 2 === 0 ? firstTrue(pairs) : failed(ErrorType.NA))), 'IFS'],
];
