import type { SheetPlan } from '../../sheets/plan';
import { formulas, numberFormats, usedArea, values } from './cells';
import { drawCharts } from './chart';
import { drawInputs } from './inputs';
import { drawLooks, drawWarnings } from './looks';
import { drawPage, drawSizes } from './page';
import { excelRange } from './ranges';

/** Tables without stripes, arrows and colours of Excel's own: the sheet's theme dresses their cells. */
function drawTables(sheet: Excel.Worksheet, { tables }: SheetPlan): void {
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
export function drawSheet(sheet: Excel.Worksheet, plan: SheetPlan): void {
  const used = excelRange(sheet, usedArea(plan));
  used.numberFormat = numberFormats(plan);
  used.values = values(plan);
  drawTables(sheet, plan);
  used.formulas = formulas(plan);

  drawSizes(sheet, plan);
  for (const { name, row, column } of plan.names) sheet.names.add(name, sheet.getCell(row, column));
  for (const area of plan.merges) excelRange(sheet, area).merge();
  drawLooks(sheet, plan);
  drawInputs(sheet, plan);
  drawWarnings(sheet, plan);
  drawCharts(sheet, plan);
  drawPage(sheet, plan);
}
