import { isCellError } from '../../src/formula/errors';
import { liveValues } from './live';
import { parseAddress } from '../../src/formula/address';
import { layout, tableTop } from '../../src/sheets/layout';
import { planAlone } from '../../src/sheets/makePlan';
import type { Field, Template, TemplateValue } from '../../src/sheets/template';
import { TEMPLATES } from '../../src/sheets/templates';

/** What is typed over the demo job, by the id of its cell. */
export type Typed = Readonly<Record<string, TemplateValue>>;
type Rows = readonly (readonly TemplateValue[])[];

/** A key as look-ups spell it, so that * and ? in it stand for themselves. */
export const asItStands = (key: string): string =>
  `IF(ISTEXT(${key}),SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(${key},"~","~~"),"*","~*"),"?","~?"),${key})`;

export function templateOf(id: string): Template {
  const found = TEMPLATES.find((template) => template.id === id);
  if (!found) throw new Error(`There is no template ${id}.`);
  return found;
}

/** What stands right of a value: its remark, or its warning. */
export function wordsBeside(
  template: Template,
  { values }: Pick<Awaited<ReturnType<typeof calculated>>, 'values'>,
  id: string,
): string {
  const place = layout(template).cells.get(id)?.place;
  if (!place) throw new Error(`There is no cell ${id}.`);
  // A form has its words two columns right of the value.
  return String(values(place.row, place.column + 2) ?? '');
}

/** A template with other inputs, and with other rows in tables by their ids. */
export function typedOver(
  template: Template,
  typed: Typed,
  rows: Readonly<Record<string, Rows>> = {},
): Template {
  const unknown = new Set([...Object.keys(typed), ...Object.keys(rows)]);
  const typedTenths = ({ tenths }: Field): Pick<Field, 'tenths'> => {
    if (!tenths || !(tenths.id in typed)) return {};
    unknown.delete(tenths.id);
    return { tenths: { ...tenths, value: Number(typed[tenths.id]) } };
  };
  const typedField = (field: Field): Field => {
    const small = { ...field, ...typedTenths(field) };
    if (!(field.id in typed) || field.formula !== undefined) return small;
    unknown.delete(field.id);
    return { ...small, value: typed[field.id] ?? null };
  };
  const blocks = template.blocks.map((block) => {
    if (block.kind === 'form') return { ...block, fields: block.fields.map(typedField) };
    unknown.delete(block.id);
    return { ...block, rows: rows[block.id] ?? block.rows };
  });
  if (unknown.size > 0) throw new Error(`${template.id} has no input ${[...unknown].join(', ')}.`);
  return { ...template, blocks };
}

/** A template's sheet with its values: by address, by the id of a cell, or down a column of a table. */
export async function calculated(template: Template, filled = true) {
  const plan = planAlone(template, filled).sheet;
  const values = await liveValues(plan);
  const { cells, tables } = layout(template);
  return {
    plan,
    values,
    at(address: string) {
      const found = parseAddress(address);
      if (!found) throw new Error(`${address} is no cell.`);
      return values(found.row, found.column);
    },
    /** @param right - columns to the right of the cell. */
    cell(id: string, right = 0) {
      const found = cells.get(id)?.place;
      if (!found) throw new Error(`There is no cell ${id}.`);
      return values(found.row, found.column + right);
    },
    column(table: string, name: string) {
      const found = tables.get(table);
      const index = found?.columns.findIndex(({ id }) => id === name) ?? -1;
      if (!found || index < 0) throw new Error(`There is no column ${name} in ${table}.`);
      const left = parseAddress(found.at)?.column ?? 0;
      return found.rows.map((_, row) => values(tableTop(found) + 1 + row, left + index));
    },
    errors: plan.cells.filter(({ row, column }) => isCellError(values(row, column))),
  };
}
