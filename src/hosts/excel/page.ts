import type { BookSheet } from '../../book/book';
import { columnPoints, USUAL_HEIGHT } from '../../book/widthsAndHeights';
import { scaleToPage } from '../../book/printedPages';
import { excelRange } from './ranges';

/** Headers read & as the start of a command, such as that for the name of the tab, whatever it will be. */
const headerText = (text: string): string => text.replaceAll('&', '&&');
const TAB = '&A';

/** Columns and rows that are wide and high enough for what stands in them. Excel gives a row its usual height by itself. */
export function drawSizes(sheet: Excel.Worksheet, { widths, heights }: BookSheet): void {
  for (const [column, characters] of Object.entries(widths))
    sheet.getRangeByIndexes(0, Number(column), 1, 1).format.columnWidth = columnPoints(characters);
  for (const [row, points] of Object.entries(heights))
    if (points > USUAL_HEIGHT) sheet.getRangeByIndexes(Number(row), 0, 1, 1).format.rowHeight = points;
}

/** What stays in view. */
export function drawView(sheet: Excel.Worksheet, { freeze }: BookSheet): void {
  sheet.showGridlines = false;
  if (freeze.rows > 0) sheet.freezePanes.freezeRows(freeze.rows);
}

/**
 * How the sheet prints: on one page across, on the paper that the person has. A scale is kept where "one page wide" is lost,
 * as Excel on Windows loses it until Page Layout was opened (OfficeDev/office-js #1860).
 */
export function drawPage(sheet: Excel.Worksheet, { name, page, widths }: BookSheet): void {
  const { pageLayout } = sheet;
  pageLayout.orientation = page.landscape ? 'Landscape' : 'Portrait';
  pageLayout.zoom = { scale: Math.round(100 * scaleToPage(page, widths)) };
  if (page.area) pageLayout.setPrintArea(excelRange(sheet, page.area));
  const { titleRows, titlesFrom = 0 } = page;
  if (titleRows > 0) pageLayout.setPrintTitleRows(`$${titlesFrom + 1}:$${titlesFrom + titleRows}`);
  for (const row of page.breaks)
    sheet.horizontalPageBreaks.add(excelRange(sheet, { row, column: 0, rows: 1, columns: 1 }));
  pageLayout.headersFooters.defaultForAllPages.leftHeader =
    page.header === name ? TAB : headerText(page.header);
}
