import type { Place } from '../../formula/address';
import type { Area } from '../../formula/area';
import { saysTheSame } from '../../formula/same';
import { shifter } from '../../formula/shift';
import type { Outcome } from '../../pane/host';
import { cellHolds, formulaIn } from '../../pane/sentences';
import { TEXT } from './cells';
import { isFreeFor } from './columns';
import { holds } from './formulaBlocks';
import { LayFailure, NOT_KNOWN_YET, WHEN_READY } from './lay';
import { excelRange } from './ranges';
import { AREA, areaOfRange } from './usedCells';

export const NOT_PUT = 'Nothing was put into the cell.';
const MAY_BE_PUT =
  'The formula may be in the cell, and in others of its table’s column: look at them, and undo what you do not want.';

/** A table on the cell's sheet. */
interface Table {
  readonly name: string;
  readonly area: Area;
  /** Without its headings and totals. */
  readonly body: Area;
}

/** The column of a table around a cell, row by row. */
interface Column {
  readonly table: string;
  readonly range: Excel.Range;
  /** The cell's row in it. */
  readonly at: number;
}

async function areasOf(
  context: Excel.RequestContext,
  { items }: Excel.TableCollection,
): Promise<readonly Table[]> {
  if (items.length === 0) return [];
  const asked = items.map((table) => ({
    name: table.name,
    area: table.getRange().load(AREA),
    body: table.getDataBodyRange().load(AREA),
  }));
  await context.sync();
  return asked.map(({ name, area, body }) => ({ name, area: areaOfRange(area), body: areaOfRange(body) }));
}

/**
 * Whether a cell lies right below a table, or right beside it: unless a person has turned that off, Excel "includes new rows and columns in
 * table", which fills the new row or heads the new column (OfficeDev/office-js #3013, #3191). Nothing tells whether it is on.
 */
const touches = ({ row, column, rows, columns }: Area, cell: Place): boolean =>
  holds({ row: row + rows, column, rows: 1, columns }, cell) ||
  holds({ row, column: column + columns, rows, columns: 1 }, cell);

async function columnOf(
  context: Excel.RequestContext,
  cell: Excel.Range,
  { name, body }: Table,
): Promise<Column> {
  const range = excelRange(cell.worksheet, { ...body, column: cell.columnIndex, columns: 1 }).load(
    'formulas',
  );
  await context.sync();
  return { table: name, range, at: cell.rowIndex - body.row };
}

const heldIn = ({ range }: Column): unknown[] => range.formulas.map((line: unknown[]) => line[0]);

/** Empties the rows again that Excel has filled; one that somebody else wrote into meanwhile is not among them. */
async function emptyFilled(
  context: Excel.RequestContext,
  { table, range, at }: Column,
  before: readonly unknown[],
  formula: string,
): Promise<void> {
  const shift = shifter(formula);
  const filled = [...range.formulas.entries()].filter(
    ([row, [now]]: [number, unknown[]]) =>
      row !== at &&
      before[row] === '' &&
      typeof now === 'string' &&
      saysTheSame(shift(row - at, 0), now, table),
  );
  if (filled.length === 0) return;
  for (const [row] of filled) range.getCell(row, 0).formulas = [['']];
  await context.sync();
}

/** Writes the formula; in a cell preset as text it would stay a text. Where Excel breaks off, all is put back that can be. */
async function write(
  context: Excel.RequestContext,
  cell: Excel.Range,
  column: Column | undefined,
  formula: string,
): Promise<void> {
  const isText = cell.numberFormat[0]?.[0] === TEXT;
  if (isText) cell.numberFormat = [['General']];
  const before = column ? heldIn(column) : [];
  cell.formulas = [[formula]];
  cell.load('formulas,values,text');
  column?.range.load('formulas');
  try {
    await context.sync();
    if (column) await emptyFilled(context, column, before, formula);
  } catch (error) {
    throw new LayFailure(await keptAfter(context, cell, column, isText).catch(() => MAY_BE_PUT), error);
  }
}

async function keptAfter(
  context: Excel.RequestContext,
  cell: Excel.Range,
  column: Column | undefined,
  isText: boolean,
): Promise<string> {
  cell.load('formulas');
  await context.sync();
  if (cell.formulas[0]?.[0] !== '') return MAY_BE_PUT;
  if (isText) cell.numberFormat = [[TEXT]];
  await context.sync();
  return NOT_PUT;
}

/** Puts a formula only where nothing is lost: into one cell that holds nothing, and whose neighbours Excel would not fill with it. */
export const putFormula = (excel: typeof Excel, formula: string): Promise<Outcome> =>
  excel.run(WHEN_READY, async (context) => {
    const cell = context.workbook.getSelectedRange().load('address,cellCount');
    await context.sync();
    if (cell.cellCount !== 1)
      return { refused: 'More than one cell is selected. Nothing was changed. Select a single empty cell.' };
    const at = cell.address.slice(cell.address.lastIndexOf('!') + 1);
    cell.load('formulas,numberFormat,valueTypes,rowIndex,columnIndex');
    const { tables } = cell.worksheet;
    tables.load('items/name');
    await context.sync();
    // A cell that another's list spills into has no formula, but holds something.
    if (cell.formulas[0]?.[0] !== '' || cell.valueTypes[0]?.[0] !== 'Empty') return cellHolds(at);
    const place = { row: cell.rowIndex, column: cell.columnIndex };
    const areas = await areasOf(context, tables);
    const touched = areas.find(({ area }) => touches(area, place));
    if (touched)
      return {
        refused: `${at} touches the table “${touched.name}”, and Excel may take it into the table and fill what lies beside it. Nothing was changed. Select a cell that touches no table.`,
      };
    const around = areas.find(({ body }) => holds(body, place));
    const column = around && (await columnOf(context, cell, around));
    if (column && !isFreeFor(formula, column.at, heldIn(column), column.table))
      return {
        refused: `${at} is in a table, and Excel may fill it into the other rows of its table’s column, over what they hold. Nothing was changed. Type the formula there yourself, or select a cell outside of the table.`,
      };
    await write(context, cell, column, formula);
    const held = String(cell.formulas[0]?.[0]);
    const isSame = saysTheSame(held, formula, column?.table);
    const known = ![cell.values, cell.text].some((lines: unknown[][]) => lines[0]?.[0] === '#NAME?');
    return {
      done: [
        formulaIn(at),
        ...(isSame ? [] : [`Excel made ${held} of it: look at it before you trust it.`]),
        ...(known ? [] : [NOT_KNOWN_YET]),
      ].join(' '),
    };
  });
