import type { SheetPlan } from '../../sheets/plan';
import { columnPoints, rowHeights } from './measures';
import { excelRange } from './ranges';

/** Headers read & as the start of a command. */
const headerText = (text: string): string => text.replaceAll('&', '&&');

/** Columns and rows that are wide and high enough for what stands in them. */
export function drawSizes(sheet: Excel.Worksheet, plan: SheetPlan): void {
  for (const [column, characters] of plan.columns.entries())
    sheet.getRangeByIndexes(0, column, 1, 1).format.columnWidth = columnPoints(characters);
  for (const [row, points] of rowHeights(plan))
    sheet.getRangeByIndexes(row, 0, 1, 1).format.rowHeight = points;
}

/** What stays in view, and how the sheet prints: on one page across. */
export function drawPage(sheet: Excel.Worksheet, { page, freezeRows }: SheetPlan): void {
  sheet.showGridlines = false;
  if (freezeRows > 0) sheet.freezePanes.freezeRows(freezeRows);
  const { pageLayout } = sheet;
  pageLayout.orientation = page.landscape ? 'Landscape' : 'Portrait';
  pageLayout.paperSize = 'A4';
  pageLayout.zoom = { horizontalFitToPages: 1 };
  pageLayout.setPrintArea(excelRange(sheet, page.area));
  if (page.titleRows > 0) pageLayout.setPrintTitleRows(`$1:$${page.titleRows}`);
  pageLayout.headersFooters.defaultForAllPages.leftHeader = headerText(page.header);
}
