import { type ICellData, LocaleType } from '@univerjs/core';
import type { BookSheet } from '../../../src/book/book';
import { usedArea } from '../../../src/book/cells';
import { headless, type EngineValue } from '../../../src/engine/headless';
import { address, type Place } from '../../../src/formula/address';
import { layout, tableTop } from '../../../src/sheets/layout';
import { makePlan } from '../../../src/sheets/makePlan';
import { settledForRow } from '../../../src/sheets/settle';
import type { Template } from '../../../src/sheets/template';
import { typedData } from '../live';
import type { Slip } from './mishaps';

/** What somebody does to a sheet: what is typed where. */
export type Change = ReadonlyMap<Place, Slip>;
/** All values of a sheet, by row and column; beyond its columns, what its tables warn of. */
export type Seen = (place: Place) => EngineValue;

function stored(value: Slip): ICellData {
  return typeof value === 'string' && value.startsWith('=')
    ? typedData({ formula: value, value: null })
    : typedData({ value });
}

/** Whether a row of a table is marked, in the first column right of the sheet that no other condition has. */
export function warningCells(template: Template): { readonly place: Place; readonly formula: string }[] {
  const map = layout(template);
  let column = map.columns;
  return template.blocks.flatMap((block) => {
    if (block.kind !== 'table') return [];
    return block.columns.flatMap(({ warning }) => {
      if (!warning) return [];
      column++;
      return block.rows.map((_, r) => {
        const row = tableTop(block) + 1 + r;
        return { place: { row, column }, formula: settledForRow(warning.when, map, block, row) };
      });
    });
  });
}

/**
 * One sheet several times in a workbook, so that several changes are calculated at once: the engine takes a tenth of a second to
 * begin, however little there is to do.
 */
export async function copiesOf(template: Template, count: number) {
  const plans: BookSheet[] = [];
  while (plans.length < count) {
    const sheets = plans.map(({ name }) => name);
    const tables = plans.flatMap((plan) => plan.tables.map(({ name }) => ({ name, columns: [] })));
    plans.push(makePlan(template, { filled: true, sheets, tables, names: [] }).sheet);
  }
  const warnings = warningCells(template);
  const { rows, columns: used } = usedArea(plans[0] as BookSheet);
  const columns = Math.max(used, ...warnings.map(({ place }) => place.column + 1));
  const dataOf = (plan: BookSheet) => {
    const cellData: Record<number, Record<number, ICellData>> = {};
    for (const cell of plan.cells) (cellData[cell.row] ??= {})[cell.column] = typedData(cell);
    for (const { place, formula } of warnings) (cellData[place.row] ??= {})[place.column] = { f: formula };
    return cellData;
  };
  const book = headless({
    id: 'book',
    name: template.name,
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: plans.map(({ name }) => name),
    sheets: Object.fromEntries(
      plans.map((plan) => [
        plan.name,
        { id: plan.name, name: plan.name, rowCount: rows, columnCount: columns, cellData: dataOf(plan) },
      ]),
    ),
  });
  for (const plan of plans)
    for (const { name, area } of plan.tables)
      await book.workbook.addTable(
        plan.name,
        name,
        {
          startRow: area.row,
          startColumn: area.column,
          endRow: area.row + area.rows - 1,
          endColumn: area.column + area.columns - 1,
        },
        name,
      );
  const all = `A1:${address({ row: rows - 1, column: columns - 1 })}`;
  const type = ({ name }: BookSheet, { row, column }: Place, data: ICellData) =>
    book.workbook.getSheetByName(name)?.getRange(row, column).setValue(data);

  /** At most as many changes as there are copies. */
  async function together(changes: readonly Change[]): Promise<Seen[]> {
    for (const [i, change] of changes.entries())
      for (const [place, slip] of change) type(plans[i] as BookSheet, place, stored(slip));
    await book.calculate();
    const seen = changes.map((_, i): Seen => {
      const values = book.read((plans[i] as BookSheet).name, all);
      return ({ row, column }) => values[row]?.[column] ?? null;
    });
    for (const [i, change] of changes.entries()) {
      const plan = plans[i] as BookSheet;
      for (const place of change.keys()) {
        const cell = plan.cells.find(({ row, column }) => row === place.row && column === place.column);
        type(plan, place, cell ? typedData(cell) : stored(null));
      }
    }
    return seen;
  }

  return {
    /** What the sheet shows after each change alone. */
    async after(changes: readonly Change[]): Promise<Seen[]> {
      const seen: Seen[] = [];
      for (let from = 0; from < changes.length; from += count)
        seen.push(...(await together(changes.slice(from, from + count))));
      return seen;
    },
    dispose: book.dispose,
  };
}
