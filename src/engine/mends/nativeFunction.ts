import {
  ArrayValueObject,
  BaseFunction,
  type BaseReferenceObject,
  type BaseValueObject,
  ErrorType,
  ErrorValueObject,
  NullValueObject,
} from '@univerjs/engine-formula';
import { at } from '../../exposure/core/at';
import { make } from '../limits';
import { NATIVE_FAMILIES } from '../natives';

export type Executor = new (name: string) => BaseFunction;
/** A function of our own in the place of the engine's: the engine takes the later of two of one name. */
export type Mended = readonly [Executor, string];
export type Calculate = (...values: BaseValueObject[]) => BaseValueObject;

/** The class of a function that the engine brings along. Throws where there is none, for then this was made for another engine. */
export function native(name: string): Executor {
  const found = Object.values(NATIVE_FAMILIES)
    .flat()
    .find(([, each]) => String(each) === name);
  if (!found) throw new Error(`The formula engine has no ${name} to mend: was its version changed?`);
  const [executorClass] = found;
  return executorClass as unknown as Executor;
}

/** A function that takes so many values; any other number is #N/A. */
export const executor = (least: number, most: number, calculate: Calculate): Executor =>
  class extends BaseFunction {
    override minParams = least;
    override maxParams = most;
    override calculate(...values: BaseValueObject[]) {
      return calculate(...values);
    }
  };

/** The same, which is given cells as a reference to them and not as their values. */
export const referenceExecutor = (least: number, most: number, calculate: Calculate): Executor =>
  class extends BaseFunction {
    override minParams = least;
    override maxParams = most;
    override needsReferenceObject = true;
    override calculate(...values: BaseValueObject[]) {
      return calculate(...values);
    }
  };

/** The engine's own function, given other values. */
export const rewired = (name: string, prepare: (values: BaseValueObject[]) => BaseValueObject[]): Mended => [
  class extends native(name) {
    override calculate(...values: BaseValueObject[]) {
      return super.calculate(...prepare(values));
    }
  },
  name,
];

export const failed = (type: ErrorType): ErrorValueObject => ErrorValueObject.create(type);
export const isArray = (value: BaseValueObject): value is ArrayValueObject => value.isArray();
export const isError = (value: unknown): value is ErrorValueObject => value instanceof ErrorValueObject;

/** Cells that a formula names: functions that ask for references are given them in the place of values. */
export const asReference = (value: BaseValueObject): BaseReferenceObject | undefined =>
  value.isReferenceObject() ? (value as unknown as BaseReferenceObject) : undefined;
/** The values of cells where they came as a reference. */
export const valuesIn = (value: BaseValueObject): BaseValueObject =>
  asReference(value)?.toArrayValueObject() ?? value;

export const NOTHING = NullValueObject.create();

/** Rows of values that stand nowhere on a sheet. */
export const block = (rows: BaseValueObject[][]): ArrayValueObject =>
  ArrayValueObject.create({
    calculateValueList: rows,
    rowCount: rows.length,
    columnCount: rows[0]?.length ?? 0,
    unitId: '',
    sheetId: '',
    row: -1,
    column: -1,
  });
/** The same; one cell alone is its value. */
export const blockOrValue = (rows: BaseValueObject[][]): BaseValueObject => {
  const [first] = rows;
  return rows.length === 1 && first?.length === 1 ? at(first, 0) : block(rows);
};

export const rowsOf = (value: BaseValueObject): BaseValueObject[][] => {
  if (!isArray(value)) return [[value]];
  const [rows, columns] = [value.getRowCount(), value.getColumnCount()];
  return Array.from({ length: rows }, (_, r) =>
    Array.from({ length: columns }, (_unused, c) => value.get(r, c) ?? NOTHING),
  );
};

/** Cells with another value in the place of each. One alone stays a cell: functions take it otherwise than a value typed. */
export const replaced = (cells: ArrayValueObject, by: (cell: BaseValueObject) => BaseValueObject) =>
  block(rowsOf(cells).map((row) => row.map(by)));

/** One cell is its value. */
export const single = (value: BaseValueObject): BaseValueObject =>
  isArray(value) && value.getRowCount() === 1 && value.getColumnCount() === 1
    ? (value.get(0, 0) ?? NOTHING)
    : value;

/** What stands in a place: a single row or column serves every row or column, and beyond the others is nothing to be had. */
function memberAt(value: BaseValueObject, row: number, column: number): BaseValueObject {
  if (!isArray(value)) return value;
  const [rows, columns] = [value.getRowCount(), value.getColumnCount()];
  const [r, c] = [rows === 1 ? 0 : row, columns === 1 ? 0 : column];
  return r < rows && c < columns ? (value.get(r, c) ?? NOTHING) : failed(ErrorType.NA);
}

/** What a function of single values gives for arrays: the values of each place together. Nothing here heeds an error. */
export function overAll(values: readonly BaseValueObject[], calculate: Calculate): BaseValueObject {
  const all = values.map(single);
  if (!all.some(isArray)) return calculate(...all);
  let [rows, columns] = [1, 1];
  for (const value of all) {
    if (!isArray(value)) continue;
    rows = Math.max(rows, value.getRowCount());
    columns = Math.max(columns, value.getColumnCount());
  }
  make(rows * columns);
  return block(
    Array.from({ length: rows }, (_, r) =>
      Array.from({ length: columns }, (_unused, c) =>
        calculate(...all.map((value) => memberAt(value, r, c))),
      ),
    ),
  );
}

/** The same, where an error among the values of a place is the answer there. */
export const overEach = (values: readonly BaseValueObject[], calculate: Calculate): BaseValueObject =>
  overAll(values, (...given) => given.find((value) => value.isError()) ?? calculate(...given));
