import {
  BooleanNumber,
  CellValueType,
  type ICellData,
  type IWorkbookData,
  type IWorksheetData,
  type Nullable,
} from '@univerjs/core';
import { ERROR_TYPE_SET } from '@univerjs/preset-sheets-core';
import type { Area } from '../../../formula/area';
import type { ErrorCode } from '../../../formula/errors';
import { cellError } from '../../../formula/errors';
import type { Book, BookCell, BookSheet, BookTable } from '../../../book/book';
import { charactersOf } from '../../../book/widthsAndHeights';
import type { Decorations } from './besideCells';
import { decorationsToBook, storedDecorations } from './decorationsToBook';
import type { Grid } from '../grid/grid';
import { spillAreas, spilledCells } from '../grid/spills';
import { shownTexts } from '../grid/shownTexts';
import { bodyRows, withFilters } from '../filter/tableFilters';
import { drawnChart } from '../../../book/chart';
import { keptCharts, keptWith } from './keptWithSheet';
import { kindOver } from '../charts/rowsDrawn';
import { pageNow, pageOfOwn } from './printedPage';
import { madePoints } from './measures';
import { NotWritten } from './notWritten';
import { isByHand } from '../../../engine/filter/byHand';
import { areaOfGridRange } from '../../../engine/gridRange';
import { bookStyle } from './styles';
import { widerThanMade } from './typeface';

const NOT_APART =
  'Rows that are filtered out show the same as others that are not, and come back where the filter is applied anew';
const HAND_AS_FILTER = 'Rows of a filtered table that are hidden by hand count as filtered out in the file';

export interface Written {
  readonly book: Book;
  /** What the file will not hold, in words. */
  readonly notWritten: readonly string[];
  /** Where pictures stand that have no pixels yet, sheet by sheet. */
  readonly pictures: readonly (readonly Area[])[];
}

/** The open workbook on its way to a file: every sheet, with the values that it shows. */
export function toBook(grid: Grid): Written {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook) throw new Error('No workbook is open.');
  const snapshot = workbook.save();
  const beside = storedDecorations(snapshot);
  const notWritten = new NotWritten();
  const sheets = snapshot.sheetOrder.map((id) => bookSheet(grid, snapshot, id, beside(id), notWritten));
  const names = workbook
    .getDefinedNames()
    .map((name) => ({ name: name.getName(), formula: name.getFormulaOrRefString().replace(/^=?/, '=') }));
  const pictures = snapshot.sheetOrder.map((id) =>
    (keptWith({ custom: snapshot.sheets[id]?.custom })?.pictures ?? []).map(({ place }) => place),
  );
  return { book: { sheets, names }, notWritten: notWritten.sentences, pictures };
}

function bookSheet(
  grid: Grid,
  snapshot: IWorkbookData,
  id: string,
  beside: Decorations,
  notWritten: NotWritten,
): BookSheet {
  const sheet = snapshot.sheets[id] as Partial<IWorksheetData>;
  const name = sheet.name ?? '';
  const cells = cellsOf(grid, snapshot, id, sheet, beside, notWritten);
  const { tables: made, rules, conditions } = decorationsToBook(beside, name, notWritten);
  const rows = Object.entries(sheet.rowData ?? {});
  const columns = Object.entries(sheet.columnData ?? {});
  const unseen = rows.filter(([, { hd }]) => hd === BooleanNumber.TRUE);
  const notByHand = unseen.flatMap(([row, data]) => (isByHand(data) ? [] : [Number(row)]));
  const textAt = shownTexts(grid, id);
  const filtered = made.map((table) => withFilters(withLiveColumns(table, cells), notByHand, textAt));
  const tables = filtered.map(({ table }) => table);
  const filteredRows = [...new Set(filtered.flatMap(({ rows: out }) => out))];
  const isFiltered = new Set(filteredRows);
  const hiddenRows = unseen.map(([row]) => Number(row)).filter((row) => !isFiltered.has(row));
  if (filtered.some(({ isExact }) => !isExact)) notWritten.note(NOT_APART, name);
  if (tables.some(({ filters, area }) => filters && bodyRows(area).some((row) => hiddenRows.includes(row))))
    notWritten.note(HAND_AS_FILTER, name);
  if (columns.some(([, { hd }]) => hd === BooleanNumber.TRUE))
    notWritten.note('Hidden columns are shown in the file', name);
  const kept = keptWith({ custom: sheet.custom });
  const charts = keptCharts(kept, tables).flatMap((chart) => {
    const drawn = drawnChart(chart, tables);
    if (drawn) return [{ ...chart, kind: kindOver(chart.kind, valuesIn(cells, drawn.x)) }];
    notWritten.note('Charts whose cells are gone', name);
    return [];
  });
  return {
    name,
    hidden: sheet.hidden === BooleanNumber.TRUE,
    widths: Object.fromEntries(
      columns.flatMap(([c, { w }]) =>
        w === undefined ? [] : [[c, charactersOf(Math.round(w / widerThanMade(sheet.custom)))]],
      ),
    ),
    ...(filteredRows.length > 0 ? { filteredRows } : {}),
    ...(hiddenRows.length > 0 ? { hiddenRows } : {}),
    heights: Object.fromEntries(
      rows.flatMap(([r, row]) => {
        const points = madePoints(row);
        return points === undefined ? [] : [[r, points]];
      }),
    ),
    cells,
    merges: (sheet.mergeData ?? []).map(areaOfGridRange),
    freeze: { rows: sheet.freeze?.ySplit ?? 0, columns: sheet.freeze?.xSplit ?? 0 },
    ...(sheet.showGridlines === BooleanNumber.FALSE ? { gridlines: false } : {}),
    tables,
    rules,
    conditions,
    charts,
    page: kept ? pageNow(kept.page, { name, tables, cells }) : pageOfOwn(name),
  };
}

