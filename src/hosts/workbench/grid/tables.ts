import { TableManager } from '@univerjs/preset-sheets-table';
import type { Grid } from './grid';
import { inside, unitId } from './inside';

export type GridTable = ReturnType<TableManager['getTablesBySubunitId']>[number];

export const tablesOn = (grid: Grid, sheetId: string): readonly GridTable[] =>
  inside(grid).get(TableManager).getTablesBySubunitId(unitId(grid), sheetId);
