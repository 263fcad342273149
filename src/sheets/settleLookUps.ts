import { KINDS } from '../book/kinds';
import type { KnownTable, Settled } from '../book/kinds/kind';
import { isGiven } from './layout';
import type { Field, Form, Template, TemplateColumn, TemplateTable } from './template';

type SettledParts = ReadonlyMap<Field | TemplateColumn, Settled>;

/** The fields and columns that hold a formula in a workbook with these tables, where it would be typed in another. */
const settledIn = ({ blocks }: Template, known: readonly KnownTable[]): SettledParts =>
  new Map(
    blocks
      .flatMap((block): readonly (Field | TemplateColumn)[] =>
        block.kind === 'table' ? block.columns : block.fields,
      )
      .flatMap((part) => {
        const [first] = KINDS.flatMap((kind) => kind.settled?.(part, known) ?? []);
        return first ? [[part, first] as const] : [];
      }),
  );

/** What may be typed into a settled column, and what the rows say of it, is left out. */
function settledTable(table: TemplateTable, settled: SettledParts): TemplateTable {
  const isSettled = table.columns.filter(isGiven).map((column) => settled.has(column));
  return {
    ...table,
    columns: table.columns.map((column) => {
      const now = settled.get(column);
      if (!now) return column;
      const { accepts: _, ...rest } = column;
      return { ...rest, formula: now.formula };
    }),
    rows: table.rows.map((row) => row.filter((_, i) => !isSettled[i])),
  };
}

/** The same of fields. */
const settledForm = (form: Form, settled: SettledParts): Form => ({
  ...form,
  fields: form.fields.map((field) => {
    const now = settled.get(field);
    if (!now) return field;
    const { accepts: _, value: __, ...rest } = field;
    return { ...rest, formula: now.formula };
  }),
});

/**
 * A template with its fields and columns settled for a workbook, and what the tables that they speak of are called there.
 *
 * @param known - the tables of the workbook
 * @param together - those of them that are looked up in before all others
 */
export function settleLookUps(
  template: Template,
  known: readonly KnownTable[],
  together: readonly KnownTable[] = [],
): { readonly template: Template; readonly partners: readonly Settled['partner'][] } {
  const settled = new Map([...settledIn(template, known), ...settledIn(template, together)]);
  const blocks = template.blocks.map((block) =>
    block.kind === 'table' ? settledTable(block, settled) : settledForm(block, settled),
  );
  return { template: { ...template, blocks }, partners: [...settled.values()].map(({ partner }) => partner) };
}
