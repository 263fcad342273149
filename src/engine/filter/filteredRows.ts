import {
  BooleanNumber,
  type IAccessor,
  type Injector,
  type IRange,
  type IUndoRedoItem,
  IUndoRedoService,
  IUniverInstanceService,
  type Univer,
  UniverInstanceType,
  type Workbook,
  type Worksheet,
} from '@univerjs/core';
import { FormulaDataModel } from '@univerjs/engine-formula';
import {
  getVisibleRanges,
  InsertRowMutation,
  INTERCEPTOR_POINT,
  RemoveRowByRangeCommand,
  SheetInterceptorService,
} from '@univerjs/sheets';
import { TableManager } from '@univerjs/sheets-table';
import type { UnseenRows } from '../mends/filteredRows';
import { isByHand, knowHands } from './byHand';

/** Rows that are not shown, whatever hides them. */
const unseenRows = (sheet: Worksheet): readonly number[] =>
  Object.entries(sheet.getRowManager().getRowData()).flatMap(([row, data]) =>
    data?.hd === BooleanNumber.TRUE ? [Number(row)] : [],
  );

/** Whether a row that is hidden is one of a table below its heading, and nobody has hidden it by hand. */
function isFilteredOut(injector: Injector, unitId: string, sheet: Worksheet, row: number): boolean {
  if (isByHand(sheet.getRowManager().getRow(row))) return false;
  return injector
    .get(TableManager)
    .getTablesBySubunitId(unitId, sheet.getSheetId())
    .some((table) => {
      const { startRow, endRow } = table.getRange();
      return startRow < row && row <= endRow;
    });
}

/** All that calculations have to know of rows that are not shown. The engine's own way asks every row of every sheet. */
function toldOfRows(injector: Injector): UnseenRows {
  const all: UnseenRows = {};
  const workbooks = injector
    .get(IUniverInstanceService)
    .getAllUnitsForType<Workbook>(UniverInstanceType.UNIVER_SHEET);
  for (const workbook of workbooks) {
    const unitId = workbook.getUnitId();
    all[unitId] = Object.fromEntries(
      workbook.getSheets().map((sheet) => {
        const rows = unseenRows(sheet).map((row) => [
          row,
          { hd: BooleanNumber.TRUE as const, isFiltered: isFilteredOut(injector, unitId, sheet, row) },
        ]);
        return [sheet.getSheetId(), Object.fromEntries(rows)];
      }),
    );
  }
  return all;
}

/**
 * Rows of a table that are hidden, and not by hand, are filtered out from now on: what clears, copies, fills or deletes cells
 * passes over them, and SUBTOTAL leaves them out, by whichever of its numbers. One that is hidden by hand is a row like others
 * to all of these, but to SUBTOTAL(109) and its like.
 */
export function filterByTables(univer: Univer): void {
  const injector = univer.__getInjector();
  knowHands(univer);
  injector.get(FormulaDataModel).getHiddenRowsFiltered = () => toldOfRows(injector);
  injector.get(SheetInterceptorService).intercept(INTERCEPTOR_POINT.ROW_FILTERED, {
    handler: (isFiltered, { unitId, worksheet, row }, next) =>
      isFiltered || (!worksheet.getRowRawVisible(row) && isFilteredOut(injector, unitId, worksheet, row))
        ? true
        : next(isFiltered ?? false),
  });
}

const removeRows = RemoveRowByRangeCommand.handler;

/** The grid's parts, but for a list of what can be undone that only collects. */
function collecting(accessor: IAccessor, steps: IUndoRedoItem[]): IAccessor {
  const list = { pushUndoRedo: (item: IUndoRedoItem) => steps.push(item) };
  const get = (part: unknown, ...more: unknown[]): unknown =>
    part === IUndoRedoService ? list : (accessor.get as (...args: unknown[]) => unknown)(part, ...more);
  return { ...accessor, get } as IAccessor;
}

/**
 * What is known of rows, each at its distance from the first. The library closes up the gaps between them, so that undo gave
 * heights, and that rows are hidden, to rows further up.
 */
function knownOf(accessor: IAccessor, unitId: string, subUnitId: string, { startRow, endRow }: IRange) {
  const data = accessor
    .get(IUniverInstanceService)
    .getUnit<Workbook>(unitId, UniverInstanceType.UNIVER_SHEET)
    ?.getSheetBySheetId(subUnitId)
    ?.getRowManager()
    .getRowData();
  return Object.fromEntries(
    Object.entries(data ?? {}).flatMap(([row, known]) =>
      known && startRow <= Number(row) && Number(row) <= endRow
        ? [[Number(row) - startRow, { ...known }] as const]
        : [],
    ),
  );
}

/**
 * Rows that are deleted across filtered ones: the library leaves these, and has all else follow as if they were gone. Here the
 * rows that are shown go piece by piece, the last ones first, in one step.
 */
RemoveRowByRangeCommand.handler = (accessor, params) => {
  if (!params) return false;
  const { range, unitId, subUnitId } = params;
  const pieces = [...getVisibleRanges([range], accessor, unitId, subUnitId)].sort(
    (a, b) => b.startRow - a.startRow,
  );
  const steps: IUndoRedoItem[] = [];
  const within = collecting(accessor, steps);
  const isDone = pieces.map((piece) => {
    const rowInfo = knownOf(accessor, unitId, subUnitId, piece);
    const isGone = removeRows(within, { ...params, range: { ...range, ...piece } });
    for (const { id, params: back } of steps.at(-1)?.undoMutations ?? [])
      if (isGone && id === InsertRowMutation.id) Object.assign(back, { rowInfo });
    return isGone;
  });
  if (steps.length === 0) return false;
  accessor.get(IUndoRedoService).pushUndoRedo({
    unitID: unitId,
    redoMutations: steps.flatMap(({ redoMutations }) => redoMutations),
    undoMutations: steps.reverse().flatMap(({ undoMutations }) => undoMutations),
  });
  return isDone.every(Boolean);
};
