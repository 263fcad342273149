import { KINDS } from '../book/kinds';
import type { KnownTable, Settled } from '../book/kinds/kind';
import { isGiven } from './layout';
import type { Template, TemplateColumn, TemplateTable } from './template';

const tablesOf = ({ blocks }: Template): TemplateTable[] =>
  blocks.filter((block): block is TemplateTable => block.kind === 'table');

/** The columns that hold a formula in a workbook with these tables, where it would be typed in another. */
const settledIn = (template: Template, known: readonly KnownTable[]): ReadonlyMap<TemplateColumn, Settled> =>
  new Map(
    tablesOf(template)
      .flatMap(({ columns }) => columns)
      .flatMap((column) => {
        const [first] = KINDS.flatMap((kind) => kind.settled?.(column, known) ?? []);
        return first ? [[column, first] as const] : [];
      }),
  );

/** What may be typed into a settled column, and what the rows say of it, is left out. */
function settledTable(table: TemplateTable, settled: ReadonlyMap<TemplateColumn, Settled>): TemplateTable {
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

/** A template with its columns settled for a workbook, and what the tables that they speak of are called there. */
export function settleColumns(
  template: Template,
  known: readonly KnownTable[],
): { readonly template: Template; readonly partners: readonly Settled['partner'][] } {
  const settled = settledIn(template, known);
  const blocks = template.blocks.map((block) =>
    block.kind === 'table' ? settledTable(block, settled) : block,
  );
  return { template: { ...template, blocks }, partners: [...settled.values()].map(({ partner }) => partner) };
}
