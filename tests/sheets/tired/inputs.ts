import type { Place } from '../../../src/formula/address';
import { formatOf } from '../../../src/sheets/formats';
import { blockPlace, fieldRow, isGiven, isInput, tableTop } from '../../../src/sheets/layout';
import type {
  Accepts,
  CellContent,
  Form,
  Template,
  TemplateTable,
  TemplateValue,
} from '../../../src/sheets/template';
import { oneOf } from '../../full';

/** A cell that somebody types into, with all that the sheet says of it. */
export interface Input {
  readonly name: string;
  readonly place: Place;
  readonly quantity: string;
  readonly unit: string;
  readonly value: TemplateValue;
  readonly accepts: Accepts | undefined;
  /** Its remark and its note. */
  readonly words: string;
}

/** A meter's small figure. */
const TENTHS: Accepts = { least: 0, most: 9, whole: true, message: '' };

const made = (
  name: string,
  place: Place,
  content: CellContent & { readonly remark?: string },
  value: TemplateValue | undefined,
): Input => ({
  name,
  place,
  quantity: content.quantity,
  unit: formatOf(content.quantity)?.unit ?? '',
  value: value ?? null,
  accepts: content.accepts,
  words: `${content.remark ?? ''} ${content.note ?? ''}`,
});

function formInputs(form: Form): Input[] {
  const column = blockPlace(form).column + 1;
  return form.fields.flatMap((field, i) => {
    if (!isInput(field)) return [];
    const row = fieldRow(form, i);
    const input = made(field.id, { row, column }, field, field.value);
    const { tenths } = field;
    if (!tenths) return [input];
    const small = { quantity: 'tenths', accepts: TENTHS, remark: 'blank for none' };
    return [input, made(tenths.id, { row, column: column + 1 }, small, tenths.value)];
  });
}

/** The first row; of many the last as well, and one between them that each run in full draws anew. */
function rowsOf({ rows }: TemplateTable, many: boolean): number[] {
  const last = rows.length - 1;
  if (!many || last < 1) return rows.length > 0 ? [0] : [];
  return last < 2 ? [0, last] : [0, 1 + oneOf(last - 1), last];
}

function tableInputs(table: TemplateTable, many: boolean): Input[] {
  const { column: left } = blockPlace(table);
  const given = table.columns.filter(isGiven);
  return rowsOf(table, many).flatMap((r) =>
    table.columns.flatMap((column, c) => {
      if (!isInput(column)) return [];
      const value = table.rows[r]?.[given.indexOf(column)];
      const place = { row: tableTop(table) + 1 + r, column: left + c };
      const meaning = column.tenths ? { ...column, accepts: TENTHS, remark: 'blank for none' } : column;
      return [made(`${table.id}[${column.id}] ${r + 1}`, place, meaning, value)];
    }),
  );
}

export const inputsOf = ({ blocks }: Template, many = false): Input[] =>
  blocks.flatMap((block) => (block.kind === 'form' ? formInputs(block) : tableInputs(block, many)));
