import type { ICellData, Nullable } from '@univerjs/core';
import { type ISetRangeValuesMutationParams, SetRangeValuesMutation } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { commands } from './inside';

/**
 * An answer may come back from the worker when its formula is gone, deleted or undone meanwhile. The grid would write it
 * into the cell, where it would stay as if it had been typed: it is dropped.
 */
export function dropLateAnswers(grid: Grid): void {
  commands(grid).beforeCommandExecuted(({ id, params }, options) => {
    if (id !== SetRangeValuesMutation.id || !options?.['applyFormulaCalculationResult']) return;
    const { unitId, subUnitId, cellValue } = params as ISetRangeValuesMutationParams;
    const workbook = grid.api.getActiveWorkbook();
    if (workbook?.getId() !== unitId) return;
    const present = workbook.getSheetBySheetId(subUnitId)?.getSheet().getCellMatrix();
    if (!present) return;
    for (const [row, answers] of Object.entries(cellValue ?? {}))
      for (const [column, answer] of Object.entries(answers as Record<string, Nullable<ICellData>>)) {
        const cell = present.getValue(Number(row), Number(column));
        const isLate = (answer?.v ?? null) !== null && !cell?.f && !cell?.si;
        if (isLate) delete (answers as Record<string, Nullable<ICellData>>)[column];
      }
  });
}
