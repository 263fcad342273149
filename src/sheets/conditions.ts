import type { BookCondition } from '../book/book';
import { PALETTE } from '../book/palette';
import { area, type Area } from '../formula/area';
import { formatOf } from './formats';
import { blockPlace, type Layout, tableTop } from './layout';
import { WARNED_STYLE } from './looks';
import { settledForRow } from './settle';
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

const columnIndex = ({ columns }: TemplateTable, name: string | undefined): number =>
  columns.findIndex(({ id }) => id === name);

function colourScale(table: TemplateTable): BookCondition[] {
  const { map } = table;
  if (!map) return [];
  const where = body(table, columnIndex(table, map[0]), map.length);
  return [{ kind: 'scale', areas: [where], low: PALETTE.paper, high: PALETTE.glazeMid }];
}

/** What is wrong with the map of a table: one scale takes one area of numbers. */
export function mapFaults(table: TemplateTable): string[] {
  const { id: name, columns, map = [] } = table;
  const missing = map.filter((id) => columnIndex(table, id) < 0);
  if (missing.length > 0) return missing.map((id) => `table ${name} has no column ${id}`);
  const first = columnIndex(table, map[0]);
  if (map.some((id, i) => columnIndex(table, id) !== first + i))
    return [`${map.join(', ')} do not lie side by side`];
  const ofWords = columns.filter(
    ({ id, quantity }) => map.includes(id) && formatOf(quantity)?.align === 'left',
  );
  return ofWords.map(({ id }) => `${id} holds words, and only numbers have a least and a most`);
}

/** What gives cells of a table a look that follows their values. */
export function tableConditions(table: TemplateTable, layout: Layout): BookCondition[] {
  const warnings = table.columns.flatMap(({ warning }, c) => {
    if (!warning) return [];
    const where = body(table, c);
    return [warned(where, settledForRow(warning.when, layout, table, where.row))];
  });
  return [...warnings, ...colourScale(table)];
}
