import type { Area } from '../../formula/area';
import { excelRange } from './ranges';

/**
 * Excel on the web gives five megabytes at once, and tells about 230 bytes of the looks of a cell. Larger sheets are not
 * offered to be taken back: they can be deleted by hand.
 */
const MOST_CELLS = 10_000;

/** What a person may change in the look of a cell. */
const LOOKS: Excel.CellPropertiesLoadOptions = {
  format: {
    fill: { color: true },
    font: { bold: true, color: true, italic: true, name: true, size: true, strikethrough: true, underline: true },
    horizontalAlignment: true,
    verticalAlignment: true,
    wrapText: true,
  },
}; // prettier-ignore

/** A sheet as it was left: what it takes to see later whether it is still the same. */
export interface SheetMark {
  readonly id: string;
  readonly name: string;
  readonly area: Area;
  readonly state: string;
}

/** Comments came with ExcelApi 1.10; an older Excel cannot count them. */
const countsComments = (): boolean =>
  typeof Office !== 'undefined' && Office.context.requirements.isSetSupported('ExcelApi', '1.10');

/**
 * Asks for everything on a sheet that may be somebody's work: its name, what is typed, number formats, looks of the cells,
 * names that hold on it, and how many charts, pictures, tables, pivots and comments there are. Widths, heights, notes, and
 * changes within a chart are not seen. Gives how to read it after the next sync.
 */
export function askState(sheet: Excel.Worksheet, area: Area): () => string {
  sheet.load('name');
  const used = sheet.getUsedRangeOrNullObject().load('address,formulas,numberFormat');
  const looks = excelRange(sheet, area).getCellProperties(LOOKS);
  const counts = [sheet.charts, sheet.shapes, sheet.tables, sheet.pivotTables].map((all) => all.getCount());
  const comments = countsComments() ? [sheet.comments.getCount()] : [];
  sheet.names.load('items/name,items/formula');
  return () =>
    JSON.stringify([
      sheet.name,
      used.isNullObject ? [] : [used.address, used.formulas, used.numberFormat],
      looks.value,
      [...counts, ...comments].map(({ value }) => value),
      sheet.names.items.map(({ name, formula }): unknown[] => [name, formula]),
    ]);
}

/** Asks for a mark of a sheet that has just been made; nothing for one that is too large. */
export function askMark(sheet: Excel.Worksheet, area: Area): () => SheetMark | undefined {
  if (area.rows * area.columns > MOST_CELLS) return () => undefined;
  const state = askState(sheet.load('id,name'), area);
  return () => ({ id: sheet.id, name: sheet.name, area, state: state() });
}
