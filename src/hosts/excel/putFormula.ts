import { saysTheSame } from '../../formula/same';
import type { Outcome } from '../../pane/host';
import { cellHolds, formulaIn } from '../../pane/sentences';
import { TEXT } from './cells';
import { isFreeFor } from './columns';
import { LayFailure, NOT_KNOWN_YET, WHEN_READY } from './lay';
import { excelRange } from './ranges';
import { AREA, areaOfRange } from './usedCells';

export const NOT_PUT = 'Nothing was put into the cell.';
const MAY_BE_PUT =
  'The formula may be in the cell, and in others of its table’s column: look at them, and undo what you do not want.';

/** The column of a table around a cell, row by row; nothing outside of tables. */
interface Column {
  readonly table: string;
  readonly range: Excel.Range;
  /** The cell's row in it. */
  readonly at: number;
}

async function columnOf(
  context: Excel.RequestContext,
  cell: Excel.Range,
  tables: Excel.TableScopedCollection,
): Promise<Column | undefined> {
  const [table] = tables.items;
  if (!table) return undefined;
  const body = context.workbook.tables.getItem(table.name).getDataBodyRange().load(AREA);
  await context.sync();
  const area = areaOfRange(body);
  const at = cell.rowIndex - area.row;
  if (at < 0 || at >= area.rows) return undefined;
  const range = excelRange(cell.worksheet, { ...area, column: cell.columnIndex, columns: 1 }).load(
    'formulas',
  );
  await context.sync();
  return { table: table.name, range, at };
}

const heldIn = ({ range }: Column): unknown[] => range.formulas.map((line: unknown[]) => line[0]);

/** Empties the rows again that Excel may have filled; where it has not they stay as they are. */
function emptyOthers({ range, at }: Column, held: readonly unknown[]): void {
  for (const [row, content] of held.entries())
    if (row !== at && content === '') range.getCell(row, 0).formulas = [['']];
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
  const held = column ? heldIn(column) : [];
  cell.formulas = [[formula]];
  if (column) emptyOthers(column, held);
  cell.load('formulas,values,text');
  try {
    await context.sync();
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
    const tables = cell.getTables(false).load('items/name');
    await context.sync();
    // A cell that another's list spills into has no formula, but holds something.
    if (cell.formulas[0]?.[0] !== '' || cell.valueTypes[0]?.[0] !== 'Empty') return cellHolds(at);
    const column = await columnOf(context, cell, tables);
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
