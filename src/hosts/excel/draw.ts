import type { BookSheet } from '../../book/book';
import { usedArea } from '../../book/cells';
import type { SheetPlan } from '../../sheets/plan';
import { numberFormats, values } from './cells';
import { drawConditions } from './conditions';
import { type FormulaBlock, formulaBlocks, tablesInOrder } from './formulaBlocks';
import { drawInputs } from './inputs';
import { drawLooks } from './looks';
import { drawSizes } from './page';
import { excelRange } from './ranges';

function writeFormulas(sheet: Excel.Worksheet, blocks: readonly FormulaBlock[]): void {
  for (const { area, formulas } of blocks)
    excelRange(sheet, area).formulas = formulas.map((line) => [...line]);
}

/**
 * Tables and formulas. Excel refuses a formula that names a table which it does not know yet, and fills a table's column with
 * each formula that is written into it. Tables come without stripes, arrows and colours of Excel's own: the sheet's
 * theme dresses their cells.
 */
function drawTables(sheet: Excel.Worksheet, planned: BookSheet): void {
  const { before, after } = formulaBlocks(planned);
  for (const planTable of tablesInOrder(planned.tables, before)) {
    writeFormulas(sheet, before(planTable));
    const table = sheet.tables.add(excelRange(sheet, planTable.area), true);
    table.name = planTable.name;
    table.style = 'TableStyleLight1';
    table.showBandedRows = false;
    table.showFilterButton = false;
  }
  writeFormulas(sheet, after);
}

/**
 * Queues everything that makes the sheet what it is, for one that is empty; Excel does it at the next sync, in this order.
 * Text format comes before the words, or 1/125 would become a date; tables lie over words that are there.
 */
export function drawSheet(sheet: Excel.Worksheet, { sheet: planned, names }: SheetPlan): void {
  const used = excelRange(sheet, usedArea(planned));
  used.numberFormat = numberFormats(planned);
  used.values = values(planned);
  drawTables(sheet, planned);

  drawSizes(sheet, planned);
  for (const { name, row, column } of names) sheet.names.add(name, sheet.getCell(row, column));
  for (const area of planned.merges) excelRange(sheet, area).merge();
  drawLooks(sheet, planned);
  drawInputs(sheet, planned);
  drawConditions(sheet, planned);
}
