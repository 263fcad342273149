import type { CellValue } from '@univerjs/core';
import { FormulaDataModel } from '@univerjs/preset-sheets-core';
import type { Grid } from './grid';

/** The exact value a cell shows. The grid's own read-out rounds, and leaves out spilled answers: those are kept beside the cells. */
export function shownValue(
  { univer, api }: Grid,
  sheetId: string,
  row: number,
  column: number,
): CellValue | null {
  const workbook = api.getActiveWorkbook();
  const own = workbook?.getSheetBySheetId(sheetId)?.getRange(row, column).getRawValue();
  if (own !== undefined && own !== null) return own;
  const spilled = univer.__getInjector().get(FormulaDataModel).getArrayFormulaCellData();
  return spilled?.[workbook?.getId() ?? '']?.[sheetId]?.[row]?.[column]?.v ?? null;
}
