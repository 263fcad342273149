import {
  type ICellData,
  ICommandService,
  type IMutationInfo,
  type Injector,
  type IRange,
  IUndoRedoService,
  IUniverInstanceService,
  type Nullable,
  Rectangle,
  UniverInstanceType,
  type Workbook,
  type Worksheet,
} from '@univerjs/core';
import { FormulaDataModel, IDefinedNamesService, SetDefinedNameMutation } from '@univerjs/engine-formula';
import { SetRangeValuesMutation, SheetInterceptorService } from '@univerjs/sheets';
import { TableManager } from '@univerjs/sheets-table';
import { areaText } from '../../formula/areaText';
import { followed, reordered } from '../../formula/followEdit';
import { isMeantOf } from '../../formula/sheetPlace';
import { areaOfGridRange, holdsCell } from '../gridRange';
import { areasIn, CANNOT_FOLLOW, formulaAgainst, formulasOf, type Standing } from './formulas';
import { orderOf, type SortBy } from './order';
import { reorderOf, ROWS_SORTED, type RowsSorted } from './rowsSorted';

/** Rows of a sheet with all cells that go along, and what they are sorted by: the first column, where that is alike the next. */
export interface SortRequest {
  readonly unitId: string;
  readonly subUnitId: string;
  readonly range: IRange;
  readonly by: readonly SortBy[];
}

/** Why rows shall not change places, as another part of the page knows it. */
export type Objection = (sorted: RowsSorted, sheetName: string) => string | undefined;

const NOTHING_LEFT = 'There is nothing to sort: the rows that are shown are fewer than two.';

/**
 * What became of it, and which row, counted among them, stands in each place; rows that were in that order are as they were, and
 * there is nothing to undo.
 */
export type SortOutcome =
  { readonly refused: string } | { readonly isChanged: boolean; readonly from: readonly number[] };

/**
 * Sorts rows, as one step that undo takes back. Each row keeps its cells with their looks, and is the row that it was to every
 * formula: what names it goes with it, on this sheet and on others, so that no answer changes.
 *
 * @returns why the rows stay as they are, where sorting them would change an answer or tear something apart; else whether they
 * have changed places
 */
export function sortRows(
  injector: Injector,
  { unitId, subUnitId, range, by }: SortRequest,
  objections: readonly Objection[] = [],
): SortOutcome {
  const workbook = injector
    .get(IUniverInstanceService)
    .getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET);
  const sheet = workbook?.getSheetBySheetId(subUnitId);
  if (!workbook || !sheet) return { refused: 'That sheet is gone.' };
  if (range.endRow <= range.startRow) return { refused: NOTHING_LEFT };
  const sorted: RowsSorted = { unitId, subUnitId, range, from: orderOf(sheet, range, by) };
  const formulas = formulasOf(injector, workbook);
  const refused =
    tornApart(injector, sheet, sorted) ??
    formulaAgainst(injector, sorted, formulas, sheet.getName()) ??
    nameAgainst(injector, sheet, sorted) ??
    objections.reduce<string | undefined>((why, object) => why ?? object(sorted, sheet.getName()), undefined);
  if (refused !== undefined) return { refused };
  if (sorted.from.every((was, now) => was === now)) return { isChanged: false, from: sorted.from };
  const others = injector.get(SheetInterceptorService).onCommandExecute({ id: ROWS_SORTED, params: sorted });
  const own = [
    ...cellsOf(workbook, sheet, sorted, formulas),
    ...formulasElsewhere(sheet, sorted, formulas),
    ...names(injector, sheet, sorted),
  ];
  const redos = [...(others.preRedos ?? []), ...own.map(({ redo }) => redo), ...others.redos];
  const undos = [...(others.preUndos ?? []), ...own.map(({ undo }) => undo), ...others.undos];
  const commands = injector.get(ICommandService);
  for (const { id, params } of redos) commands.syncExecuteCommand(id, params);
  injector.get(IUndoRedoService).pushUndoRedo({ unitID: unitId, redoMutations: redos, undoMutations: undos });
  return { isChanged: true, from: sorted.from };
}

/** Merged cells, lists that spill, and tables hold together what would change places. */
function tornApart(injector: Injector, sheet: Worksheet, { unitId, subUnitId, range }: RowsSorted) {
  const merged = sheet.getMergeData().find((each) => Rectangle.intersects(each, range));
  if (merged)
    return `The cells ${areaText(areaOfGridRange(merged))} are merged, and rows with merged cells cannot be sorted.`;
  const spills = injector.get(FormulaDataModel).getArrayFormulaRange()?.[unitId]?.[subUnitId] ?? {};
  const spill = Object.values(spills)
    .flatMap((line) => Object.values<Nullable<IRange>>(line ?? {}))
    .find((each) => each && !isOneCell(each) && Rectangle.intersects(each, range));
  if (spill)
    return `One formula fills the cells ${areaText(areaOfGridRange(spill))}, and such rows cannot be sorted.`;
  const table = injector
    .get(TableManager)
    .getTablesBySubunitId(unitId, subUnitId)
    .find((each) => Rectangle.intersects(each.getRange(), range) && !holdsWholeRows(range, each.getRange()));
  return table
    ? `The heading of the table ${table.getDisplayName()}, or a part of its rows, is among these: choose a cell of the table to sort it. Nothing was changed.`
    : undefined;
}

