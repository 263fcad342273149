/**
 * Formulas that go round in a circle have no answer. In 0.25.1 of the engine each of them is calculated once, with what its
 * cells held before, and nobody is told: A1 with =A1+1 shows 1, then 2. Here a formula that reads a cell which has still to be
 * calculated, and for that waits for this one, is refused, and its error goes on to all that use it. To name a cell is no
 * reading: =ROW(A1) may stand in A1. The engine looks for circles before it calculates; only where it suspects one are cells
 * watched as they are read.
 *
 * For @univerjs/engine-formula 0.25.1.
 */
import { CellValueType } from '@univerjs/core';
import {
  BaseReferenceObject,
  ErrorType,
  FormulaDependencyGenerator,
  FormulaRuntimeService,
  type IFormulaRuntimeService,
} from '@univerjs/engine-formula';
import { Refusal } from './failures';
import { replaceMethod } from './mends/replaceMethod';

export const CIRCLE =
  'The formula goes round in a circle: it needs a value that itself needs this one. Change one of the two.';

interface Tree {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly row: number;
  readonly column: number;
  /** Of what is calculated for no cell, such as a conditional format. */
  readonly formulaId?: string | null;
  readonly featureId?: string | null;
}

/** Cells that are still to be calculated, and whether the formula in hand has read one of them. */
interface Waiting {
  readonly cells: Set<string>;
  isRead: boolean;
}
/** By the values that a calculation has so far, which the references that it reads know. */
const waitingBy = new WeakMap<object, Waiting>();
/** Most workbooks have no circles, and read their cells at full speed. */
let isSuspected = false;

const key = (unitId: string, sheetId: string, row: number, column: number): string =>
  `${unitId}!${sheetId}!${row},${column}`;

replaceMethod<[readonly Tree[]], boolean>(
  FormulaDependencyGenerator.prototype,
  '_checkIsCycleDependency',
  (check) =>
    function (trees) {
      const isCircle = check.call(this, trees);
      if (!isCircle) return false;
      const { _runtimeService: runtime } = this as { readonly _runtimeService: IFormulaRuntimeService };
      const ofCells = trees.filter(({ formulaId, featureId }) => formulaId == null && featureId == null);
      const cells = ofCells.map(({ unitId, subUnitId, row, column }) => key(unitId, subUnitId, row, column));
      waitingBy.set(runtime.getUnitData(), { cells: new Set(cells), isRead: false });
      isSuspected = true;
      return true;
    },
);

const { getCellData } = BaseReferenceObject.prototype;
BaseReferenceObject.prototype.getCellData = function (row, column) {
  if (isSuspected) {
    const { _runtimeData: values } = this as unknown as { readonly _runtimeData: object };
    const waiting = waitingBy.get(values);
    if (waiting?.cells.has(key(this.getUnitId(), this.getSheetId(), row, column))) {
      waiting.isRead = true;
      return { v: ErrorType.REF, t: CellValueType.STRING };
    }
  }
  return getCellData.call(this, row, column);
};

const hasRoom = (at: FormulaRuntimeService, reference: BaseReferenceObject): boolean =>
  at.currentRow + reference.getRowCount() <= at.currentRowCount &&
  at.currentColumn + reference.getColumnCount() <= at.currentColumnCount;

const { setRuntimeData } = FormulaRuntimeService.prototype;
FormulaRuntimeService.prototype.setRuntimeData = function (value) {
  const waiting = isSuspected ? waitingBy.get(this.getUnitData()) : undefined;
  if (!waiting || waiting.cells.size === 0) {
    setRuntimeData.call(this, value);
    return;
  }
  // What a formula such as =A1 refers to is read as its cell is filled; what has no room there is not.
  if (value.isReferenceObject() && hasRoom(this, value as BaseReferenceObject))
    (value as BaseReferenceObject).iterator(() => {});
  const given = waiting.isRead ? new Refusal(ErrorType.REF, CIRCLE, 'Formula') : value;
  waiting.isRead = false;
  waiting.cells.delete(key(this.currentUnitId, this.currentSubUnitId, this.currentRow, this.currentColumn));
  setRuntimeData.call(this, given);
};
