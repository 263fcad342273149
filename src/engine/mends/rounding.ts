/** TRUNC goes one too near to 0 for exact negatives in 0.25.1: TRUNC(-7) is -6. The digits behind the place are cut off. */
import { type BaseValueObject, NumberValueObject } from '@univerjs/engine-formula';
import { toNumber } from './coerce';
import { fifteen } from './digits';
import { executor, isError, type Mended, overEach } from './nativeFunction';

/** Moves the point by decimal digits, so that nothing is lost to binary. */
const moved = (number: number, places: number): number => {
  const [digits = '0', power = '0'] = String(number).split('e');
  return Number(`${digits}e${Number(power) + places}`);
};

function trunc(value: BaseValueObject, digits: BaseValueObject): BaseValueObject {
  const number = toNumber(value);
  if (isError(number)) return number;
  const asked = toNumber(digits);
  if (isError(asked)) return asked;
  const places = Math.trunc(asked);
  return NumberValueObject.create(moved(Math.trunc(moved(fifteen(number), places)), -places) + 0);
}

export const ROUNDING: readonly Mended[] = [
  [
    executor(1, 2, (value, digits = NumberValueObject.create(0)) =>
      overEach([value as BaseValueObject, digits], (one, places) =>
        trunc(one as BaseValueObject, places as BaseValueObject),
      ),
    ),
    'TRUNC',
  ],
];
