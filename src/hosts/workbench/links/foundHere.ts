import type { FWorksheet } from '@univerjs/preset-sheets-core';
import { areaOfGridRange } from '../../../engine/gridRange';
import { area, type Area } from '../../../formula/area';
import { SHORT } from '../../../sheets/offeredTemplates';
import { formHere, type Here, sheetsWithForms } from '../../../sheets/links/formHere';
import { type Held, isNamedLike, type TableHere } from '../../../sheets/links/tableHere';
import type { Grid } from '../grid/grid';
import { shownValue } from '../grid/shownValue';

/** The cells of a part of a sheet. */
function cellsIn(grid: Grid, sheet: FWorksheet, { row, column, rows, columns }: Area): Held[][] {
  const formulas = sheet.getRange(row, column, rows, columns).getFormulas();
  return formulas.map((line, r) =>
    line.map((formula, c): Held => {
      const value = shownValue(grid, sheet.getSheetId(), row + r, column + c);
      return { ...(formula ? { formula } : {}), value };
    }),
  );
}

/** The tables and forms of the workbook that templates may know, with all that their cells hold. */
export function foundHere(grid: Grid): Here {
  const tables = tablesHere(grid);
  const forms = sheetsWithForms(SHORT, tables).flatMap((form) => {
    const sheet = grid.api.getActiveWorkbook()?.getSheetByName(form.sheet);
    if (!sheet) return [];
    const all = area({ row: 0, column: 0 }, sheet.getLastRow() + 1, sheet.getLastColumn() + 1);
    return [formHere(form, { at: all, rows: cellsIn(grid, sheet, all) })];
  });
  return { tables, forms };
}

function tablesHere(grid: Grid): TableHere[] {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook) return [];
  return workbook
    .getTableList()
    .filter(({ name }) => isNamedLike(name, SHORT))
    .flatMap(({ name, subUnitId, range, columns }) => {
      const sheet = workbook.getSheetBySheetId(subUnitId);
      const { row, column, rows, columns: across } = areaOfGridRange(range);
      if (!sheet || rows < 2) return [];
      return [
        {
          name,
          sheet: sheet.getSheetName(),
          at: { row, column },
          headings: columns.map(({ displayName }) => displayName),
          rows: cellsIn(grid, sheet, area({ row: row + 1, column }, rows - 1, across)),
        },
      ];
    });
}
