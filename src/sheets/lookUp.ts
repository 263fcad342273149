import type { Fault } from './fault';
import { formatOf } from './formats';
import { isGiven } from './layout';
import type { LookUp, Template, TemplateColumn, TemplateTable } from './template';

/** A table that is in the workbook. */
export interface KnownTable {
  readonly name: string;
  readonly columns: readonly string[];
}

const alike = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();

/** The number that a name got because it was taken: 1 for Heads, 2 for Heads_2; undefined for any other table's. */
function numberOf(name: string, table: string): number | undefined {
  if (alike(name, table)) return 1;
  const cut = name.lastIndexOf('_');
  return alike(name.slice(0, cut), table) && /^_\d+$/.test(name.slice(cut))
    ? Number(name.slice(cut + 1))
    : undefined;
}

/** The workbook's table to look up in, by its name there: somebody's own table of the same name may have other columns. */
export function partnerOf({ table, key, column }: LookUp, known: readonly KnownTable[]): string | undefined {
  const found = known.flatMap(({ name, columns }) => {
    const number = numberOf(name, table);
    const has = (wanted: string): boolean => columns.some((each) => alike(each, wanted));
    return number !== undefined && has(key) && has(column) ? [{ name, number }] : [];
  });
  return found.sort((a, b) => a.number - b.number)[0]?.name;
}

/** Gives empty, not 0, where the name is not there or its cell is empty. */
function formulaFor({ table, key, column }: LookUp): string {
  const found = `INDEX(${table}[${column}],MATCH([@${key}],${table}[${key}],0))`;
  return `=IFERROR(IF(${found}="","",${found}),"")`;
}

const tablesOf = ({ blocks }: Template): TemplateTable[] =>
  blocks.filter((block): block is TemplateTable => block.kind === 'table');

/** A table whose columns hold formulas where they are looked up: what the rows say of them is left out. */
function settledTable(table: TemplateTable, partner: (from: LookUp | undefined) => unknown): TemplateTable {
  const given = table.columns.filter(isGiven);
  return {
    ...table,
    columns: table.columns.map((column) => {
      if (!column.from || !partner(column.from)) return column;
      const { accepts: _, ...rest } = column;
      return { ...rest, formula: formulaFor(column.from) };
    }),
    rows: table.rows.map((row) => row.filter((_, i) => !partner(given[i]?.from))),
  };
}

/** A template with its look-ups settled for a workbook, and what the tables that they speak of are called there. */
export function withLookUps(
  template: Template,
  known: readonly KnownTable[],
): { readonly template: Template; readonly partners: readonly (readonly [id: string, name: string])[] } {
  const partner = (from: LookUp | undefined): string | undefined => from && partnerOf(from, known);
  const partners = tablesOf(template)
    .flatMap(({ columns }) => columns)
    .flatMap(({ from }) => {
      const name = partner(from);
      return from && name !== undefined ? [[from.table, name] as const] : [];
    });
  const blocks = template.blocks.map((block) =>
    block.kind === 'table' ? settledTable(block, partner) : block,
  );
  return { template: { ...template, blocks }, partners };
}

function faultsOf(
  column: TemplateColumn,
  from: LookUp,
  own: TemplateTable,
  all: readonly TemplateTable[],
): string[] {
  const [partner, more] = all.filter(({ id }) => alike(id, from.table));
  if (!partner) return [`no sheet has a table ${from.table}`];
  if (more) return [`more than one sheet has a table ${from.table}`];
  if (column.formula !== undefined || column.fixed !== undefined)
    return ['is looked up: it can be neither fixed nor a formula'];
  const missing = (table: TemplateTable, id: string): string[] =>
    table.columns.some((each) => each.id === id) ? [] : [`table ${table.id} has no column ${id}`];
  const theirs = partner.columns.find(({ id }) => id === from.column);
  const [unit, wanted] = [column, theirs].map((each) => each && formatOf(each.quantity)?.unit);
  return [
    ...missing(partner, from.key),
    ...missing(partner, from.column),
    ...missing(own, from.key),
    ...(theirs && unit !== wanted
      ? [`is in ${unit}, but ${from.column} of ${from.table} is in ${wanted}`]
      : []),
  ];
}

/** What is wrong with the look-ups of a template, which speak of tables of others. */
export function lookUpFaults(template: Template, all: readonly Template[]): Fault[] {
  const others = all.filter((other) => other !== template).flatMap(tablesOf);
  return template.blocks.flatMap((block, b) => {
    if (block.kind !== 'table') return [];
    return block.columns.flatMap((column, c) =>
      column.from
        ? faultsOf(column, column.from, block, others).map((reason) => ({
            at: `blocks/${b}/columns/${c}/from`,
            reason,
          }))
        : [],
    );
  });
}
