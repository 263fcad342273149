import { type ICellData, LocaleType } from '@univerjs/core';
import { usedArea } from '../../../src/book/cells';
import { headless, type EngineValue } from '../../../src/engine/headless';
import { address, type Place } from '../../../src/formula/address';
import { layout, tableTop } from '../../../src/sheets/layout';
import { planAlone } from '../../../src/sheets/makePlan';
import { settledForRow } from '../../../src/sheets/settleFormula';
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

/** A sheet as it is opened, with what its tables warn of. */
export async function opened(template: Template) {
  const plan = planAlone(template, true).sheet;
  const warnings = warningCells(template);
  const { rows, columns: used } = usedArea(plan);
  const columns = Math.max(used, ...warnings.map(({ place }) => place.column + 1));
  const cellData: Record<number, Record<number, ICellData>> = {};
  for (const cell of plan.cells) (cellData[cell.row] ??= {})[cell.column] = typedData(cell);
  for (const { place, formula } of warnings) (cellData[place.row] ??= {})[place.column] = { f: formula };
  const sheet = { id: 'sheet', name: plan.name, rowCount: rows, columnCount: columns, cellData };
  const book = headless({
    id: 'book',
    name: template.name,
    locale: LocaleType.EN_US,
    styles: {},
    sheetOrder: ['sheet'],
    sheets: { sheet },
  });
  for (const { name, area } of plan.tables)
    await book.workbook.addTable(
      'sheet',
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
  const type = ({ row, column }: Place, data: ICellData) =>
    book.workbook.getSheetByName(plan.name)?.getRange(row, column).setValue(data);

  return {
    /** What the sheet shows after this; then that is taken back. */
    async after(change: Change): Promise<Seen> {
      for (const [place, slip] of change) type(place, stored(slip));
      await book.calculate();
      const values = book.read(plan.name, all);
      for (const place of change.keys()) {
        const cell = plan.cells.find(({ row, column }) => row === place.row && column === place.column);
        type(place, cell ? typedData(cell) : stored(null));
      }
      return ({ row, column }) => values[row]?.[column] ?? null;
    },
    dispose: book.dispose,
  };
}
