import type { KnownTable } from './kinds/kind';

/** Where to find a value: in a column of another sheet's table, in the row whose key is this row's, or a cell's. */
export interface LookUp {
  readonly table: string;
  /** Column of the other table, and of the own one. */
  readonly key: string;
  /** The cell of a form that has the key, for a field: it has no row. */
  readonly by?: string;
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

const ownKey = ({ key, by }: LookUp): string => (by === undefined ? `[@${key}]` : `{${by}}`);

/** What stands in a text for itself alone, where a look-up takes * and ? for any signs: ~ before each of them, and before itself. */
const literally = (key: string): string =>
  `IF(ISTEXT(${key}),SUBSTITUTE(SUBSTITUTE(SUBSTITUTE(${key},"~","~~"),"*","~*"),"?","~?"),${key})`;

function looked({ table, key, column }: LookUp, wanted: string): string {
  const cell = `INDEX(${table}[${column}],MATCH(${wanted},${table}[${key}],0))`;
  return `=IFERROR(IF(${cell}="","",${cell}),"")`;
}

/** Gives empty, not 0, where the name is not there or its cell is empty. */
export const lookUpFormula = (lookUp: LookUp): string => looked(lookUp, literally(ownKey(lookUp)));

/** What sheets hold that were laid or linked before B* meant a head of that name alone. */
export const earlierLookUpFormula = (lookUp: LookUp): string => looked(lookUp, ownKey(lookUp));