/** Whether all rows of a range are of a table, below its heading and with all of its columns. */
const holdsWholeRows = (range: IRange, table: IRange): boolean =>
  range.startRow > table.startRow &&
  range.endRow <= table.endRow &&
  range.startColumn <= table.startColumn &&
  range.endColumn >= table.endColumn;

const isOneCell = ({ startRow, endRow, startColumn, endColumn }: IRange): boolean =>
  startRow === endRow && startColumn === endColumn;

interface Step {
  readonly redo: IMutationInfo;
  readonly undo: IMutationInfo;
}
type Cells = Record<number, Record<number, Nullable<ICellData>>>;

const setCells = ({ unitId, subUnitId }: RowsSorted, cellValue: Cells): IMutationInfo => ({
  id: SetRangeValuesMutation.id,
  params: { unitId, subUnitId, cellValue },
});

/** The cells of the rows in their new places. Each place is cleared first: a look that is written only adds to the one there. */
function cellsOf(
  workbook: Workbook,
  sheet: Worksheet,
  sorted: RowsSorted,
  formulas: readonly Standing[],
): readonly Step[] {
  const { range, from, subUnitId } = sorted;
  const after = reordered(reorderOf(sorted));
  const isMeant = isMeantOf(sheet.getName(), true);
  const written = new Map(
    formulas
      .filter(({ sheetId }) => sheetId === subUnitId)
      .map(({ row, column, formula }) => [`${row},${column}`, formula]),
  );
  const [cleared, before, now]: [Cells, Cells, Cells] = [{}, {}, {}];
  const styles = workbook.getStyles();
  const copy = (row: number, column: number, reads: (formula: string) => string): Nullable<ICellData> => {
    const cell = sheet.getCellRaw(row, column);
    if (!cell) return null;
    const { si: _, ...rest } = structuredClone(cell);
    const formula = written.get(`${row},${column}`);
    const style = styles.getStyleByCell(cell);
    return {
      ...rest,
      ...(style ? { s: structuredClone(style) } : {}),
      ...(formula === undefined ? {} : { f: reads(formula) }),
    };
  };
  for (const [i, was] of from.entries()) {
    if (was === i) continue;
    const [row, source] = [range.startRow + i, range.startRow + was];
    for (let column = range.startColumn; column <= range.endColumn; column++) {
      (cleared[row] ??= {})[column] = null;
      (before[row] ??= {})[column] = copy(row, column, (formula) => formula);
      (now[row] ??= {})[column] = copy(source, column, (formula) => followed(formula, after, isMeant));
    }
  }
  const clear = setCells(sorted, cleared);
  return [
    { redo: clear, undo: clear },
    { redo: setCells(sorted, now), undo: setCells(sorted, before) },
  ];
}

/** What names one of the rows from outside goes with it. */
function formulasElsewhere(sheet: Worksheet, sorted: RowsSorted, formulas: readonly Standing[]): Step[] {
  const { range, unitId } = sorted;
  const after = reordered(reorderOf(sorted));
  return formulas.flatMap(({ sheetId, row, column, formula }) => {
    const isHere = sheetId === sorted.subUnitId;
    if (isHere && holdsCell(range, row, column)) return [];
    const reads = followed(formula, after, isMeantOf(sheet.getName(), isHere));
    if (reads === formula) return [];
    const set = (f: string): IMutationInfo => ({
      id: SetRangeValuesMutation.id,
      params: { unitId, subUnitId: sheetId, cellValue: { [row]: { [column]: { f, si: null } } } },
    });
    return [{ redo: set(reads), undo: set(formula) }];
  });
}

function nameAgainst(injector: Injector, sheet: Worksheet, sorted: RowsSorted): string | undefined {
  const after = reordered(reorderOf(sorted));
  const found = allNames(injector, sorted).find(({ formulaOrRefString }) =>
    areasIn(formulaOrRefString, isMeantOf(sheet.getName(), false)).some(([, area]) => !after(area)),
  );
  return found && `The name ${found.name} stands for a part of these rows. ${CANNOT_FOLLOW}`;
}

const allNames = (injector: Injector, { unitId }: RowsSorted) =>
  Object.values(injector.get(IDefinedNamesService).getDefinedNameMap(unitId) ?? {});

function names(injector: Injector, sheet: Worksheet, sorted: RowsSorted): Step[] {
  const { unitId } = sorted;
  const after = reordered(reorderOf(sorted));
  return allNames(injector, sorted).flatMap((name) => {
    const text = followed(name.formulaOrRefString, after, isMeantOf(sheet.getName(), false));
    if (text === name.formulaOrRefString) return [];
    const set = (formulaOrRefString: string): IMutationInfo => ({
      id: SetDefinedNameMutation.id,
      params: { ...name, unitId, formulaOrRefString },
    });
    return [{ redo: set(text), undo: set(name.formulaOrRefString) }];
  });
}
