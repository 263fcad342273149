import type { ICellData, IRange, Nullable } from '@univerjs/core';
import { FormulaDataModel } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';
import { inside, unitId } from './inside';

type ByCell<T> = Readonly<Record<number, Readonly<Record<number, T>>>>;

/** The cells of a sheet that lists spill into, by row and column: the grid keeps them beside its own. */
export const spilledCells = (grid: Grid, sheetId: string): ByCell<Nullable<ICellData>> =>
  inside(grid).get(FormulaDataModel).getArrayFormulaCellData()?.[unitId(grid)]?.[sheetId] ?? {};

/** The areas that lists take, by row and column of the formula of each. */
export const spillAreas = (grid: Grid, sheetId: string): ByCell<IRange> =>
  inside(grid).get(FormulaDataModel).getArrayFormulaRange()?.[unitId(grid)]?.[sheetId] ?? {};
