import { at } from '../exposure/core/at';
import type { Area } from '../formula/area';

/** A sheet as it stands: what its cells show, from its first one, and where its tables are. */
export interface SheetAsRead {
  readonly name: string;
  /** Numbers, texts, truths, CellErrors; an empty text or null where nothing stands. Rows may be of any length. */
  readonly cells: readonly (readonly unknown[])[];
  /** Heading row and all rows below it. */
  readonly tables: readonly Area[];
  /** A sentence on cells that hold something and were not read; left out where all were. */
  readonly unread?: string;
}

/** A sheet as a list of its cells. */
interface ListedSheet {
  readonly name: string;
  readonly cells: readonly { readonly row: number; readonly column: number; readonly value: unknown }[];
  readonly tables: readonly { readonly area: Area }[];
}

/** The same, line by line. */
export function inLines({ name, cells, tables }: ListedSheet): SheetAsRead {
  const lines: unknown[][] = [];
  for (const { row, column, value } of cells) {
    while (lines.length <= row) lines.push([]);
    const line = at(lines, row);
    while (line.length <= column) line.push('');
    line[column] = value ?? '';
  }
  return { name, cells: lines, tables: tables.map(({ area }) => area) };
}

/** What a cell says, without spaces around it; empty for errors and truths too. */
export function textAt({ cells }: SheetAsRead, row: number, column: number): string {
  const value = cells[row]?.[column];
  return typeof value === 'string' || typeof value === 'number' ? String(value).trim() : '';
}

/** Words as they are compared: without large letters, signs and the unit behind a comma or in brackets. */
export const plainWords = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[,(].*$/, '')
    .replace(/[^a-z0-9 ]+/g, ' ')
    .replace(/ +/g, ' ')
    .trim();

/** Columns of a table by the plain words of their headings. */
export function headingsOf(sheet: SheetAsRead, { row, column, columns }: Area): ReadonlyMap<string, number> {
  const found = new Map<string, number>();
  for (let c = column; c < column + columns; c++) {
    const heading = plainWords(textAt(sheet, row, c));
    if (heading !== '' && !found.has(heading)) found.set(heading, c);
  }
  return found;
}

/** Labels beside which words stand: a set has a movement, or a datum, that may be called as another label is. */
const OF_WORDS: ReadonlySet<string> = new Set(['shot', 'datum', 'other movements', 'movements']);

/** Cells beside a label, outside tables, by its plain words. Of two alike the one further left counts: what is typed stands there. */
export function labelledCells(sheet: SheetAsRead): ReadonlyMap<string, unknown> {
  const isInTable = (row: number, column: number): boolean =>
    sheet.tables.some(
      (table) =>
        row >= table.row &&
        row < table.row + table.rows &&
        column >= table.column &&
        column < table.column + table.columns,
    );
  const found = new Map<string, unknown>();
  const columns = sheet.cells.reduce((most, line) => Math.max(most, line.length), 0);
  for (let column = 0; column < columns; column++)
    for (const [row, line] of sheet.cells.entries()) {
      const value = line[column];
      if (typeof value !== 'string' || isInTable(row, column)) continue;
      const label = plainWords(value);
      if (OF_WORDS.has(plainWords(textAt(sheet, row, column - 1)))) continue;
      if (label !== '' && !found.has(label)) found.set(label, line[column + 1]);
    }
  return found;
}
