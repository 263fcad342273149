import { areaOfGridRange } from '../../../engine/gridRange';
import { SHORT } from '../../../sheets/offeredTemplates';
import { type Held, isNamedLike, type TableHere } from '../../../sheets/links/tableHere';
import type { Grid } from '../grid/grid';
import { shownValue } from '../grid/shownValue';

/** The tables of the workbook that templates may know, with all that their cells hold. */
export function tablesHere(grid: Grid): TableHere[] {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook) return [];
  return workbook
    .getTableList()
    .filter(({ name }) => isNamedLike(name, SHORT))
    .flatMap(({ name, subUnitId, range, columns }) => {
      const sheet = workbook.getSheetBySheetId(subUnitId);
      const { row, column, rows, columns: across } = areaOfGridRange(range);
      if (!sheet || rows < 2) return [];
      const formulas = sheet.getRange(row + 1, column, rows - 1, across).getFormulas();
      return [
        {
          name,
          sheet: sheet.getSheetName(),
          at: { row, column },
          headings: columns.map(({ displayName }) => displayName),
          rows: formulas.map((line, r) =>
            line.map((formula, c): Held => {
              const value = shownValue(grid, subUnitId, row + 1 + r, column + c);
              return { ...(formula ? { formula } : {}), value };
            }),
          ),
        },
      ];
    });
}
