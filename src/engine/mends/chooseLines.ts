/** CHOOSEROWS and CHOOSECOLS in 0.25.1 take no list of numbers: CHOOSEROWS(A1:B9,{1,3}) is #VALUE!. */
import { type BaseValueObject, ErrorType } from '@univerjs/engine-formula';
import { toNumber } from './coerce';
import { blockOrValue, executor, failed, isError, type Mended, rowsOf } from './nativeFunction';

type Rows = BaseValueObject[][];
const turned = (rows: Rows): Rows =>
  (rows[0] ?? []).map((_, c) => rows.map((row) => row[c] as BaseValueObject));

/** Lines by their numbers, from the end where they are negative. */
function chosen(lines: Rows, numbers: readonly BaseValueObject[]): Rows | BaseValueObject {
  const found: Rows = [];
  for (const value of numbers.flatMap((each) => rowsOf(each).flat())) {
    const number = toNumber(value);
    if (isError(number)) return number;
    const place = Math.trunc(number);
    const line = place === 0 ? undefined : lines.at(place > 0 ? place - 1 : place);
    if (!line) return failed(ErrorType.VALUE);
    found.push(line);
  }
  return found;
}

const choosing = (turn: (rows: Rows) => Rows) =>
  executor(2, 255, (array, ...numbers) => {
    if (!array || array.isError()) return array ?? failed(ErrorType.VALUE);
    const lines = chosen(turn(rowsOf(array)), numbers);
    return Array.isArray(lines) ? blockOrValue(turn(lines)) : lines;
  });

export const PARTS: readonly Mended[] = [
  [choosing((rows) => rows), 'CHOOSEROWS'],
  [choosing(turned), 'CHOOSECOLS'],
];
