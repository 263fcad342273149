import { generateRandomId, ICommandService, IUndoRedoService, type IMutationInfo } from '@univerjs/core';
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
import type { SheetPlan } from '../../sheets/plan';
import { decorations, type Decorations } from './decorate';
import type { Grid } from './grid';
import { sheetOfPlan } from './planSheet';
import { snapshotSheet } from './snapshotSheet';

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
    ...beside.warnings.map((rule) => ({
      redo: { id: AddConditionalRuleMutation.id, params: { ...at, rule } },
      undo: { id: DeleteConditionalRuleMutation.id, params: { ...at, cfId: rule.cfId } },
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

/**
 * Lays a plan as a new last sheet, in one step that undo takes back, and gives the sheet's id. A failure half-way takes
 * everything away again and is thrown.
 */
export function lay({ univer, api }: Grid, plan: SheetPlan): string {
  const injector = univer.__getInjector();
  const commands = injector.get(ICommandService);
  const workbook = api.getActiveWorkbook();
  if (!workbook) throw new Error('No workbook is open.');
  const unitID = workbook.getId();
  const id = generateRandomId(8);
  const sheet = sheetOfPlan(plan);
  const all = steps(unitID, workbook.getSheets().length, snapshotSheet(sheet, id), decorations(sheet));
  const done: IMutationInfo[] = [];
  try {
    for (const { redo, undo } of all) {
      if (!commands.syncExecuteCommand(redo.id, redo.params)) throw new Error(`The grid refused ${redo.id}.`);
      if (undo) done.unshift(undo);
    }
  } catch (reason) {
    for (const undo of done) commands.syncExecuteCommand(undo.id, undo.params);
    throw reason;
  }
  injector.get(IUndoRedoService).pushUndoRedo({
    unitID,
    redoMutations: all.map(({ redo }) => redo),
    undoMutations: done,
  });
  return id;
}
