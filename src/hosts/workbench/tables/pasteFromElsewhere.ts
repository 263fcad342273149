import {
  type ICellData,
  isFormulaString,
  type IStyleData,
  type Nullable,
  type ObjectMatrix,
} from '@univerjs/core';
import { type ISheetDiscreteRangeLocation, PREDEFINED_HOOK_NAME_PASTE } from '@univerjs/preset-sheets-core';
import type { Grid } from '../grid/grid';
import { holdsCell } from '../../../engine/gridRange';
import { clipboard, withBrackets } from '../grid/inside';
import { entriesOf, inputRules } from '../grid/rules';
import { tablesOn } from '../grid/tables';
import { RULE_TYPES } from '../book/besideCells';
import { address } from '../../../formula/address';
import { type GridCells, isBlank, type Mutations, NOTHING, sheetOf, written } from './newTableRows';
import { pastedValue, type Target, TEXT_FORMAT } from './pastedCell';
import { undoKey } from '../grid/undoKey';

/** After all hooks of the grid: what they would write is written over. Before them: cells are as they were. */
const [FIRST, LAST] = [-2, 1000];
const { DEFAULT_PASTE, SPECIAL_PASTE_FORMAT, SPECIAL_PASTE_VALUE } = PREDEFINED_HOOK_NAME_PASTE;
const OF_VALUES: readonly string[] = [DEFAULT_PASTE, SPECIAL_PASTE_VALUE];
const NUMBERS: readonly string[] = [RULE_TYPES.decimal, RULE_TYPES.whole];

/** A text that came from elsewhere; undefined where it is more than one, or in several lines. */
export function plainText({ v, p }: ICellData): string | undefined {
  if (!p) return v === undefined || v === null ? '' : String(v);
  const words = p.body?.dataStream.replace(/\r\n$/, '');
  return words === undefined || /[\r\n]/.test(words) ? undefined : words;
}

/** What cells of a sheet hold and look like, for those who type or paste into them, or replace words in them. */
export function targets(grid: Grid, sheetId: string) {
  const sheet = sheetOf(grid, sheetId);
  const present = sheet.getSheet().getCellMatrix();
  const styles = sheet.getWorkbook().getStyles();
  const rules = inputRules(grid, sheetId);
  const areas = rules.flatMap(({ type, ranges }) => (NUMBERS.includes(type) ? ranges : []));
  const lists = rules.flatMap((rule) => {
    const entries = entriesOf(grid, sheetId, rule);
    return entries ? rule.ranges.map((area) => ({ area, entries })) : [];
  });
  const styleAt = (row: number, column: number): Nullable<IStyleData> =>
    styles.getStyleByCell(present.getValue(row, column));
  const target = (row: number, column: number): Target => ({
    format: styleAt(row, column)?.n?.pattern,
    isNumber: areas.some((area) => holdsCell(area, row, column)),
    entries: lists.find(({ area }) => holdsCell(area, row, column))?.entries,
  });
  return {
    styleAt,
    target,
    value(words: string, row: number, column: number): ICellData {
      const style = styleAt(row, column);
      const { v, t, format } = pastedValue(words, target(row, column));
      const look = format === undefined ? style : { ...style, n: { pattern: format } };
      return { v, t, p: null, ...(look ? { s: look } : {}) };
    },
    /** A formula that comes into a cell of texts, which the grid would keep as it is written; undefined where the grid reads it. */
    formula(words: string, row: number, column: number): ICellData | undefined {
      const style = styleAt(row, column);
      return style?.n?.pattern === TEXT_FORMAT
        ? { f: withBrackets(grid, words), v: null, t: null, p: null, s: style }
        : undefined;
    },
  };
}

function cellsOf(
  grid: Grid,
  { subUnitId, range }: ISheetDiscreteRangeLocation,
  content: ObjectMatrix<ICellData>,
) {
  const { styleAt, value, formula } = targets(grid, subUnitId);
  const cells: GridCells = {};
  content.forValue((i, j, cell) => {
    const [row, column] = [range.rows[i], range.cols[j]];
    if (row === undefined || column === undefined || !cell) return;
    const words = plainText(cell);
    const isFormula = words !== undefined && isFormulaString(words);
    // a formula is read by the grid; so are words in several lines, with their looks
    const s = styleAt(row, column);
    const asItIs = s ? { s } : {};
    (cells[row] ??= {})[column] = isFormula
      ? (formula(words, row, column) ?? asItIs)
      : words === undefined
        ? asItIs
        : value(words, row, column);
  });
  return cells;
}

