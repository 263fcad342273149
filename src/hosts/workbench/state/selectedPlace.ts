import { parseArea } from '../../../formula/areaText';
import type { Grid } from '../grid/grid';

const KEY = 'sweeptable selected';

interface Selected {
  readonly workbook: string;
  readonly sheet: string;
  readonly cells: string;
}

const isSelected = (value: unknown): value is Selected =>
  typeof value === 'object' &&
  value !== null &&
  ['workbook', 'sheet', 'cells'].every((key) => typeof (value as Record<string, unknown>)[key] === 'string');

/** Keeps what is selected, apart from the workbook: to select is no change of it, and would have all of it stored anew. */
export function keepSelected({ api }: Grid): void {
  const workbook = api.getActiveWorkbook();
  const cells = workbook?.getActiveRange()?.getA1Notation();
  if (!workbook || !cells) return;
  const selected: Selected = {
    workbook: workbook.getId(),
    sheet: workbook.getActiveSheet().getSheetId(),
    cells,
  };
  try {
    localStorage.setItem(KEY, JSON.stringify(selected));
  } catch {
    // Where the browser forbids storage there is no workbook of last time either.
  }
}

function kept(): Selected | undefined {
  try {
    const value: unknown = JSON.parse(localStorage.getItem(KEY) ?? 'null');
    return isSelected(value) ? value : undefined;
  } catch {
    return undefined; // forbidden, or not ours
  }
}

/** Selects what was selected when the page was left, if this is the same workbook and it still has that place. */
export function selectAgain({ api }: Grid): void {
  const workbook = api.getActiveWorkbook();
  const last = kept();
  if (!workbook || last?.workbook !== workbook.getId()) return;
  const [sheet, area] = [workbook.getSheetBySheetId(last.sheet), parseArea(last.cells)];
  if (!sheet || sheet.isSheetHidden() || !area) return;
  // whole rows and columns end where the sheet does
  const rows = Math.min(area.rows, sheet.getMaxRows() - area.row);
  const columns = Math.min(area.columns, sheet.getMaxColumns() - area.column);
  workbook.setActiveSheet(sheet);
  if (rows > 0 && columns > 0) sheet.getRange(area.row, area.column, rows, columns).activate();
}
