import {
  BooleanNumber,
  CellValueType,
  generateRandomId,
  type ICellData,
  type IStyleData,
  type IWorksheetData,
  type Nullable,
} from '@univerjs/core';
import { NIGHT } from '../../../book/palette';
import type { Place } from '../../../formula/address';
import { lastOfCard } from '../../../pane/valuesCopy';
import { styleOf as lookOf } from '../../../sheets/looks';
import { freeTableName } from '../../../sheets/makePlan';
import { TOPS } from '../../../sheets/offeredTemplates';
import type { Decorations } from '../book/besideCells';
import { storedDecorations } from '../book/decorationsToBook';
import { bookStyle } from '../book/styles';
import type { Grid } from '../grid/grid';
import { spilledCells } from '../grid/spills';
import type { NewSheet } from './lay';

const INPUT_LOOK = lookOf('input');

type Cells = Record<number, Record<number, Nullable<ICellData>>>;

/** What a formula shows, as if it had been typed. A text that could be taken for a formula stays a text. */
function asTyped({ v, t }: Pick<ICellData, 'v' | 't'>): Pick<ICellData, 'v' | 't'> {
  if (v === undefined || v === null || v === '') return {};
  if (t === CellValueType.BOOLEAN || typeof v === 'boolean')
    return { v: v ? 1 : 0, t: CellValueType.BOOLEAN };
  if (typeof v === 'number') return { v, t: CellValueType.NUMBER };
  return { v, t: /^[=+\-@]/.test(v) ? CellValueType.FORCE_STRING : CellValueType.STRING };
}

/** The cells with values in the place of formulas, those that lists spill into included. */
function valueCells(cells: Cells, spilled: Cells): Cells {
  const made: Cells = {};
  const rows = new Set([...Object.keys(cells), ...Object.keys(spilled)].map(Number));
  for (const row of rows) {
    const [own, spills] = [cells[row] ?? {}, spilled[row] ?? {}];
    const line: Record<number, Nullable<ICellData>> = { ...own };
    for (const column of new Set([...Object.keys(own), ...Object.keys(spills)].map(Number))) {
      const { f, si, v, t, ...rest } = own[column] ?? {};
      const isFormula = Boolean(f) || Boolean(si);
      if (!isFormula && (v ?? '') !== '') continue;
      const shown = (v ?? '') === '' ? (spills[column] ?? {}) : { v, ...(t === undefined ? {} : { t }) };
      line[column] = { ...rest, ...asTyped(shown as ICellData) };
    }
    made[row] = line;
  }
  return made;
}

/** The sentence below a sheet's title that says what to type: on a copy nothing follows. */
const STARTS: ReadonlySet<unknown> = new Set(TOPS.map(({ start }) => start));
const STARTS_NOT = 'The values as they were when this copy was made. Nothing here calculates.';

/** A look without that of cells which wait to be filled. */
function asResult(style: Nullable<IStyleData>): Nullable<IStyleData> {
  const { fill, edges } = bookStyle(style);
  if (!style || fill !== INPUT_LOOK.fill || edges?.top?.line !== INPUT_LOOK.edges?.top?.line) return style;
  const { bg: _fill, bd: _edges, ...rest } = style;
  return rest;
}

/** The cells as somebody reads them who has nothing to type. */
function toRead(cells: Cells, styleOf: (cell: ICellData) => Nullable<IStyleData>): Cells {
  const read = (cell: Nullable<ICellData>): Nullable<ICellData> => {
    if (!cell) return cell;
    const style = asResult(styleOf(cell));
    return {
      ...cell,
      ...(STARTS.has(cell.v) ? { v: STARTS_NOT } : {}),
      ...(style ? { s: style } : {}),
    };
  };
  return Object.fromEntries(
    Object.entries(cells).map(([row, line]) => [
      row,
      Object.fromEntries(Object.entries(line).map(([column, cell]) => [column, read(cell)])),
    ]),
  );
}

