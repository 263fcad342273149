import { ICommandService, type Injector, IUndoRedoService } from '@univerjs/core';
import {
  type ISetRangeValuesMutationParams,
  ISheetClipboardService,
  LexerTreeBuilder,
  SetRangeValuesUndoMutationFactory,
  SheetInterceptorService,
} from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';

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

/** A formula as it reads so many rows further down. */
export const movedDown = (grid: Grid, formula: string, rows: number): string =>
  inside(grid).get(LexerTreeBuilder).moveFormulaRefOffset(formula, 0, rows);
