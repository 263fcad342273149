import {
  CellValueType,
  generateRandomId,
  type ICellData,
  type IStyleData,
  type IWorksheetData,
  type Nullable,
} from '@univerjs/core';
import type { BookSheet } from '../../../book/book';
import { usedArea } from '../../../book/cells';
import { columnsOfCard } from '../../../pane/valuesCopy';
import { styleOf as lookOf } from '../../../sheets/looks';
import { freeTableName } from '../../../sheets/makePlan';
import { TOPS } from '../../../sheets/offeredTemplates';
import { FOLLOWS_NOTHING, phoneCard } from '../../../sheets/phoneCard';
import { decorations, type Decorations } from '../book/besideCells';
import { storedDecorations } from '../book/decorationsToBook';
import { snapshotSheet } from '../book/snapshotSheet';
import { bookStyle } from '../book/styles';
import { toBook } from '../book/toBook';
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
      ...(STARTS.has(cell.v) ? { v: FOLLOWS_NOTHING } : {}),
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

/** A sheet of values to be laid. */
interface ValuesSheet {
  readonly sheet: NewSheet;
  /** Whether it is the lines of a card. */
  readonly isCard: boolean;
}

/**
 * The sheet in view as a new one of another name, with everything on it but formulas, or of a card its lines for a phone;
 * undefined where it is empty.
 */
export function valuesSheet(
  grid: Grid,
  name: string,
  tablesTaken: readonly string[],
): ValuesSheet | undefined {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook) throw new Error('No workbook is open.');
  const snapshot = workbook.save();
  const id = workbook.getActiveSheet().getSheetId();
  const sheet = snapshot.sheets[id] as Partial<IWorksheetData>;
  const cells = valueCells((sheet.cellData ?? {}) as Cells, spilledCells(grid, id));
  if (isEmpty(cells)) return undefined;
  const printed = columnsOfCard(cells[1]?.[0]?.v);
  const card = printed && toBook(grid).book.sheets.find((one) => one.name === sheet.name);
  if (card && printed !== undefined) return { sheet: onPhone(card, printed, name), isCard: true };
  const styleOf = ({ s }: ICellData) => (typeof s === 'string' ? snapshot.styles[s] : s);
  const read = toRead(cells, styleOf);
  const beside = storedDecorations(snapshot)(id);
  return {
    sheet: {
      sheet: { ...sheet, name, cellData: read as NonNullable<IWorksheetData['cellData']> },
      beside: besideIt(beside, tablesTaken),
    },
    isCard: false,
  };
}

/** A card for a phone in a dark room. It ends where its columns do, so that nothing white stands beside it. */
function onPhone(sheet: BookSheet, printed: number, name: string): NewSheet {
  const card = phoneCard(sheet, printed, name);
  const { rows, columns } = usedArea(card);
  return {
    sheet: { ...snapshotSheet(card, ''), rowCount: rows, columnCount: columns },
    beside: decorations(card),
  };
}
