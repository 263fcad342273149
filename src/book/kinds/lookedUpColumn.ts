import type { AskedTable, Check, Kind, KnownTable } from './kind';

export interface LookedUpColumnWish {
  /** Looked up where the workbook has the other table; where it has not, an input, or what the column's formula says. */
  readonly from?: LookUp;
}

/** Where to find the value of a row: in a column of another sheet's table, in the row whose key is this row's. */
export interface LookUp {
  readonly table: string;
  /** Column of both tables. */
  readonly key: string;
  readonly column: string;
}

export const alike = (one: string, other: string): boolean => one.toLowerCase() === other.toLowerCase();

/**
 * The number that a name got because it was taken: 1 for Heads, 2 for Heads_2, or for Heads2 where Excel has copied the sheet;
 * undefined for any other table's.
 */
export function numberOf(name: string, table: string): number | undefined {
  if (alike(name, table)) return 1;
  const [, stem = '', number] = /^(.*?)_?(\d+)$/.exec(name) ?? [];
  return number !== undefined && alike(stem, table) ? Number(number) : undefined;
}

/**
 * The workbook's tables to look up in, by their names there, the first one first: somebody's own table of the same name may
 * have other columns.
 */
export function partnersOf({ table, key, column }: LookUp, known: readonly KnownTable[]): string[] {
  const found = known.flatMap(({ name, columns }) => {
    const number = numberOf(name, table);
    const has = (wanted: string): boolean => columns.some((each) => alike(each, wanted));
    return number !== undefined && has(key) && has(column) ? [{ name, number }] : [];
  });
  return found.sort((a, b) => a.number - b.number).map(({ name }) => name);
}

/** Gives empty, not 0, where the name is not there or its cell is empty. */
function formulaFor({ table, key, column }: LookUp): string {
  const found = `INDEX(${table}[${column}],MATCH([@${key}],${table}[${key}],0))`;
  return `=IFERROR(IF(${found}="","",${found}),"")`;
}

export const lookedUpColumn: Kind = {
  settled({ from }, known) {
    const name = from && partnersOf(from, known)[0];
    return from && name !== undefined
      ? { formula: formulaFor(from), partner: [from.table, name] }
      : undefined;
  },
};

const heading = { $ref: '#/definitions/heading' };
export const lookedUpColumnCheck: Check = {
  property: 'from',
  of: ['column'],
  shape: {
    type: 'object',
    additionalProperties: false,
    required: ['table', 'key', 'column'],
    properties: { table: { $ref: '#/definitions/id' }, key: heading, column: heading },
    description:
      "Looked up by the key in another sheet's table where the workbook has it; where it has not, an input or the column's formula.",
  },
  columnFaults({ from, quantity, fixed }, own, others, formatOf) {
    if (!from) return [];
    const [partner, more] = others.filter(({ id }) => alike(id, from.table));
    if (!partner) return [`no sheet has a table ${from.table}`];
    if (more) return [`more than one sheet has a table ${from.table}`];
    if (fixed !== undefined) return ['is looked up: it cannot be fixed'];
    const missing = (table: AskedTable, id: string): string[] =>
      table.columns.some((each) => each.id === id) ? [] : [`table ${table.id} has no column ${id}`];
    const theirs = partner.columns.find(({ id }) => id === from.column);
    const [unit, wanted] = [quantity, theirs?.quantity].map((of) => of && formatOf(of)?.unit);
    return [
      ...missing(partner, from.key),
      ...missing(partner, from.column),
      ...missing(own, from.key),
      ...(unit && wanted && unit !== wanted
        ? [`is in ${unit}, but ${from.column} of ${from.table} is in ${wanted}`]
        : []),
    ];
  },
};
