import type { Area } from '../../formula/area';
import { address, type Place } from '../../formula/address';
import { addressParts } from '../../formula/sheetPlace';
import { errorFromText } from '../../formula/errors';
import { at } from '../../exposure/core/at';
import { type Block, type CellWrite, isSameBlock } from '../../pane/balance/block';
import { regionAround, tableAt } from '../../pane/balance/region';
import type { Outcome } from '../../pane/host';
import { changedSince, NO_TABLE, NOT_WRITTEN, written } from '../../pane/sentences';
import { TEXT } from './cells';
import { LayFailure, WHEN_READY } from './lay';
import { excelRange } from './ranges';
import { AREA, areaOfRange } from './usedCells';

/** More cells than this are no table of points and heads. */
const MOST_CELLS = 10_000;
const TOO_MANY = {
  refused: 'More cells are selected than a table of points and heads can have. Select a cell of the table, or its cells alone.', // prettier-ignore
} as const;

const inLines = (lines: readonly (readonly unknown[])[], row: number, column: number): unknown =>
  lines[row]?.[column];
const isFormula = (formula: unknown): boolean => typeof formula === 'string' && formula.startsWith('=');

/** The cells of a range, whose values and formulas are loaded. */
const blockOf = (sheet: string, { row, column }: Area, range: Excel.Range): Block => ({
  sheet,
  row,
  column,
  cells: range.values.map((line: unknown[], r) =>
    line.map((value, c) => ({
      value: errorFromText(value),
      isFormula: isFormula(inLines(range.formulas, r, c)),
    })),
  ),
});

/** The cells to read: the table around what is selected, all that is selected, or the filled cells around the one that is. */
async function areaToRead(
  context: Excel.RequestContext,
  sheet: Excel.Worksheet,
  own: Area,
): Promise<Area | typeof TOO_MANY | undefined> {
  const tables = sheet.tables.load('items/name');
  const used = sheet.getUsedRangeOrNullObject(true).load(AREA);
  await context.sync();
  const ranges = tables.items.map((table) => table.getRange().load(AREA));
  if (ranges.length > 0) await context.sync();
  const table = tableAt(ranges.map(areaOfRange), own);
  if (table) return table;
  if (own.rows * own.columns > 1) return own;
  if (used.isNullObject) return undefined;
  const { row, column, rows, columns } = areaOfRange(used);
  if (rows * columns > MOST_CELLS) return TOO_MANY;
  used.load('values');
  await context.sync();
  return regionAround(own, (r, c) => {
    const value = inLines(used.values, r - row, c - column);
    return value !== undefined && value !== '' && r < row + rows && c < column + columns;
  });
}

/** Reads the table that is selected. */
export const readBlock = (excel: typeof Excel): Promise<Block | { readonly refused: string }> =>
  excel.run(WHEN_READY, async (context) => {
    const { workbook } = context;
    const selected = workbook.getSelectedRange().load(`address,${AREA}`);
    await context.sync();
    const { sheet: name } = addressParts(selected.address);
    const sheet = workbook.worksheets.getItem(name);
    const area = await areaToRead(context, sheet, areaOfRange(selected));
    if (!area) return NO_TABLE;
    if ('refused' in area) return area;
    if (area.rows * area.columns > MOST_CELLS) return TOO_MANY;
    const range = excelRange(sheet, area).load('values,formulas');
    await context.sync();
    return blockOf(name, area, range);
  });

/** A cell as it was before it was written, and as Excel has it since. */
interface Written {
  readonly row: number;
  readonly column: number;
  readonly before: { readonly formula: unknown; readonly format: unknown };
  readonly after: unknown;
}

const NOT_CHANGED = 'Nothing was changed.';
const HALF = 'Some of the cells may be written, the others are as before: look at them.';

const cellAt = (sheet: Excel.Worksheet, { row, column }: Place): Excel.Range =>
  excelRange(sheet, { row, column, rows: 1, columns: 1 });

function putBack(sheet: Excel.Worksheet, cells: readonly Pick<Written, 'row' | 'column' | 'before'>[]): void {
  for (const { before, ...place } of cells) {
    const cell = cellAt(sheet, place);
    cell.numberFormat = [[before.format]];
    cell.formulas = [[before.formula]];
  }
}

/** Puts back what was written, where all of it still stands. */
const takeBack = (excel: typeof Excel, sheetName: string, cells: readonly Written[]): Promise<Outcome> =>
  excel.run(WHEN_READY, async (context) => {
    const sheet = context.workbook.worksheets.getItemOrNullObject(sheetName).load('name');
    await context.sync();
    if (sheet.isNullObject) return NOT_WRITTEN.gone(sheetName);
    const now = cells.map((place) => cellAt(sheet, place).load('formulas'));
    await context.sync();
    if (cells.some(({ after }, i) => inLines(at(now, i).formulas, 0, 0) !== after))
      return changedSince(sheetName);
    putBack(sheet, cells);
    await context.sync();
    return { done: `${cells.length} cells on “${sheetName}” are as before.` };
  });

/**
 * Writes into a block that was read, where all its cells still are as they were. A text is written into a cell that takes all
 * as text, or Excel would make a date of 1/2. Where Excel breaks off, what was written is put back.
 */
export const writeCells = (
  excel: typeof Excel,
  block: Block,
  writes: readonly CellWrite[],
  told: (work: Promise<Outcome>, kept: string) => Promise<Outcome>,
): Promise<Outcome> =>
  excel.run(WHEN_READY, async (context) => {
    const { sheet: name, row, column } = block;
    const sheet = context.workbook.worksheets.getItemOrNullObject(name).load('name');
    await context.sync();
    if (sheet.isNullObject) return NOT_WRITTEN.gone(name);
    const area = { row, column, rows: block.cells.length, columns: at(block.cells, 0).length };
    const range = excelRange(sheet, area).load('values,formulas,numberFormat');
    await context.sync();
    if (!isSameBlock(block, blockOf(name, area, range))) return NOT_WRITTEN.changed(name);
    const cells = writes.map((write) => ({
      row: row + write.row,
      column: column + write.column,
      value: write.value,
      before: {
        formula: inLines(range.formulas, write.row, write.column),
        format: inLines(range.numberFormat, write.row, write.column),
      },
    }));
    const asked = cells.map(({ value, before, ...place }) => {
      const cell = cellAt(sheet, place);
      if (typeof value === 'string' && value !== '' && before.format !== TEXT) cell.numberFormat = [[TEXT]];
      cell.values = [[value]];
      return cell.load('formulas');
    });
    try {
      await context.sync();
    } catch (error) {
      const restored = await excel
        .run(WHEN_READY, async (again) => {
          putBack(again.workbook.worksheets.getItem(name), cells);
          await again.sync();
          return true;
        })
        .catch(() => false);
      throw new LayFailure(restored ? NOT_CHANGED : HALF, error);
    }
    const done: Written[] = cells.map((cell, i) => ({
      ...cell,
      after: inLines(at(asked, i).formulas, 0, 0),
    }));
    const [first, last] = [at(cells, 0), at(cells, cells.length - 1)];
    return {
      done: written(`${address(first)} to ${address(last)}`, name),
      takeBack: () => told(takeBack(excel, name, done), `Cells on “${name}” may be as before or as written: look at them.`), // prettier-ignore
    };
  });
