/**
 * SORT, SORTBY and UNIQUE: in 0.25.1 UNIQUE minds letters' case and takes "5" for 5, SORT and SORTBY do not keep what is
 * alike in its order, and SORT sorts the cells themselves, so that all that read them later read them sorted.
 */
import { type BaseValueObject, ErrorType, NumberValueObject } from '@univerjs/engine-formula';
import { at } from '../../exposure/core/at';
import { toNumber, toTruth } from './coerce';
import {
  blockOrValue,
  executor,
  failed,
  isArray,
  isError,
  type Mended,
  rowsOf,
  single,
} from './nativeFunction';
import { type Cell, cellOf, keyOf, order } from './sortOrder';

const turned = (rows: readonly BaseValueObject[][]): BaseValueObject[][] =>
  (rows[0] ?? []).map((_, c) => rows.map((row) => at(row, c)));

/** Errors come behind all else, and empty cells behind them, whichever way is sorted. */
const rank = (cell: Cell): number => (cell === null ? 2 : Number(isError(cell)));
function compare(one: Cell, other: Cell, sign: number): number {
  const apart = rank(one) - rank(other);
  if (apart !== 0 || isError(one) || isError(other)) return apart;
  return order(one, other) * sign;
}

interface By {
  readonly cells: readonly Cell[];
  readonly sign: number;
}
/** The lines in their order; those that are alike stay as they were. */
function sorted(lines: readonly BaseValueObject[][], by: readonly By[]): BaseValueObject[][] {
  const places = lines.map((_, i) => i);
  places.sort((a, b) => {
    for (const { cells, sign } of by) {
      const apart = compare(at(cells, a), at(cells, b), sign);
      if (apart !== 0) return apart;
    }
    return 0;
  });
  return places.map((place) => at(lines, place));
}

const numbersIn = (value: BaseValueObject | undefined, standard: number) =>
  !value || value.isNull() ? [standard] : rowsOf(value).flat().map(toNumber);
const isSign = (sign: number): boolean => sign === 1 || sign === -1;

/** Several columns to sort by may be told as a list, {1,3}, each with its own way. */
function sort(
  array: BaseValueObject,
  index?: BaseValueObject,
  way?: BaseValueObject,
  byColumn?: BaseValueObject,
) {
  if (array.isError()) return array;
  const isAcross = byColumn ? toTruth(single(byColumn)) : false;
  const [columns, ways] = [numbersIn(index, 1), numbersIn(way, 1)];
  const error = [isAcross, ...columns, ...ways].find(isError);
  if (error) return error;
  const lines = isAcross ? turned(rowsOf(array)) : rowsOf(array);
  const width = lines[0]?.length ?? 0;
  const by = columns.map((column, i) => ({
    column: Math.trunc(column as number) - 1,
    sign: (ways.length === 1 ? ways[0] : ways[i]) as number,
  }));
  if (!by.every(({ column, sign }) => column >= 0 && column < width && isSign(sign)))
    return failed(ErrorType.VALUE);
  const done = sorted(
    lines,
    by.map(({ column, sign }) => ({
      cells: lines.map((line) => cellOf(at(line, column))),
      sign,
    })),
  );
  return blockOrValue(isAcross ? turned(done) : done);
}

const isRow = (value: BaseValueObject): boolean =>
  isArray(value) && value.getRowCount() === 1 && value.getColumnCount() > 1;

function sortBy(array: BaseValueObject, ...values: BaseValueObject[]): BaseValueObject {
  if (array.isError()) return array;
  const rows = rowsOf(array);
  const [first] = values;
  const isAcross = first !== undefined && isRow(first);
  const lines = isAcross ? turned(rows) : rows;
  const by: By[] = [];
  for (let i = 0; i < values.length; i += 2) {
    const value = at(values, i);
    if (value.isError()) return value;
    const sign = toNumber(single(values[i + 1] ?? NumberValueObject.create(1)));
    if (isError(sign)) return sign;
    const cells = rowsOf(value).flat().map(cellOf);
    if (cells.length !== lines.length || !isSign(sign)) return failed(ErrorType.VALUE);
    by.push({ cells, sign });
  }
  const done = sorted(lines, by);
  return blockOrValue(isAcross ? turned(done) : done);
}

const keyOfCell = (value: BaseValueObject): string => {
  const cell = cellOf(value);
  if (isError(cell)) return `error ${cell.getErrorType()}`;
  return `${cell === null ? 'empty' : typeof cell} ${keyOf(cell)}`;
};

function unique(array: BaseValueObject, byColumn?: BaseValueObject, once?: BaseValueObject): BaseValueObject {
  if (array.isError()) return array;
  const isAcross = byColumn ? toTruth(single(byColumn)) : false;
  if (isError(isAcross)) return isAcross;
  const isOnce = once ? toTruth(single(once)) : false;
  if (isError(isOnce)) return isOnce;
  const lines = isAcross ? turned(rowsOf(array)) : rowsOf(array);
  const groups = new Map<string, BaseValueObject[][]>();
  for (const line of lines) {
    const key = JSON.stringify(line.map(keyOfCell));
    groups.set(key, [...(groups.get(key) ?? []), line]);
  }
  const kept = [...groups.values()].flatMap((alike) => (isOnce && alike.length > 1 ? [] : alike.slice(0, 1)));
  if (kept.length === 0) return failed(ErrorType.CALC);
  return blockOrValue(isAcross ? turned(kept) : kept);
}

type Four = [BaseValueObject, BaseValueObject, BaseValueObject, BaseValueObject];
export const SORTING: readonly Mended[] = [
  [executor(1, 4, (...values) => sort(...(values as Four))), 'SORT'],
  [executor(2, 255, (array, ...values) => sortBy(array as BaseValueObject, ...values)), 'SORTBY'],
  [executor(1, 3, (...values) => unique(...(values as [BaseValueObject]))), 'UNIQUE'],
];