/**
 * What rows that are added in another program shall hold: the formula that all rows hold now. The grid keeps with a table what
 * its columns held when it was made.
 */
function withLiveColumns(table: BookTable, cells: readonly BookCell[]): BookTable {
  const { row, column, rows } = table.area;
  return {
    ...table,
    columns: table.columns.map(({ name, formula }, c) => {
      const held = cells
        .filter((cell) => cell.column === column + c && cell.row > row && cell.row < row + rows)
        .map((cell) => cell.formula);
      const [first] = held;
      const isOne = held.length === rows - 1 && held.every((each) => each === first);
      const live = isOne ? first : held.includes(formula) ? formula : undefined;
      return { name, ...(live === undefined ? {} : { formula: live }) };
    }),
  };
}

const valuesIn = (cells: readonly BookCell[], { row, column, rows, columns }: Area): BookCell['value'][] =>
  cells
    .filter((c) => c.row >= row && c.row < row + rows && c.column >= column && c.column < column + columns)
    .map(({ value }) => value);

function cellsOf(
  grid: Grid,
  { styles }: IWorkbookData,
  id: string,
  { cellData, name = '' }: Partial<IWorksheetData>,
  { notes }: Decorations,
  notWritten: NotWritten,
): BookCell[] {
  const sheet = grid.api.getActiveWorkbook()?.getSheetBySheetId(id);
  const spilled = spilledCells(grid, id);
  const areas = spillAreas(grid, id);
  const noteAt = new Map(notes.map(({ row, col, note }) => [`${row},${col}`, note]));
  const cells = new Map<string, BookCell>();
  for (const [r, line] of Object.entries(cellData ?? {})) {
    for (const [c, cell] of Object.entries((line ?? {}) as Record<string, Nullable<ICellData>>)) {
      if (!cell) continue;
      const [row, column] = [Number(r), Number(c)];
      const formula = cell.f || cell.si ? sheet?.getRange(row, column).getFormula() : undefined;
      if (cell.p) notWritten.note('A look within the text of a cell becomes plain text', name);
      const own = cell.v ?? (formula ? spilled[row]?.[column]?.v : undefined);
      const style = bookStyle(typeof cell.s === 'string' ? styles[cell.s] : cell.s);
      const spill = formula ? areas[row]?.[column] : undefined;
      cells.set(`${row},${column}`, {
        row,
        column,
        value: valueOf(cell.p ? plainText(cell) : own, cell.t, formula !== undefined && formula !== ''),
        ...(formula ? { formula } : {}),
        ...(spill && (spill.endRow > spill.startRow || spill.endColumn > spill.startColumn)
          ? { spill: areaOfGridRange(spill) }
          : {}),
        ...(Object.keys(style).length > 0 ? { style } : {}),
      });
    }
  }
  for (const [r, line] of Object.entries(spilled)) {
    for (const [c, cell] of Object.entries(line)) {
      const key = `${r},${c}`;
      const there = cells.get(key);
      if (there?.formula !== undefined || (there?.value ?? null) !== null) continue;
      cells.set(key, {
        ...there,
        row: Number(r),
        column: Number(c),
        value: valueOf(cell?.v, undefined, true),
      });
    }
  }
  for (const [key, note] of noteAt) {
    const [row = 0, column = 0] = key.split(',').map(Number);
    cells.set(key, { ...(cells.get(key) ?? { row, column, value: null }), note });
  }
  return [...cells.values()].sort((a, b) => a.row - b.row || a.column - b.column);
}

const plainText = (cell: ICellData): string =>
  (cell.p?.body?.dataStream ?? '').replace(/\r\n$/, '').replaceAll('\r', '\n');

function valueOf(value: unknown, type: ICellData['t'], calculated: boolean): BookCell['value'] {
  if (value === undefined || value === null) return null;
  // So the grid leaves a cell of texts that a person empties.
  if (value === '' && !calculated && type !== CellValueType.FORCE_STRING) return null;
  if (type === CellValueType.BOOLEAN) return Boolean(value);
  if (calculated && typeof value === 'string' && ERROR_TYPE_SET.has(value as never))
    return cellError(value as ErrorCode);
  return typeof value === 'number' || typeof value === 'boolean' ? value : String(value);
}
