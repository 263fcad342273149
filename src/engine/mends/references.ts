import {
  type ArrayValueObject,
  type BaseReferenceObject,
  type BaseValueObject,
  RangeReferenceObject,
} from '@univerjs/engine-formula';
import { asReference } from './nativeFunction';

/** The values of cells that a formula names; a list that it has made itself is none. */
export const named = (value: BaseValueObject): ArrayValueObject | undefined =>
  asReference(value)?.toArrayValueObject();

export const isAsLarge = (one: ArrayValueObject, other: ArrayValueObject): boolean =>
  one.getRowCount() === other.getRowCount() && one.getColumnCount() === other.getColumnCount();

/**
 * As many cells as another range has, from the first of this one. The reference itself stays as it is: the engine hands the
 * same one to every formula that names those cells, and in 0.25.1 widens it for all of them.
 */
export function asLargeAs(other: ArrayValueObject, reference: BaseReferenceObject): ArrayValueObject {
  const { startRow, startColumn } = reference.getRangePosition();
  const range = {
    startRow,
    startColumn,
    endRow: startRow + other.getRowCount() - 1,
    endColumn: startColumn + other.getColumnCount() - 1,
  };
  const copy = new RangeReferenceObject(range, reference.getSheetId(), reference.getUnitId());
  Object.assign(copy, { ...reference, _token: '', _rangeData: range, _refOffsetX: 0, _refOffsetY: 0 });
  return copy.toArrayValueObject();
}
