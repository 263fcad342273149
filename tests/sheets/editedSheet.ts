import { area } from '../../src/formula/area';
import { areaText } from '../../src/formula/areaText';
import { isCellError } from '../../src/formula/errors';
import { blockPlace, layout, tableTop } from '../../src/sheets/layout';
import { planAlone } from '../../src/sheets/makePlan';
import type { TemplateTable } from '../../src/sheets/template';
import { openedBook } from './openedBook';
import { templateOf } from './support';

/** What a cell gets: a value or a formula. */
type Put = { readonly v?: string | number | null; readonly f: string | null };

/** A template's sheet, open in the engine for edits of its rows. Places are those in which it was laid. */
export async function editedSheet(id: string) {
  const template = templateOf(id);
  const { sheet } = planAlone(template, true);
  const { tables, cells } = layout(template);
  const book = await openedBook([sheet]);
  await book.calculate();
  const here = book.workbook.getSheetByName(sheet.name);
  if (!here) throw new Error('The sheet is not there.');
  const table = (name: string): TemplateTable => {
    const found = tables.get(name);
    if (!found) throw new Error(`There is no table ${name}.`);
    return found;
  };
  /** The first cell of a column below its heading. */
  const top = (name: string, column: string) => ({
    row: tableTop(table(name)) + 1,
    column: blockPlace(table(name)).column + table(name).columns.findIndex((each) => each.id === column),
  });
  const valuesOf = (row: number, column: number, rows: number): unknown[] =>
    book
      .read(sheet.name, areaText(area({ row, column }, rows, 1)))
      .flat()
      .map((value) => (isCellError(value) ? value.error : value));
  return {
    calculate: () => book.calculate(),
    dispose: () => book.dispose(),
    /** So many rows of a column. */
    column(name: string, column: string, rows: number) {
      const at = top(name, column);
      return valuesOf(at.row, at.column, rows);
    },
    /** What a field says, so many rows lower than it was laid. */
    cell(field: string, lower = 0): unknown {
      const place = cells.get(field)?.place;
      if (!place) throw new Error(`There is no cell ${field}.`);
      return valuesOf(place.row + lower, place.column, 1)[0];
    },
    /** What all cells hold, line by line. */
    everything(): unknown[][] {
      const used = area({ row: 0, column: 0 }, here.getMaxRows(), here.getMaxColumns());
      return book
        .read(sheet.name, areaText(used))
        .map((line) => line.map((value) => (isCellError(value) ? value.error : value)));
    },
    /** What stands beside a field: its remark or its warning. */
    beside(field: string, lower = 0): unknown {
      const place = cells.get(field)?.place;
      if (!place) throw new Error(`There is no cell ${field}.`);
      return valuesOf(place.row + lower, place.column + 2, 1)[0];
    },
    rowOf: (field: string): number => cells.get(field)?.place.row ?? NaN,
    put(name: string, column: string, row: number, cell: Put): void {
      const at = top(name, column);
      here.getRange(at.row + row, at.column).setValue(cell as { f: string });
    },
    /** The first row of a table below its headings. */
    topOf: (name: string): number => tableTop(table(name)) + 1,
    /** Whether a cell belonged to a table as the sheet was laid. */
    isInTable: (row: number, column: number): boolean =>
      [...tables.values()].some((each) => {
        const [heading, left] = [tableTop(each), blockPlace(each).column];
        return (
          row >= heading &&
          row <= heading + each.rows.length &&
          column >= left &&
          column < left + each.columns.length
        );
      }),
    /** From which column on a table stands, and where it ends. */
    columnsOf(name: string): { readonly left: number; readonly right: number } {
      const { column } = blockPlace(table(name));
      return { left: column, right: column + table(name).columns.length };
    },
    /** Inserts a row of the whole sheet, as it stands, above another. */
    insertRow: (row: number): void => void here.insertRows(row, 1),
    deleteRow: (row: number): void => void here.deleteRows(row, 1),
    /**
     * Gives a row the formulas of the row above it, as the workbench does with one that is inserted in a table: those that all rows
     * have.
     */
    fillFromAbove(name: string, row: number): void {
      const { row: first, column } = top(name, table(name).columns[0]?.id ?? '');
      const texts =
        here.getRange(first + row - 1, column, 1, table(name).columns.length).getFormulas()[0] ?? [];
      for (const [i, text] of texts.entries())
        if (text !== '' && table(name).columns[i]?.fixed !== 'formulas')
          here.getRange(first + row, column + i).setValue({ f: text });
    },
  };
}