/** What other programs put on the clipboard comes into cells that keep their looks, formats and types. */
function keepLooks(grid: Grid): void {
  clipboard(grid).addClipboardHook({
    id: 'sweeptable-keep-looks',
    priority: LAST,
    onPastePlainText({ subUnitId, range }, words): Mutations {
      const [row, column] = [range.rows[0], range.cols[0]];
      if (row === undefined || column === undefined || /[\r\n]/.test(words) || words.trim() === '')
        return NOTHING;
      const into = targets(grid, subUnitId);
      const cell = isFormulaString(words) ? into.formula(words, row, column) : into.value(words, row, column);
      return cell ? written(grid, subUnitId, { [row]: { [column]: cell } }) : NOTHING;
    },
    onPasteCells(from, to, content, { pasteType }) {
      const isFromElsewhere = !from && OF_VALUES.includes(pasteType);
      return isFromElsewhere ? written(grid, to.subUnitId, cellsOf(grid, to, content)) : NOTHING;
    },
  });
}

const holdsFormula = (cell: Nullable<ICellData>): boolean => Boolean(cell?.f ?? cell?.si);

/** A cell that something is pasted over, and whether a formula goes with it. */
interface Lost {
  readonly cell: string;
  readonly isFormula: boolean;
}

/** Which cells something is pasted over that nobody may have had in mind. */
function pastedOver(
  grid: Grid,
  { subUnitId, range }: ISheetDiscreteRangeLocation,
  content: ObjectMatrix<ICellData>,
): readonly Lost[] {
  const present = sheetOf(grid, subUnitId).getSheet().getCellMatrix();
  const [top, left] = [range.rows[0] ?? 0, range.cols[0] ?? 0];
  const chosen = grid.api.getActiveWorkbook()?.getActiveRange()?.getRange();
  const isOne = !chosen || (chosen.startRow === chosen.endRow && chosen.startColumn === chosen.endColumn);
  const table = tablesOn(grid, subUnitId)
    .map((each) => each.getRange())
    .find(
      ({ startRow, endRow, startColumn, endColumn }) =>
        startRow < top && top <= endRow && startColumn <= left && left <= endColumn,
    );
  /** Where somebody pastes on purpose: what was chosen, or the rows of a table. */
  const meant = table ?? (isOne ? undefined : chosen);
  const found: Lost[] = [];
  content.forValue((i, j, cell) => {
    const [row, column] = [range.rows[i], range.cols[j]];
    if (row === undefined || column === undefined) return;
    const held = present.getValue(row, column);
    if (isBlank(held)) return;
    const isFirst = row === top && column === left;
    const isMeant =
      isFirst ||
      (meant &&
        row <= meant.endRow &&
        column <= meant.endColumn &&
        row >= meant.startRow &&
        column >= meant.startColumn);
    const isFormula = holdsFormula(held) && !holdsFormula(cell);
    if (!isMeant || isFormula) found.push({ cell: address({ row, column }), isFormula });
  });
  return found;
}

function overText(lost: readonly Lost[]): string {
  const [first, last] = [lost[0]?.cell, lost.at(-1)?.cell];
  const formulas = lost.filter(({ isFormula }) => isFormula).length;
  const isOne = lost.length === 1;
  const what = isOne
    ? `${first} held ${formulas > 0 ? 'a formula' : 'something'}: it was pasted over.`
    : `${lost.length} cells from ${first} to ${last} held ${formulas === lost.length ? 'formulas' : 'something'}: they were pasted over${formulas > 0 && formulas < lost.length ? `, with ${formulas === 1 ? 'a formula' : `${formulas} formulas`} among them` : ''}.`;
  return `${what} ${undoKey()} brings ${isOne ? 'it' : 'them'} back.`;
}

/** Says where something was lost by a paste, beyond what was chosen for it. */
function tellLosses(grid: Grid, say: (words: string) => void): void {
  let over: readonly Lost[] = [];
  clipboard(grid).addClipboardHook({
    id: 'sweeptable-tell-losses',
    priority: FIRST,
    onBeforePaste() {
      over = [];
      return true;
    },
    onAfterPaste(success) {
      if (success && over.length > 0) say(overText(over));
      over = [];
    },
  });
  clipboard(grid).addClipboardHook({
    id: 'sweeptable-see-losses',
    // when a table has grown, and before anything is written
    priority: 0,
    onPastePlainText({ subUnitId, range }, words) {
      const [row, column] = [range.rows[0] ?? 0, range.cols[0] ?? 0];
      const held = sheetOf(grid, subUnitId).getSheet().getCellMatrix().getValue(row, column);
      const isFormula = holdsFormula(held) && !isFormulaString(words);
      // nothing hears of it when a plain text has arrived
      if (isFormula) say(overText([{ cell: address({ row, column }), isFormula }]));
      return NOTHING;
    },
    onPasteCells(_from, to, content, { pasteType }) {
      if (pasteType !== SPECIAL_PASTE_FORMAT) over = pastedOver(grid, to, content);
      return NOTHING;
    },
  });
}

export function pasteFromElsewhere(grid: Grid, say: (words: string) => void): void {
  keepLooks(grid);
  tellLosses(grid, say);
}
