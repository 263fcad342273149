import { address } from '../../src/formula/address';
import { type Area, area } from '../../src/formula/area';
import { blockPlace, layout, tableTop } from '../../src/sheets/layout';
import type { TemplateTable } from '../../src/sheets/template';
import { templateOf } from './support';

const map = layout(templateOf('shot-record'));

/** The first cells of a column of Shot record, below its heading. */
export function columnOf(id: string, name: string, rows: number): Area {
  const table = map.tables.get(id) as TemplateTable;
  const place = table.columns.findIndex((each) => each.id === name);
  if (place < 0) throw new Error(`${id} has no column ${name}.`);
  return area({ row: tableTop(table) + 1, column: blockPlace(table).column + place }, rows, 1);
}

/** A cell of its forms. */
export function cellOf(id: string): string {
  const place = map.cells.get(id)?.place;
  if (!place) throw new Error(`There is no cell ${id}.`);
  return address(place);
}
