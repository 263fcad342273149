/**
 * ROW, ROWS, COLUMN and COLUMNS ask where a reference lies, and not what its cells hold. In 0.25.1 of the engine they are given
 * the values all the same, so that =ROW(A1) in A1 waits for itself, and ROWS of a whole column reads all of it.
 *
 * For @univerjs/engine-formula 0.25.1.
 */
import { ArrayValueObject, type BaseReferenceObject, type BaseValueObject } from '@univerjs/engine-formula';
import { type Mended, native } from './mends/nativeFunction';

/** As large as a reference and in its place, with nothing in it. */
function placeOnly(reference: BaseReferenceObject): ArrayValueObject {
  const { startRow, startColumn } = reference.getRangePosition();
  return ArrayValueObject.create({
    calculateValueList: [],
    rowCount: reference.getRowCount(),
    columnCount: reference.getColumnCount(),
    unitId: reference.getUnitId(),
    sheetId: reference.getSheetId(),
    row: startRow,
    column: startColumn,
  });
}

type Given = BaseValueObject | BaseReferenceObject | undefined;

function ofPlaces(name: string): Mended {
  const Native = native(name) as unknown as new (name: string) => {
    calculate(given: Given): BaseValueObject;
  };
  class OfPlaces extends Native {
    readonly needsReferenceObject = true;

    override calculate(given: Given): BaseValueObject {
      return super.calculate(given?.isReferenceObject() ? placeOnly(given as BaseReferenceObject) : given);
    }
  }
  return [OfPlaces as unknown as Mended[0], name];
}

export const PLACES: readonly Mended[] = ['ROW', 'ROWS', 'COLUMN', 'COLUMNS'].map(ofPlaces);
