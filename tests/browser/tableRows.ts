import type { Workbench } from './workbench';

/** The first and the last row of a table, heading included. */
export async function rowsOf(sheet: Workbench, table: string): Promise<{ head: number; last: number }> {
  const area = (await sheet.tables())[table] ?? '';
  const [head, last] = [...area.matchAll(/\d+/g)].map(Number);
  return { head: Number(head), last: Number(last) };
}

/** Rows of cells as a spreadsheet copies them. */
export const lines = (rows: readonly (readonly (number | string)[])[]): string =>
  rows.map((cells) => cells.join('\t')).join('\n');
