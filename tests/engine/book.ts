import { CellValueType, type ICellData, type IWorkbookData, LocaleType } from '@univerjs/core';
import { headless } from '../../src/engine/headless';

export type TestCell = number | string | boolean | null;

/** A cell as a workbook stores it: "=…" is a formula, any other text is text. */
const stored = (cell: TestCell): ICellData | null => {
  if (cell === null) return null;
  if (typeof cell === 'number') return { v: cell };
  if (typeof cell === 'boolean') return { v: cell ? 1 : 0, t: CellValueType.BOOLEAN };
  return cell.startsWith('=') ? { f: cell } : { v: cell, t: CellValueType.STRING };
};

/** The snapshot of a workbook: sheets by name, their cells in rows from A1. */
export function snapshot(
  sheets: Readonly<Record<string, readonly (readonly TestCell[])[]>>,
): Partial<IWorkbookData> {
  const names = Object.keys(sheets);
  return {
    name: 'Book',
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: names,
    sheets: Object.fromEntries(
      Object.entries(sheets).map(([name, rows]) => [
        name,
        {
          id: name,
          name,
          rowCount: rows.length + 200_000,
          columnCount: 60,
          cellData: Object.fromEntries(
            rows.map((row, r) => [
              r,
              Object.fromEntries(
                row.flatMap((cell, c) => {
                  const data = stored(cell);
                  return data ? [[c, data]] : [];
                }),
              ),
            ]),
          ),
        },
      ]),
    ),
  };
}

/** A calculated workbook. */
export async function calculated(sheets: Parameters<typeof snapshot>[0]) {
  const book = headless(snapshot(sheets));
  await book.calculate();
  return book;
}

/** What each formula gives beside the data of one sheet; every formula has 12 rows to spill over, from column L. */
export async function answers(formulas: readonly string[], data: readonly (readonly TestCell[])[] = []) {
  const rows: TestCell[][] = data.map((row) => [...row]);
  const rowOf = (i: number) => 9 + i * 12;
  formulas.forEach((formula, i) => {
    while (rows.length <= rowOf(i)) rows.push([]);
    const row = rows[rowOf(i)] as TestCell[];
    while (row.length < 11) row.push(null);
    row[11] = formula;
  });
  const book = await calculated({ Data: rows });
  return { book, answer: (i: number) => book.answer('Data', `L${rowOf(i) + 1}`) };
}
