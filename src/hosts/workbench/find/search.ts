import { BooleanNumber, CellValueType, type ICellData, type Nullable, numfmt } from '@univerjs/core';
import type { FWorksheet } from '@univerjs/sheets/facade';
import type { Grid } from '../grid/grid';
import { spilledCells } from '../grid/spills';

/** What is looked for. */
export interface Wanted {
  readonly text: string;
  readonly isCaseMinded: boolean;
  /** Whether it has to be all that a cell shows. */
  readonly isWhole: boolean;
  readonly isEverywhere: boolean;
}

/** What a cell holds in which a text was found: something that was typed, or what nobody can type another word into. */
export type Held = 'typed' | 'answer' | 'format' | 'looks';

export interface Match {
  readonly sheetId: string;
  readonly sheetName: string;
  readonly row: number;
  readonly column: number;
  readonly held: Held;
  /** What was typed there. */
  readonly typed: string;
}

export interface Found {
  /** In the order of sheets, rows and columns. */
  readonly matches: readonly Match[];
  /** So many more are in rows, columns and sheets that are hidden. */
  readonly hidden: number;
}

const escaped = (text: string): string => text.replaceAll(/[$()*+.?[\\\]^{|}]/g, String.raw`\$&`);

const patternOf = ({ text, isCaseMinded, isWhole }: Wanted): RegExp =>
  new RegExp(isWhole ? `^\\s*${escaped(text)}\\s*$` : escaped(text), isCaseMinded ? 'gu' : 'giu');

const isIn = (pattern: RegExp, text: string): boolean => text.search(pattern) >= 0;

function typedIn({ v, t, p }: ICellData): string {
  if (p) return (p.body?.dataStream ?? '').replace(/\r\n$/, '');
  if (t === CellValueType.BOOLEAN) return v ? 'TRUE' : 'FALSE';
  return v === undefined || v === null ? '' : String(v);
}

/** What a cell holds of a text; nothing where it is not in it. */
function heldIn(cell: ICellData, sheet: FWorksheet, at: { row: number; column: number }, pattern: RegExp) {
  const typed = typedIn(cell);
  const shown = (): string => sheet.getRange(at.row, at.column).getDisplayValue();
  if (cell.f || cell.si) {
    const formula = sheet.getRange(at.row, at.column).getFormula();
    const held: Held = 'answer';
    return [typed, shown(), formula].some((each) => isIn(pattern, each)) ? { held, typed } : undefined;
  }
  const format = sheet.getWorkbook().getStyles().getStyleByCell(cell)?.n?.pattern ?? '';
  // the day number of a date is no more typed than seen, and of a percentage nobody sees the fraction
  const isOtherwise =
    typeof cell.v === 'number' &&
    format !== '' &&
    (numfmt.isDateFormat(format) || numfmt.isPercentFormat(format));
  if (!isOtherwise && isIn(pattern, typed))
    return { held: cell.p ? ('looks' as const) : ('typed' as const), typed };
  if (typeof cell.v === 'number' && isIn(pattern, shown())) return { held: 'format' as const, typed };
  return undefined;
}

/** Everything of a sheet that holds the text. */
function* inSheet(grid: Grid, sheet: FWorksheet, pattern: RegExp): Generator<Match> {
  const [sheetId, sheetName] = [sheet.getSheetId(), sheet.getSheetName()];
  const cells = sheet.getSheet().getCellMatrix();
  const spilled = spilledCells(grid, sheetId);
  const rows = Math.max(cells.getLength(), ...Object.keys(spilled).map((row) => Number(row) + 1));
  for (let row = 0; row < rows; row++) {
    const own: Readonly<Record<number, Nullable<ICellData>>> = cells.getRow(row) ?? {};
    const columns = new Set([...Object.keys(own), ...Object.keys(spilled[row] ?? {})].map(Number));
    for (const column of [...columns].sort((a, b) => a - b)) {
      const cell = own[column];
      const at = { row, column };
      const found = cell && heldIn(cell, sheet, at, pattern);
      if (found) yield { sheetId, sheetName, ...at, ...found };
      else if (isIn(pattern, String(spilled[row]?.[column]?.v ?? '')))
        yield { sheetId, sheetName, ...at, held: 'answer', typed: '' };
    }
  }
}

/** Looks for a text in what cells show, in what was typed into them and in their formulas. */
export function search(grid: Grid, wanted: Wanted): Found {
  const workbook = grid.api.getActiveWorkbook();
  if (!workbook || wanted.text === '') return { matches: [], hidden: 0 };
  const pattern = patternOf(wanted);
  const sheets = wanted.isEverywhere ? workbook.getSheets() : [workbook.getActiveSheet()];
  const matches: Match[] = [];
  let hidden = 0;
  for (const sheet of sheets) {
    const inner = sheet.getSheet();
    const isSheetHidden = inner.isSheetHidden() === BooleanNumber.TRUE;
    for (const match of inSheet(grid, sheet, pattern))
      if (isSheetHidden || !inner.getRowVisible(match.row) || !inner.getColVisible(match.column)) hidden++;
      else matches.push(match);
  }
  return { matches, hidden };
}

/** What was typed into a cell, with other words in the place of those that were found. */
export const replaced = ({ typed }: Match, wanted: Wanted, by: string): string =>
  typed.replaceAll(patternOf(wanted), () => by);
