import type { Token } from '../formula/lex';
import { templateReference } from '../formula/templateReference';
import { isGiven, type Layout } from './layout';
import type { TemplateTable, Template } from './template';

/** One formula of a template, as a node that may depend on others. */
export interface FormulaNode {
  /** The id of its cell or column, by which others read it: formulas of single rows are one node with their column. */
  readonly id: string;
  readonly at: string;
  readonly formula: string;
  /** The table whose rows the formula stands in. */
  readonly table: TemplateTable | undefined;
  /** Whether it says when cells are marked, and not what they hold. */
  readonly isCondition: boolean;
}

export const columnId = (table: string, column: string): string => `${table}[${column}]`;

/** Every formula of a template. */
export function nodes(template: Template): FormulaNode[] {
  const found: FormulaNode[] = [];
  for (const [b, block] of template.blocks.entries()) {
    const parts = block.kind === 'form' ? block.fields : block.columns;
    const table = block.kind === 'table' ? block : undefined;
    const add = (id: string, at: string, formula: string, isCondition = false): void => {
      found.push({ id, at: `blocks/${b}/${at}`, formula, table, isCondition });
    };
    for (const [i, part] of parts.entries()) {
      const at = `${block.kind === 'form' ? 'fields' : 'columns'}/${i}`;
      const id = table ? columnId(table.id, part.id) : part.id;
      if (table !== undefined && 'fixed' in part && part.fixed === 'formulas') {
        const position = table.columns.filter(isGiven).indexOf(part);
        for (const [r, row] of table.rows.entries()) add(id, `rows/${r}`, String(row[position]));
      }
      if (part.formula !== undefined) add(id, `${at}/formula`, part.formula);
      if (part.warning === undefined) continue;
      add(`${id} warning`, `${at}/warning/when`, part.warning.when, true);
      if (part.warning.text.startsWith('=')) add(`${id} words`, `${at}/warning/text`, part.warning.text);
    }
  }
  return found;
}

/** What a piece refers to, as the id of a node or an input; or why it refers to nothing. */
export function target(
  token: Token,
  { table }: FormulaNode,
  { cells, tables }: Layout,
): { id: string; quantity: string } | string | undefined {
  const to = templateReference(token);
  if (to === undefined) return undefined;
  if (to.kind === 'cell') {
    const cell = cells.get(to.id);
    return cell ? { id: to.id, quantity: cell.quantity } : `there is no cell ${token.raw}`;
  }
  const of = to.kind === 'row' ? table : tables.get(to.table);
  if (!of) return to.kind === 'row' ? `${token.raw} stands outside a table` : `there is no table ${to.table}`;
  const column = of.columns.find((c) => c.id === to.column);
  return column
    ? { id: columnId(of.id, column.id), quantity: column.quantity }
    : `table ${of.id} has no column ${to.column}`;
}
