import { generateRandomId, type IMutationInfo } from '@univerjs/core';
import {
  InsertSheetMutation,
  RemoveSheetMutation,
  SetRangeValuesMutation,
} from '@univerjs/preset-sheets-core';
import {
  AddConditionalRuleMutation,
  DeleteConditionalRuleMutation,
} from '@univerjs/preset-sheets-conditional-formatting';
import {
  AddDataValidationMutation,
  RemoveDataValidationMutation,
} from '@univerjs/preset-sheets-data-validation';
import { RemoveNoteMutation, UpdateNoteMutation } from '@univerjs/preset-sheets-note';
import { AddSheetTableMutation, DeleteSheetTableMutation } from '@univerjs/preset-sheets-table';
import { mergeWorksheetSnapshotWithDefault } from '@univerjs/core';
import type { ICellData, IWorksheetData } from '@univerjs/core';
import type { Decorations } from '../book/besideCells';
import type { Grid } from '../grid/grid';
import { commands, undoList } from '../grid/inside';

interface Step {
  readonly redo: IMutationInfo;
  readonly undo?: IMutationInfo;
}

type Cells = Record<number, Record<number, ICellData>>;

/** The formulas of a sheet by themselves: they go in last, when the tables that they speak of are there. */
function withoutFormulas(sheet: Partial<IWorksheetData>): {
  plain: Partial<IWorksheetData>;
  formulas: Cells;
} {
  const formulas: Cells = {};
  const plain: Cells = {};
  for (const [row, cells] of Object.entries(sheet.cellData as Cells)) {
    for (const [column, cell] of Object.entries(cells)) {
      const { f, ...rest } = cell;
      (plain[Number(row)] ??= {})[Number(column)] = rest;
      if (f !== undefined) (formulas[Number(row)] ??= {})[Number(column)] = { f };
    }
  }
  return { plain: { ...sheet, cellData: plain }, formulas };
}

function steps(unitId: string, index: number, sheet: Partial<IWorksheetData>, beside: Decorations): Step[] {
  const subUnitId = sheet.id ?? '';
  const at = { unitId, subUnitId };
  const { plain, formulas } = withoutFormulas(sheet);
  const snapshot = mergeWorksheetSnapshotWithDefault(plain);
  return [
    {
      redo: { id: InsertSheetMutation.id, params: { unitId, index, sheet: snapshot } },
      undo: { id: RemoveSheetMutation.id, params: { ...at, subUnitName: sheet.name } },
    },
    ...beside.tables.map(({ id, name, range, options, columns }) => ({
      redo: {
        id: AddSheetTableMutation.id,
        params: {
          ...at,
          tableId: id,
          name,
          range,
          header: columns.map(({ displayName }) => displayName),
          options: { ...options, columns },
        },
      },
      undo: { id: DeleteSheetTableMutation.id, params: { ...at, tableId: id } },
    })),
    ...beside.rules.map((rule) => ({
      redo: { id: AddDataValidationMutation.id, params: { ...at, rule } },
      undo: { id: RemoveDataValidationMutation.id, params: { ...at, ruleId: rule.uid } },
    })),
    ...beside.conditions.map((condition) => ({
      redo: { id: AddConditionalRuleMutation.id, params: { ...at, rule: condition } },
      undo: { id: DeleteConditionalRuleMutation.id, params: { ...at, cfId: condition.cfId } },
    })),
    ...beside.notes.map((note) => ({
      redo: {
        id: UpdateNoteMutation.id,
        params: { unitId, sheetId: subUnitId, row: note.row, col: note.col, note },
      },
      undo: { id: RemoveNoteMutation.id, params: { unitId, sheetId: subUnitId, noteId: note.id } },
    })),
    { redo: { id: SetRangeValuesMutation.id, params: { ...at, cellValue: formulas } } },
  ];
}

/** A sheet that has just been laid. */
export interface LaidInGrid {
  readonly id: string;
  /** Takes it away with all that is beside it, in one step that undo takes back. It must be as it was laid. */
  readonly takeAway: () => void;
}

/** A sheet as the grid stores it, with what it keeps beside the sheet. */
export interface NewSheet {
  readonly sheet: Partial<IWorksheetData>;
  readonly beside: Decorations;
}

/**
 * Lays a sheet as the last one, in one step that undo takes back. A failure half-way takes everything away again and is
 * thrown.
 */
export function lay(grid: Grid, { sheet, beside }: NewSheet): LaidInGrid {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook) throw new Error('No workbook is open.');
  const unitID = workbook.getId();
  const id = generateRandomId(8);
  const all = steps(unitID, workbook.getSheets().length, { ...sheet, id }, beside);
  const redoMutations = all.map(({ redo }) => redo);
  const undoMutations: IMutationInfo[] = [];
  try {
    for (const { redo, undo } of all) {
      if (!commands(grid).syncExecuteCommand(redo.id, redo.params)) throw new Error(redo.id);
      if (undo) undoMutations.unshift(undo);
    }
  } catch (reason) {
    for (const undo of undoMutations) commands(grid).syncExecuteCommand(undo.id, undo.params);
    throw reason;
  }
  undoList(grid).pushUndoRedo({ unitID, redoMutations, undoMutations });
  return {
    id,
    takeAway() {
      for (const undo of undoMutations) commands(grid).syncExecuteCommand(undo.id, undo.params);
      undoList(grid).pushUndoRedo({ unitID, redoMutations: undoMutations, undoMutations: redoMutations });
    },
  };
}
