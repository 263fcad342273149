/**
 * A formula that finds an empty cell gives 0: in 0.25.1 IF, IFERROR and the look-ups leave their own cell empty then, so that
 * COUNT and ISBLANK see none there. Inside a formula the empty cell stays one, so that …&"" is "". The place is where the
 * engine makes a cell of a formula's result, one by one where it spills.
 */
import { FormulaRuntimeService, NumberValueObject, type BaseValueObject } from '@univerjs/engine-formula';
import type { Nullable } from '@univerjs/core';

interface MakesCells {
  _getValueObjectOfRuntimeData(value: Nullable<BaseValueObject>): unknown;
}
const service = FormulaRuntimeService.prototype as unknown as MakesCells;
const { _getValueObjectOfRuntimeData: cellOf } = service;
if (typeof cellOf !== 'function')
  throw new Error('The formula engine makes cells otherwise than it did: was its version changed?');
service._getValueObjectOfRuntimeData = function (value) {
  return cellOf.call(this, !value || value.isNull() ? NumberValueObject.create(0) : value);
};
