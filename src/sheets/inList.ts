import type { Fault } from './fault';
import { blockPlace, type Layout, tableTop } from './layout';
import type { Field, Template } from './template';

/** Lines of answers: enough to tell what kind of answer a sheet gives. */
export const MOST_LINES = 3;

/** By what a sheet is known in a list: fields of its forms, or the first rows of a table. */
export type InList =
  { readonly fields: readonly string[] } | { readonly table: string; readonly columns: readonly string[] };

/** Line by line; of a table the first line has its headings. */
export type Lines = readonly (readonly string[])[];

const fieldsOf = ({ blocks }: Template): readonly Field[] =>
  blocks.flatMap((block) => (block.kind === 'form' ? block.fields : []));

/** What is wrong with what a template says of itself in a list. */
export function inListFaults({ inList, ...template }: Template, map: Layout): readonly Fault[] {
  const fault = (reason: string): Fault => ({ at: 'inList', reason });
  if (!inList) return [];
  if ('fields' in inList) {
    const labelled = new Set(fieldsOf(template).flatMap(({ id, label }) => (label === undefined ? [] : id)));
    return inList.fields.flatMap((id) => (labelled.has(id) ? [] : fault(`there is no labelled field ${id}`)));
  }
  const table = map.tables.get(inList.table);
  if (!table) return [fault(`there is no table ${inList.table}`)];
  return inList.columns.flatMap((name) =>
    table.columns.some(({ id }) => id === name) ? [] : fault(`table ${table.id} has no column ${name}`),
  );
}

/**
 * What a list shows of a sheet; nothing where its template says nothing of that.
 *
 * @param shown - what the cell of a row and a column shows
 */
export function linesInList(
  template: Template,
  { cells, tables }: Layout,
  shown: (row: number, column: number) => string,
): Lines | undefined {
  const { inList } = template;
  if (!inList) return undefined;
  if ('fields' in inList)
    return inList.fields.map((id) => {
      const place = cells.get(id)?.place;
      const label = fieldsOf(template).find((field) => field.id === id)?.label ?? '';
      return [label, place ? shown(place.row, place.column) : ''];
    });
  const table = tables.get(inList.table);
  if (!table) return undefined;
  const columns = inList.columns.map(
    (name) => blockPlace(table).column + table.columns.findIndex(({ id }) => id === name),
  );
  const first = tableTop(table) + 1;
  const rows = Array.from({ length: Math.min(MOST_LINES, table.rows.length) }, (_, i) =>
    columns.map((column) => shown(first + i, column)),
  );
  return [inList.columns, ...rows];
}
