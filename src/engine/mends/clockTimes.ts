/**
 * TIME in 0.25.1 refuses negative minutes, as in TIME(9,-30,0) for half past eight; only a time before midnight is none. SECOND
 * drops a part of a second, which OpenFormula rounds. And a
 * number in brackets is a negative one to a bookkeeper and to spreadsheets, "(5)", where a text stands for a number.
 */
import {
  type BaseValueObject,
  ErrorType,
  NumberValueObject,
  StringValueObject,
} from '@univerjs/engine-formula';
import { toNumber } from './coerce';
import { executor, failed, isError, type Mended, overEach } from './nativeFunction';

const MOST = 32_767;
const DAY = 86_400;
/** As the engine's own TIME shows it. */
const FORMAT = 'hh:mm AM/PM';

function time(...given: BaseValueObject[]): BaseValueObject {
  const parts = given.map(toNumber);
  const wrong = parts.find(isError);
  if (wrong) return wrong;
  const [hours = 0, minutes = 0, seconds = 0] = (parts as number[]).map(Math.floor);
  const all = hours * 3600 + minutes * 60 + seconds;
  if (all < 0 || [hours, minutes, seconds].some((part) => Math.abs(part) > MOST))
    return failed(ErrorType.NUM);
  return NumberValueObject.create((all % DAY) / DAY, FORMAT);
}

function second(value: BaseValueObject): BaseValueObject {
  const at = toNumber(value);
  if (isError(at)) return at;
  return at < 0 ? failed(ErrorType.NUM) : NumberValueObject.create(Math.round((at % 1) * DAY) % 60);
}

const { convertToNumberObjectValue } = StringValueObject.prototype;
StringValueObject.prototype.convertToNumberObjectValue = function () {
  const inside = /^\s*\(([^()+-]+)\)\s*$/.exec(this.getValue())?.[1];
  if (inside === undefined) return convertToNumberObjectValue.call(this);
  const read = StringValueObject.create(inside).convertToNumberObjectValue();
  return read.isNumber() ? NumberValueObject.create(-(read.getValue() as number)) : read;
};

export const TIME: readonly Mended[] = [
  [executor(3, 3, (...values) => overEach(values, time)), 'TIME'],
  [executor(1, 1, (...values) => overEach(values, (each) => second(each as BaseValueObject))), 'SECOND'],
];
