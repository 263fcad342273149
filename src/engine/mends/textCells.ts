/**
 * A formula in a cell of texts, with the format @, gives what it gives: in 0.25.1 its number is one as it is calculated, and a text
 * to whatever reads the cell later, so that SUM leaves it out as soon as another of its cells has changed. And a cell without a
 * format that takes such a number over stays one without: it would be one of texts from then on.
 */
import { CellValueType, type ICellData, isTextFormat } from '@univerjs/core';
import { BaseReferenceObject, type BaseValueObject } from '@univerjs/engine-formula';
import { replaceMethod } from './replaceMethod';

replaceMethod<[cell: ICellData], BaseValueObject>(
  BaseReferenceObject.prototype,
  'getCellValueObject',
  (original) =>
    function (cell) {
      const value = original.call(this, cell);
      const isLost = cell.t === CellValueType.NUMBER && value.isString() && Boolean(cell.f ?? cell.si);
      return isLost ? original.call(this, { ...cell, s: null }) : value;
    },
);

replaceMethod<[unitId: string, sheetId: string, row: number, column: number], string>(
  BaseReferenceObject.prototype,
  'getCellPattern',
  (original) =>
    function (...place) {
      const format = original.apply(this, place);
      return isTextFormat(format) ? '' : format;
    },
);
