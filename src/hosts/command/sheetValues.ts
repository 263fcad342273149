import { CellValueType, type ICellData, LocaleType } from '@univerjs/core';
import { address } from '../../formula/address';
import type { Area } from '../../formula/area';
import type { PlanCell, SheetPlan } from '../../sheets/plan';
import { headless, type EngineValue } from '../../engine/headless';

/** What each cell holds, by row and column. */
export type SheetValues = (row: number, column: number) => EngineValue;

const range = ({ row, column, rows, columns }: Area) => ({
  startRow: row,
  startColumn: column,
  endRow: row + rows - 1,
  endColumn: column + columns - 1,
});

/** A text says that it is one: the engine reads "1/60" as a date otherwise. */
function stored({ formula, value }: PlanCell): ICellData {
  if (formula !== undefined) return { f: formula };
  return typeof value === 'string' ? { v: value, t: CellValueType.STRING } : { v: value ?? null };
}

/** Calculates the formulas of one sheet. */
export async function sheetValues(plan: SheetPlan): Promise<SheetValues> {
  const { area } = plan.page;
  const cellData: Record<number, Record<number, ICellData>> = {};
  for (const cell of plan.cells) (cellData[cell.row] ??= {})[cell.column] = stored(cell);
  const book = headless({
    id: 'book',
    name: plan.name,
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: ['sheet'],
    sheets: {
      sheet: {
        id: 'sheet',
        name: plan.name,
        rowCount: area.row + area.rows,
        columnCount: area.column + area.columns,
        cellData,
      },
    },
  });
  for (const { name, area: where } of plan.tables)
    await book.workbook.addTable('sheet', name, range(where), name);
  await book.calculate();
  const last = address({ row: area.row + area.rows - 1, column: area.column + area.columns - 1 });
  const values = book.read(plan.name, `A1:${last}`);
  book.dispose();
  return (row, column) => values[row]?.[column] ?? null;
}
