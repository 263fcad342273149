import type { BookCondition } from '../book/book';
import { area, type Area } from '../formula/area';
import { blockPlace, type Layout, tableTop } from './layout';
import { WARNED_STYLE } from './looks';
import { settledForRow } from './settle';
import type { TemplateTable } from './template';

/** Marks the cells of an area where the formula, written for its top left cell, is true. */
export const warned = (where: Area, formula: string): BookCondition => ({
  areas: [where],
  formula,
  look: WARNED_STYLE,
});

/** What marks the cells of a table. */
export function tableConditions(table: TemplateTable, map: Layout): BookCondition[] {
  const row = tableTop(table) + 1;
  return table.columns.flatMap(({ warning }, c) => {
    if (!warning) return [];
    const body = area({ row, column: blockPlace(table).column + c }, table.rows.length, 1);
    return [warned(body, settledForRow(warning.when, map, table, row))];
  });
}
