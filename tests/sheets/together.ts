import type { BookSheet } from '../../src/book/book';
import { usedArea } from '../../src/book/cells';
import type { EngineValue } from '../../src/engine/headless';
import { address, type Place } from '../../src/formula/address';
import { isCellError } from '../../src/formula/errors';
import { layout } from '../../src/sheets/layout';
import { makePlan } from '../../src/sheets/makePlan';
import type { Template } from '../../src/sheets/template';
import { TEMPLATES } from '../../src/sheets/templates';
import { type FormHere, formHere, type Here, sheetsWithForms } from '../../src/sheets/links/formHere';
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

/** Where everything of a sheet lies when one of its columns is gone. */
function withoutColumn(plan: BookSheet, gone: number): BookSheet {
  const left = (column: number): number => (column > gone ? column - 1 : column);
  return {
    ...plan,
    cells: plan.cells
      .filter(({ column }) => column !== gone)
      .map((cell) => ({ ...cell, column: left(cell.column) })),
    tables: plan.tables.map((table) => {
      const { column } = table.area;
      const columns = table.columns.filter((_, i) => column + i !== gone);
      return { ...table, columns, area: { ...table.area, column: left(column), columns: columns.length } };
    }),
  };
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
  const enter = (table: string, name: string, row: number, value: string | number | null): void => {
    const plan = plans.find((each) => each.tables.some((one) => one.name === table));
    const found = plan?.tables.find((each) => each.name === table);
    if (!plan || !found) throw new Error(`There is no table ${table}.`);
    const at = found.columns.findIndex((each) => each.name === name);
    book.workbook
      .getSheetByName(plan.name)
      ?.getRange(found.area.row + row, found.area.column + at)
      .setValue(typedData({ value }));
  };
  /** Types into a row of a table, counted from 1. */
  const type = async (...typed: Parameters<typeof enter>) => {
    enter(...typed);
    await book.calculate();
  };
  /** Types into several cells, and has what comes of all of them calculated once. */
  const typeAll = async (all: readonly Parameters<typeof enter>[]) => {
    for (const typed of all) enter(...typed);
    await book.calculate();
  };
  /** Writes into a cell of a sheet. */
  const write = (sheet: string, row: number, at: number, cell: Held) => {
    const { formula, value } = cell;
    book.workbook.getSheetByName(sheet)?.getRange(row, at).setValue(
      typedData({ value: typeof value === 'boolean' ? String(value) : value, ...(formula === undefined ? {} : { formula }) }),
    ); // prettier-ignore
  };
  /** The form cells of a sheet by their ids, where it stands in the order: what they show, what stands beside, and typing. */
  const form = (index: number, template: Template) => {
    const plan = plans[index] as BookSheet;
    const placeOf = (id: string): Place => {
      const found = layout(template).cells.get(id)?.place;
      if (!found) throw new Error(`There is no cell ${id}.`);
      return found;
    };
    const shown = (id: string, right: number): EngineValue => {
      const { row, column: left } = placeOf(id);
      return book.read(plan.name, address({ row, column: left + right }))[0]?.[0] ?? null;
    };
    return {
      cell: (id: string) => shown(id, 0),
      // A form has its words two columns right of the value.
      words: (id: string) => shown(id, 2),
      planned: (id: string) => {
        const { row, column: left } = placeOf(id);
        return plan.cells.find((cell) => cell.row === row && cell.column === left);
      },
      type: async (id: string, value: string | number | null) => {
        const { row, column: left } = placeOf(id);
        write(plan.name, row, left, { value });
        await book.calculate();
      },
    };
  };
  const tables = (): TableHere[] =>
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
    });
  const formOn = (asked: Omit<FormHere, 'cells'>): FormHere[] => {
    const plan = plans.find(({ name }) => name === asked.sheet);
    if (!plan) return [];
    const sheet = book.workbook.getSheetByName(plan.name);
    const rows = valuesOf(plan).map((line, r) =>
      line.map((value, c): Held => {
        const formula = sheet?.getRange(r, c).getFormula();
        return { ...(formula ? { formula } : {}), value: isCellError(value) ? value.error : value };
      }),
    );
    return [formHere(asked, { at: { row: 0, column: 0 }, rows })];
  };
  return {
    plans,
    column,
    form,
    type,
    typeAll,
    write,
    /** Deletes the column of a sheet in which a table's column stands, as somebody does who has it in view. Gives how to undo it. */
    deleteColumn: async (table: string, name: string) => {
      const index = plans.findIndex((each) => each.tables.some((one) => one.name === table));
      const plan = plans[index];
      const found = plan?.tables.find((each) => each.name === table);
      const at = found?.columns.findIndex((each) => each.name === name) ?? -1;
      const sheet = plan && book.workbook.getSheetByName(plan.name);
      if (!found || !sheet || at < 0) throw new Error(`There is no column ${name} in ${table}.`);
      book.workbook.setActiveSheet(sheet);
      sheet.deleteColumns(found.area.column + at, 1);
      plans[index] = withoutColumn(plan, found.area.column + at);
      await book.calculate();
      return async () => {
        await book.workbook.undo();
        plans[index] = plan;
        await book.calculate();
      };
    },
    /** Gives a sheet another name, by which this book knows it from then on. */
    rename: (name: string, other: string) => {
      const index = plans.findIndex((each) => each.name === name);
      book.workbook.getSheetByName(name)?.setName(other);
      plans[index] = { ...(plans[index] as BookSheet), name: other };
    },
    undo: async () => {
      await book.workbook.undo();
      await book.calculate();
    },
    /** The sheets as they stand, with what was typed and what formulas give, as a file holds them. */
    asStands: (): BookSheet[] =>
      plans.map((plan) => {
        const values = valuesOf(plan);
        return { ...plan, cells: plan.cells.map((cell) => ({ ...cell, value: values[cell.row]?.[cell.column] ?? null })) };
      }), // prettier-ignore
    calculate: () => book.calculate(),
    tables,
    /** The tables and forms as they stand, for whoever would link them. */
    here: (): Here => {
      const found = tables();
      return { tables: found, forms: sheetsWithForms(TEMPLATES, found).flatMap(formOn) };
    },
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
