import type { BookSheet } from '../../book/book';
import { usedArea } from '../../book/cells';
import type { SheetPlan } from '../../sheets/plan';
import { formulas, numberFormats, values } from './cells';
import { drawCharts } from './chart';
import { drawConditions } from './conditions';
import { drawInputs } from './inputs';
import { drawLooks } from './looks';
import { drawPage, drawSizes } from './page';
import { excelRange } from './ranges';

/** Tables without stripes, arrows and colours of Excel's own: the sheet's theme dresses their cells. */
function drawTables(sheet: Excel.Worksheet, { tables }: BookSheet): void {
  for (const { area, name } of tables) {
    const table = sheet.tables.add(excelRange(sheet, area), true);
    table.name = name;
    table.style = 'TableStyleLight1';
    table.showBandedRows = false;
    table.showFilterButton = false;
  }
}

/**
 * Queues everything that the plan says for a sheet that is empty; Excel does it at the next sync, in this order.
 *
 * Text format comes before the words, or 1/125 would become a date. Tables lie over words that are there and before the
 * formulas, because Excel refuses a formula that names a table which it does not know yet.
 */
export function drawSheet(sheet: Excel.Worksheet, { sheet: planned, names }: SheetPlan): void {
  const used = excelRange(sheet, usedArea(planned));
  used.numberFormat = numberFormats(planned);
  used.values = values(planned);
  drawTables(sheet, planned);
  used.formulas = formulas(planned);

  drawSizes(sheet, planned);
  for (const { name, row, column } of names) sheet.names.add(name, sheet.getCell(row, column));
  for (const area of planned.merges) excelRange(sheet, area).merge();
  drawLooks(sheet, planned);
  drawInputs(sheet, planned);
  drawConditions(sheet, planned);
  drawCharts(sheet, planned);
  drawPage(sheet, planned);
}
