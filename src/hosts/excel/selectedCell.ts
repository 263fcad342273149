import type { CellRows } from '../../explain/explain';
import { errorFromText } from '../../formula/errors';
import { addressParts } from '../../formula/sheetPlace';
import { referencesIn } from '../../formula/tree';
import { type NamedCells, parseReference, type Reference, type TableColumns } from '../../formula/reference';
import type { SelectedCell } from '../../pane/host';
import { WHEN_READY } from './lay';
import { codeOf } from './refusals';

/** More cells than this are not fetched only to explain the first of them. */
const MOST_CELLS = 10_000;

/** Where a formula stands, and what there is in the workbook that it may speak of. */
interface Surroundings {
  readonly sheet: string;
  readonly row: number;
  /** The table around the cell, which a formula in it need not name. */
  readonly ownTable: string | undefined;
  readonly has: (kind: 'sheet' | 'table', name: string) => boolean;
}

/** Asks for the values behind a reference; gives how to read them once the answer is there. */
function ask(
  workbook: Excel.Workbook,
  reference: Reference,
  around: Surroundings,
): (() => CellRows | undefined) | undefined {
  if (reference.kind === 'table') return askTable(workbook, reference, around);
  if (reference.kind === 'name') return askName(workbook, reference, around);
  const { sheet = around.sheet, row, column, rows, columns } = reference;
  if (!around.has('sheet', sheet) || rows * columns > MOST_CELLS) return undefined;
  const range = workbook.worksheets
    .getItem(sheet)
    .getRangeByIndexes(row, column, rows, columns)
    .load('values');
  return () => range.values as CellRows;
}

/** A name holds for the sheet that is put in front, or else for the formula's own before it does for the workbook. */
function askName(
  { worksheets, names }: Excel.Workbook,
  { name, sheet }: NamedCells,
  around: Surroundings,
): (() => CellRows | undefined) | undefined {
  if (sheet !== undefined && !around.has('sheet', sheet)) return undefined;
  const ofSheet = worksheets.getItem(sheet ?? around.sheet).names;
  const asked = [ofSheet, ...(sheet === undefined ? [names] : [])].map((all) => {
    const item = all.getItemOrNullObject(name).load('name');
    return { item, range: item.getRangeOrNullObject().load('values') };
  });
  return () => {
    const range = asked.find(({ item }) => !item.isNullObject)?.range;
    return range === undefined || range.isNullObject ? undefined : (range.values as CellRows);
  };
}

function askTable(
  workbook: Excel.Workbook,
  { table = '', first, last, rows }: TableColumns,
  around: Surroundings,
): (() => CellRows | undefined) | undefined {
  const name = table === '' ? around.ownTable : table;
  if (name === undefined || !around.has('table', name)) return undefined;
  const found = workbook.tables.getItem(name);
  const headings = found.getHeaderRowRange().load('values');
  const body = found.getDataBodyRange().load('values,rowIndex');
  return () => {
    const titles = (headings.values[0] ?? []).map((title) => String(title).toLowerCase());
    const [from, to] = [first, last].map((column) => titles.indexOf(column.toLowerCase())) as [
      number,
      number,
    ];
    const lines = body.values as CellRows;
    const own = lines[around.row - body.rowIndex];
    if (from < 0 || to < from || (rows === 'this' && own === undefined)) return undefined;
    return (rows === 'this' ? [own as readonly unknown[]] : lines).map((line) => line.slice(from, to + 1));
  };
}

const namesOf = (items: readonly { name: string }[]): ReadonlySet<string> =>
  new Set(items.map(({ name }) => name.toLowerCase()));

/** The active cell with the values of all that its formula speaks of, in two requests. */
const read = (excel: typeof Excel): Promise<SelectedCell> =>
  excel.run(async (context) => {
    const { workbook } = context;
    const cell = workbook.getActiveCell().load('address,formulas,text,rowIndex');
    const ownTables = cell.getTables(false).load('items/name');
    const { worksheets, tables } = workbook;
    for (const collection of [worksheets, tables]) collection.load('items/name');
    await context.sync();

    const { sheet, cell: address } = addressParts(cell.address);
    const given: unknown = cell.formulas[0]?.[0];
    const formula = typeof given === 'string' && given.startsWith('=') ? given : '';
    const known = { sheet: namesOf(worksheets.items), table: namesOf(tables.items) };
    const around: Surroundings = {
      sheet,
      row: cell.rowIndex,
      ownTable: ownTables.items[0]?.name,
      has: (kind, name) => known[kind].has(name.toLowerCase()),
    };
    const asked = referencesIn(formula).flatMap((text) => {
      const reference = parseReference(text);
      const answer = reference && ask(workbook, reference, around);
      return answer ? [[text, answer] as const] : [];
    });
    if (asked.length > 0) await context.sync();

    const values = new Map(
      asked.map(([text, answer]) => [text, answer()?.map((line) => line.map(errorFromText))] as const),
    );
    return {
      address,
      formula,
      shown: String(cell.text[0]?.[0] ?? ''),
      look: (reference) => values.get(reference),
    };
  });

/** The values behind references, as a formula on the sheet in view would write them; undefined for what is not there. */
export const lookUp = (
  excel: typeof Excel,
  references: readonly string[],
): Promise<(CellRows | undefined)[]> =>
  excel.run(WHEN_READY, async (context) => {
    const { workbook } = context;
    const { worksheets, tables } = workbook;
    const sheet = worksheets.getActiveWorksheet().load('name');
    for (const collection of [worksheets, tables]) collection.load('items/name');
    await context.sync();
    const known = { sheet: namesOf(worksheets.items), table: namesOf(tables.items) };
    const around: Surroundings = {
      sheet: sheet.name,
      row: 0,
      ownTable: undefined,
      has: (kind, name) => known[kind].has(name.toLowerCase()),
    };
    const asked = references.map((text) => {
      const reference = parseReference(text);
      return reference && ask(workbook, reference, around);
    });
    if (asked.some(Boolean)) await context.sync();
    return asked.map((answer) => answer?.()?.map((line) => line.map(errorFromText)));
  });

/** While a cell is being typed in, Excel answers nothing. */
const isEdited = (error: unknown): boolean => codeOf(error) === 'InvalidOperationInCellEditMode';
/** No cell is selected: a chart is, or the sheet in view has none, or is just being deleted. */
const NO_CELL = new Set(['InvalidSelection', 'InvalidOperation', 'UnsupportedSheet', 'ItemNotFound']);

/** The active cell; undefined where there is none; 'edited' while Excel cannot tell. */
export async function selectedCell(excel: typeof Excel): Promise<SelectedCell | 'edited' | undefined> {
  try {
    return await read(excel);
  } catch (error) {
    if (isEdited(error)) return 'edited';
    if (NO_CELL.has(codeOf(error))) return undefined;
    throw error;
  }
}
