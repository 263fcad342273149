import type { ICellData } from '@univerjs/core';
import { usedArea } from '../../../src/book/cells';
import type { EngineValue } from '../../../src/engine/headless';
import { address, type Place } from '../../../src/formula/address';
import { layout, tableTop } from '../../../src/sheets/layout';
import { planAlone } from '../../../src/sheets/makePlan';
import { settledForRow } from '../../../src/sheets/settleFormula';
import type { Template } from '../../../src/sheets/template';
import { openedBook } from '../openedBook';
import { typedData } from '../typedData';
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
  const beside = warnings.map(({ place, formula }) => ({ ...place, formula, value: null }));
  const cells = [...plan.cells, ...beside];
  const book = await openedBook([{ ...plan, cells }]);
  const { rows, columns } = usedArea({ cells });
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
