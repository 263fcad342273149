import type { BookCondition } from '../book/book';
import { KINDS } from '../book/kinds';
import { area, type Area } from '../formula/area';
import { blockPlace, type Layout, tableTop } from './layout';
import { WARNED_STYLE } from './looks';
import { settledForRow } from './settleFormula';
import type { TemplateTable } from './template';

/** Marks the cells of an area where the formula, written for its top left cell, is true. */
export const warned = (where: Area, formula: string): BookCondition => ({
  kind: 'formula',
  areas: [where],
  formula,
  look: WARNED_STYLE,
});

/** The cells of some columns of a table, without its headings. */
const body = (table: TemplateTable, first: number, columns = 1): Area =>
  area({ row: tableTop(table) + 1, column: blockPlace(table).column + first }, table.rows.length, columns);

/** What gives cells of a table a look that follows their values. */
export function tableConditions(table: TemplateTable, layout: Layout): BookCondition[] {
  const warnings = table.columns.flatMap(({ warning }, c) => {
    if (!warning) return [];
    const where = body(table, c);
    return [warned(where, settledForRow(warning.when, layout, table, where.row))];
  });
  const asked = KINDS.flatMap(
    ({ conditions }) => conditions?.(table, (column, columns) => body(table, column, columns)) ?? [],
  );
  return [...warnings, ...asked];
}
