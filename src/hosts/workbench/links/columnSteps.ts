import type { ColumnChange } from '../../../sheets/links/linkColumns';
import type { Grid } from '../grid/grid';
import { content } from '../book/snapshotSheet';
import { gridStyle } from '../book/styles';
import { type GridCells, type Mutations, NOTHING, written } from '../tables/newTableRows';

/** The steps that give columns what they are to hold, and its look; nothing is done yet. */
export function columnSteps(grid: Grid, sheetId: string, columns: readonly ColumnChange[]): Mutations {
  const [bare, cells]: [GridCells, GridCells] = [{}, {}];
  for (const { area, to, look } of columns)
    for (const [r, { formula, value }] of to.entries()) {
      const [row, column] = [area.row + r, area.column];
      (bare[row] ??= {})[column] = { s: null, f: null, v: null, t: null };
      const held = {
        part: 'input',
        row,
        column,
        value,
        ...(formula === undefined ? {} : { formula }),
      } as const;
      (cells[row] ??= {})[column] = {
        ...content({ ...held, ...(look ? { style: look } : {}) }),
        ...(look ? { s: gridStyle(look) } : {}),
      };
    }
  if (columns.length === 0) return NOTHING;
  // a look that is written only adds to the one that is there
  const [away, put] = [written(grid, sheetId, bare), written(grid, sheetId, cells)];
  return { redos: [...away.redos, ...put.redos], undos: put.undos };
}
