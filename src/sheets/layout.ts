import { KINDS } from '../book/kinds';
import { type Place, parseAddress } from '../formula/address';
import type { Block, TemplateColumn, Field, Form, TemplateTable, Template } from './template';

/** Rows of the sheet before its first block: what it answers, what to type where, and an empty one. */
export const LEAD_ROWS = 3;

/** Where the parts of a template lie. */
export interface Layout {
  /** Place of the cell of each id, and what it is. */
  readonly cells: ReadonlyMap<
    string,
    { readonly place: Place; readonly quantity: string; readonly formula: string | undefined }
  >;
  readonly tables: ReadonlyMap<string, TemplateTable>;
  /** First row below all blocks. */
  readonly end: number;
  readonly columns: number;
}

/** A block's first cell. A template that has been checked has no bad address. */
export const blockPlace = (block: Block): Place => parseAddress(block.at) ?? { row: 0, column: 0 };
export const fieldRow = (form: Form, index: number): number => blockPlace(form).row + 1 + index;
export const tableTop = (table: TemplateTable): number => blockPlace(table).row + 1;
export const blockRows = (block: Block): number =>
  block.kind === 'form' ? 1 + block.fields.length : 2 + block.rows.length;
/** Columns that the value of a field takes as one cell. */
export const valueColumns = (field: Field): number =>
  Math.max(1, ...KINDS.map((kind) => kind.across?.(field) ?? 1));
/** Label and value, with tenths beside them a column more, and the last for the words of a line. */
const besideValue = ({ remark, warning, tenths }: Field): number =>
  remark !== undefined || warning ? 4 : tenths ? 3 : 2;
const fieldColumns = (field: Field): number => Math.max(besideValue(field), 1 + valueColumns(field));
/** Whether the value of a field reaches over what stands right of it. */
export const coversBeside = ({ remark, warning, tenths, ...field }: Field): boolean =>
  valueColumns(field) > (tenths ? 1 : remark !== undefined || warning ? 2 : Infinity);
export const blockColumns = (block: Block): number =>
  block.kind === 'form' ? Math.max(2, ...block.fields.map(fieldColumns)) : block.columns.length;
/** Whether the rows of the template say what stands in it: an input, or what the sheet holds itself. */
export const isGiven = (part: Field | TemplateColumn): boolean => part.formula === undefined;
export const isInput = (part: Field | TemplateColumn): boolean => isGiven(part) && !('fixed' in part);

export function layout(template: Template): Layout {
  const cells = new Map<string, { place: Place; quantity: string; formula: string | undefined }>();
  const tables = new Map<string, TemplateTable>();
  let end = LEAD_ROWS;
  let columns = template.columns.length;
  for (const block of template.blocks) {
    const { row, column } = blockPlace(block);
    end = Math.max(end, row + blockRows(block));
    columns = Math.max(columns, column + (block.kind === 'table' ? block.columns.length : 2));
    if (block.kind === 'table') {
      tables.set(block.id, block);
      continue;
    }
    for (const [i, field] of block.fields.entries()) {
      const at = { row: fieldRow(block, i), column: column + 1 };
      cells.set(field.id, { place: at, quantity: field.quantity, formula: field.formula });
      if (field.tenths)
        cells.set(field.tenths.id, {
          place: { ...at, column: column + 2 },
          quantity: 'tenths',
          formula: undefined,
        });
    }
  }
  return { cells, tables, end, columns };
}
