import type { BookSheet } from '../../src/book/book';
import { usedArea } from '../../src/book/cells';
import type { EngineValue } from '../../src/engine/headless';
import { address } from '../../src/formula/address';
import { isCellError } from '../../src/formula/errors';
import { makePlan } from '../../src/sheets/makePlan';
import type { Template } from '../../src/sheets/template';
import type { Held, TableHere } from '../../src/sheets/links/tableHere';
import { openedBook } from './openedBook';
import { typedData } from './typedData';

/** A sheet to insert, in this order: with its demo, or empty. */
export interface Insert {
  readonly template: Template;
  readonly filled?: boolean;
}

/** The plans of sheets that are inserted into one workbook, each knowing of those before it. */
function plansOf(inserts: readonly Insert[]): BookSheet[] {
  const plans: BookSheet[] = [];
  for (const { template, filled = true } of inserts) {
    const tables = plans.flatMap((plan) =>
      plan.tables.map(({ name, columns }) => ({ name, columns: columns.map((column) => column.name) })),
    );
    plans.push(
      makePlan(template, { filled, sheets: plans.map(({ name }) => name), tables, names: [] }).sheet,
    );
  }
  return plans;
}

/** Sheets side by side in one workbook, as somebody would insert them. */
export async function together(inserts: readonly Insert[]) {
  const plans = plansOf(inserts);
  const book = await openedBook(plans);
  await book.calculate();
  const valuesOf = (plan: BookSheet): EngineValue[][] => {
    const { rows, columns } = usedArea(plan);
    return book.read(plan.name, `A1:${address({ row: rows - 1, column: columns - 1 })}`);
  };
  /** A column of a table, by the name that it has in this workbook. */
  const column = (table: string, name: string): EngineValue[] => {
    for (const plan of plans) {
      const found = plan.tables.find((each) => each.name === table);
      if (!found) continue;
      const at = found.columns.findIndex((each) => each.name === name);
      if (at < 0) throw new Error(`There is no column ${name} in ${table}.`);
      return valuesOf(plan)
        .slice(found.area.row + 1, found.area.row + found.area.rows)
        .map((row) => row[found.area.column + at] ?? null);
    }
    throw new Error(`There is no table ${table}.`);
  };
  /** Types into a row of a table, counted from 1. */
  const type = async (table: string, name: string, row: number, value: string | number | null) => {
    const plan = plans.find((each) => each.tables.some((one) => one.name === table));
    const found = plan?.tables.find((each) => each.name === table);
    if (!plan || !found) throw new Error(`There is no table ${table}.`);
    const at = found.columns.findIndex((each) => each.name === name);
    book.workbook
      .getSheetByName(plan.name)
      ?.getRange(found.area.row + row, found.area.column + at)
      .setValue(typedData({ value }));
    await book.calculate();
  };
  /** Writes into a cell of a sheet. */
  const write = (sheet: string, row: number, at: number, cell: Held) => {
    const { formula, value } = cell;
    book.workbook.getSheetByName(sheet)?.getRange(row, at).setValue(
      typedData({ value: typeof value === 'boolean' ? String(value) : value, ...(formula === undefined ? {} : { formula }) }),
    ); // prettier-ignore
  };
  return {
    plans,
    column,
    type,
    write,
    calculate: () => book.calculate(),
    /** The tables as they stand, for whoever would link them. */
    tables: (): TableHere[] =>
      plans.flatMap((plan) => {
        const values = valuesOf(plan);
        const sheet = book.workbook.getSheetByName(plan.name);
        return plan.tables.map(({ name, area, columns }) => ({
          name,
          sheet: plan.name,
          at: area,
          headings: columns.map((each) => each.name),
          rows: Array.from({ length: area.rows - 1 }, (_, r) =>
            columns.map((_column, c): Held => {
              const [row, of] = [area.row + 1 + r, area.column + c];
              const formula = sheet?.getRange(row, of).getFormula();
              const value = values[row]?.[of] ?? null;
              return {
                ...(formula ? { formula } : {}),
                value: isCellError(value) ? value.error : value,
              };
            }),
          ),
        }));
      }),
    /** All that stands in a sheet, by its place in the order. */
    values: (index: number): EngineValue[][] => valuesOf(plans[index] as BookSheet),
    /** Cells that show an error. */
    errors: () =>
      plans.flatMap((plan) =>
        valuesOf(plan).flatMap((row, r) =>
          row.flatMap((value, c) =>
            isCellError(value) ? [`${plan.name} ${r + 1},${c + 1}: ${value.error}`] : [],
          ),
        ),
      ),
    dispose: () => book.dispose(),
  };
}
