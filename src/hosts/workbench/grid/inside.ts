import {
  Direction,
  ICommandService,
  type IMutationInfo,
  type Injector,
  type IRange,
  IUndoRedoService,
  RANGE_TYPE,
} from '@univerjs/core';
import {
  InsertRowCommand,
  InsertRowMutation,
  type ISetRangeValuesMutationParams,
  ISheetClipboardService,
  LexerTreeBuilder,
  RemoveRowMutation,
  SetRangeValuesUndoMutationFactory,
  SheetInterceptorService,
} from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';

/** Steps of one change, and those that take it back. */
export interface Reversible {
  readonly redos: IMutationInfo[];
  readonly undos: IMutationInfo[];
}

/** Where the grid keeps its own parts, many of which its facade does not give. */
export const inside = ({ univer }: Grid): Injector => univer.__getInjector();

/** The grid's name for the open workbook. */
export const unitId = ({ api }: Grid): string => api.getActiveWorkbook()?.getId() ?? '';

/** Does the steps that all changes are made of, and tells of them. */
export const commands = (grid: Grid): ICommandService => inside(grid).get(ICommandService);

/** The changes that can be undone. */
export const undoList = (grid: Grid): IUndoRedoService => inside(grid).get(IUndoRedoService);

/** Lets others add steps of their own to a change. */
export const interceptors = (grid: Grid): SheetInterceptorService =>
  inside(grid).get(SheetInterceptorService);

export const clipboard = (grid: Grid): ISheetClipboardService => inside(grid).get(ISheetClipboardService);

/** What writes back the cells that are about to be written, as they are now. */
export const cellsAsTheyAre = (
  grid: Grid,
  about: ISetRangeValuesMutationParams,
): ISetRangeValuesMutationParams => SetRangeValuesUndoMutationFactory(inside(grid), about);

/** A formula with the brackets behind it that somebody has left out at its end. */
export const withBrackets = (grid: Grid, formula: string): string =>
  formula + ')'.repeat(inside(grid).get(LexerTreeBuilder).checkIfAddBracket(formula));

/** A formula as it reads so many rows further down. */
export const movedDown = (grid: Grid, formula: string, rows: number): string =>
  inside(grid).get(LexerTreeBuilder).moveFormulaRefOffset(formula, 0, rows);

/**
 * Inserts whole rows as the grid's command does, with all that follows such rows, and leaves the step to whoever asks for it.
 * The rows above them lend their looks.
 */
export function insertRowsNow(grid: Grid, subUnitId: string, range: IRange): Reversible {
  const params = { unitId: unitId(grid), subUnitId, range: { ...range, rangeType: RANGE_TYPE.ROW } };
  const command = { id: InsertRowCommand.id, params: { ...params, direction: Direction.DOWN } };
  const run = (all: readonly IMutationInfo[]): void =>
    all.forEach((each) => commands(grid).syncExecuteCommand(each.id, each.params));
  const before = interceptors(grid).onCommandExecute(command);
  const redos = [...(before.preRedos ?? []), { id: InsertRowMutation.id, params }, ...before.redos];
  const undos = [...(before.preUndos ?? []), { id: RemoveRowMutation.id, params }, ...before.undos];
  run(redos);
  const after = interceptors(grid).afterCommandExecute(command);
  run(after.redos);
  return { redos: [...redos, ...after.redos], undos: [...undos, ...after.undos] };
}