/**
 * Tables without the formulas of their columns, under names that nobody has; no rules, since nothing is to be typed; and new
 * ids for everything.
 */
function besideIt({ tables, conditions, notes }: Decorations, taken: readonly string[]): Decorations {
  const used = [...taken];
  const newId = (): string => generateRandomId(8);
  return {
    tables: tables.map((table) => {
      const name = freeTableName(table.name, used);
      used.push(name);
      const columns = table.columns.map((column) => ({ ...column, id: newId(), formula: '' }));
      return { ...table, id: newId(), name, columns };
    }),
    rules: [],
    conditions: conditions.map((condition) => ({ ...condition, cfId: newId() })),
    notes: notes.map((note) => ({ ...note, id: newId() })),
  };
}

const isEmpty = (cells: Cells): boolean =>
  Object.values(cells).every((line) =>
    Object.values(line).every((cell) => (cell?.v ?? '') === '' && !cell?.p),
  );

/** The sheet in view as a new one of another name, with everything on it but formulas; undefined where it is empty. */
export function valuesSheet(grid: Grid, name: string, tablesTaken: readonly string[]): NewSheet | undefined {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook) throw new Error('No workbook is open.');
  const snapshot = workbook.save();
  const id = workbook.getActiveSheet().getSheetId();
  const sheet = snapshot.sheets[id] as Partial<IWorksheetData>;
  const cells = valueCells((sheet.cellData ?? {}) as Cells, spilledCells(grid, id));
  if (isEmpty(cells)) return undefined;
  const styleOf = ({ s }: ICellData) => (typeof s === 'string' ? snapshot.styles[s] : s);
  const read = toRead(cells, styleOf);
  const beside = storedDecorations(snapshot)(id);
  const last = lastOfCard(cells[1]?.[0]?.v);
  if (last) return atNight({ ...sheet, name }, read, beside, last);
  return {
    sheet: { ...sheet, name, cellData: read as NonNullable<IWorksheetData['cellData']> },
    beside: besideIt(beside, tablesTaken),
  };
}

/** Width of a phone, less the numbers of the rows. */
const PHONE = 390 - 46;
/** Dark rows below the card, so that nothing lights up where a phone is long. */
const BELOW = 60;

/** A card for a phone in a dark room: its page alone, grey on black, as wide as the phone. */
function atNight(
  sheet: Partial<IWorksheetData>,
  cells: Cells,
  { notes }: Decorations,
  last: Place,
): NewSheet {
  const dark = (cell: Nullable<ICellData>): ICellData => {
    const { bd: _lines, ...style } = (cell?.s ?? {}) as IStyleData;
    return { ...cell, s: { ...style, bg: { rgb: NIGHT.paper }, cl: { rgb: NIGHT.ink } } };
  };
  const [rows, columns] = [last.row + 1 + BELOW, last.column + 1];
  const cellData: Record<number, Record<number, ICellData>> = {};
  for (let row = 0; row < rows; row++)
    for (let column = 0; column < columns; column++)
      (cellData[row] ??= {})[column] = dark(cells[row]?.[column]);
  const width = Array.from({ length: columns }, (_, i) => sheet.columnData?.[i]?.w ?? 0);
  return {
    sheet: {
      ...sheet,
      cellData,
      rowCount: rows,
      columnCount: columns,
      showGridlines: BooleanNumber.FALSE,
      // a line is drawn below rows that stay in view
      freeze: { xSplit: 0, ySplit: 0, startRow: -1, startColumn: -1 },
      zoomRatio: Math.min(1, PHONE / width.reduce((sum, each) => sum + each, 0)),
    },
    beside: {
      tables: [],
      rules: [],
      conditions: [],
      notes: notes
        .filter(({ row, col }) => row < rows && col < columns)
        .map((note) => ({ ...note, id: generateRandomId(8) })),
    },
  };
}
