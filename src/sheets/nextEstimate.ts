import type { BookSheet, BookTable } from '../book/book';
import { blockPlace, isGiven, isInput } from './layout';
import { type SheetRead, tableCalled, type ValueAt, valuesOf } from './sheetRead';
import type { Block, Field, Form, Template, TemplateTable, TemplateValue } from './template';

export const ESTIMATE = 'estimate';
/** What goes over row by row. */
const TAKEN: readonly string[] = ['Prices', 'Currencies'];
/** What belongs to one job: its days, what was let off, and what was asked of its shots. */
const OF_ONE_JOB: readonly string[] = [
  'discount',
  'contingency',
  'dated',
  'validUntil',
  'variantOf',
  'moreOf',
];

/** Whether a sheet has prices that another estimate could take over. */
export const hasPrices = (sheet: Pick<BookSheet, 'tables'>): boolean =>
  TAKEN.every((id) => tableCalled(id, sheet.tables) !== undefined);

/** A table with all that it holds itself, and nothing typed into it. */
function emptied(table: TemplateTable): TemplateTable {
  const given = table.columns.filter(isGiven);
  const isTyped = given.map(isInput);
  return { ...table, rows: table.rows.map((row) => row.map((value, i) => (isTyped[i] ? null : value))) };
}

/** A table as it is in the sheet, with as many empty rows below it as the template has. */
function takenOver(block: TemplateTable, { area, columns }: BookTable, at: ValueAt): TemplateTable {
  const places = block.columns.filter(isInput).map(({ id }) => columns.findIndex(({ name }) => name === id));
  const rows = Array.from({ length: area.rows - 1 }, (_, i) =>
    places.map((place) => (place < 0 ? null : at(area.row + 1 + i, area.column + place))),
  ).filter((row) => row.some((value) => value !== null));
  const spare = block.rows.filter((row) => row.every((value) => value === null));
  return { ...block, rows: [...rows, ...spare] };
}

/** A form with what stands beside its labels: somebody may have added rows above them. */
function termsOf(form: Form, rowOf: ReadonlyMap<TemplateValue, number>, at: ValueAt): Form {
  const { column } = blockPlace(form);
  const taken = (field: Field): Field => {
    if (!isInput(field)) return field;
    const row = rowOf.get(field.label ?? null);
    return {
      ...field,
      value: row === undefined || OF_ONE_JOB.includes(field.id) ? null : at(row, column + 1),
    };
  };
  return { ...form, fields: form.fields.map(taken) };
}

/**
 * An estimate for another job: with the prices, the currencies and the terms of one that there is, and without its shots.
 *
 * @param template - the Estimate.
 * @param sheet - an estimate as it stands in a workbook.
 */
export function nextEstimate(template: Template, sheet: SheetRead): Template {
  const at = valuesOf(sheet);
  const rowOf = new Map<TemplateValue, number>();
  for (const { row, column, value } of sheet.cells)
    if (column === 0 && typeof value === 'string' && !rowOf.has(value)) rowOf.set(value, row);
  const next = (block: Block): Block => {
    if (block.kind === 'form') return termsOf(block, rowOf, at);
    const table = TAKEN.includes(block.id) ? tableCalled(block.id, sheet.tables) : undefined;
    if (table) return takenOver(block, table, at);
    return emptied(block);
  };
  return { ...template, blocks: template.blocks.map(next) };
}
