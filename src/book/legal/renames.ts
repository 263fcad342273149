import { lex } from '../../formula/lex';
import { type Renames, renamed } from '../../formula/renamed';
import type { Book, BookCell, BookSheet, BookTable } from '../book';
import { type Changes, shown } from './changes';
import { headingsOf } from './headings';
import { legalNames, type Named, OF_COLUMNS, OF_NAMES, OF_SHEETS } from './names';

/** The legal names of all that a book names. */
export interface LegalNames {
  readonly sheets: readonly Named[];
  readonly names: readonly Named[];
  readonly tables: ReadonlyMap<BookTable, { readonly name: Named; readonly columns: readonly Named[] }>;
}

export function legalNamesOf({ sheets, names }: Book): LegalNames {
  const tables = sheets.flatMap((sheet) => sheet.tables.map((table) => ({ sheet, table })));
  // Tables and names stand beside one another.
  const named = legalNames([...tables, ...names].map(nameOf), OF_NAMES);
  return {
    sheets: legalNames(
      sheets.map(({ name }) => name),
      OF_SHEETS,
    ),
    names: named.slice(tables.length),
    tables: new Map(
      tables.map(({ sheet, table }, i) => [
        table,
        { name: named[i] as Named, columns: legalNames(headingsOf(sheet, table), OF_COLUMNS) },
      ]),
    ),
  };
}

const nameOf = (each: { readonly table: BookTable } | { readonly name: string }): string =>
  'table' in each ? each.table.name : each.name;

/** What of a list has another name now: as it is spelt, or but for capitals where no other is meant. */
function byName(old: readonly string[], now: readonly string[]): (name: string) => string | undefined {
  const exact = new Map<string, string>();
  const alike = new Map<string, string>();
  for (const [i, name] of old.entries()) {
    const fresh = now[i] ?? name;
    if (!exact.has(name)) exact.set(name, fresh);
    if (!alike.has(name.toLowerCase())) alike.set(name.toLowerCase(), fresh);
  }
  return (name) => {
    const found = exact.get(name) ?? alike.get(name.toLowerCase());
    return found === name ? undefined : found;
  };
}

const namesOf = (all: readonly Named[]): readonly string[] => all.map(({ name }) => name);

/** How the formulas of a book follow its new names. */
export class Renaming {
  readonly #sheet: (name: string) => string | undefined;
  readonly #name: (name: string) => string | undefined;
  readonly #columns: ReadonlyMap<string, (name: string) => string | undefined>;
  /** Whether there is anything to follow. */
  readonly isNeeded: boolean;

  constructor({ sheets, names }: Book, legal: LegalNames) {
    const tables = [...legal.tables];
    const old = sheets.map(({ name }) => name);
    const oldNames = [...tables.map(([{ name }]) => name), ...names.map(({ name }) => name)];
    const newNames = [...tables.map(([, { name }]) => name.name), ...namesOf(legal.names)];
    this.#sheet = byName(old, namesOf(legal.sheets));
    this.#name = byName(oldNames, newNames);
    const columns = new Map<string, (name: string) => string | undefined>();
    for (const [table, { columns: now }] of tables) {
      const found = byName(
        table.columns.map(({ name }) => name),
        namesOf(now),
      );
      columns.set(table.name, found);
      if (!columns.has(table.name.toLowerCase())) columns.set(table.name.toLowerCase(), found);
    }
    this.#columns = columns;
    const isOther = (one: readonly string[], other: readonly string[]): boolean =>
      one.some((name, i) => name !== other[i]);
    this.isNeeded =
      isOther(old, namesOf(legal.sheets)) ||
      isOther(oldNames, newNames) ||
      tables.some(([table, now]) => table.columns.some(({ name }, i) => name !== now.columns[i]?.name));
  }

  /** @param around - the table that a formula stands in */
  formula(formula: string, around?: BookTable): string {
    return this.isNeeded ? renamed(formula, this.#within(around)) : formula;
  }

  #within(around: BookTable | undefined): Renames {
    return {
      sheet: this.#sheet,
      name: this.#name,
      column: (table, column) => {
        const meant = table ?? around?.name;
        if (meant === undefined) return undefined;
        return (this.#columns.get(meant) ?? this.#columns.get(meant.toLowerCase()))?.(column);
      },
    };
  }
}

/** Says what is called otherwise, and where a text spells an old name, which no text follows. */
export function sayRenamed(book: Book, legal: LegalNames, changes: Changes): void {
  for (const [i, { name, why }] of legal.sheets.entries())
    if (why !== undefined) changes.called('The sheet', book.sheets[i]?.name ?? '', name, why);
  for (const [table, { name, columns }] of legal.tables) {
    if (name.why !== undefined) changes.called('The table', table.name, name.name, name.why);
    for (const [i, column] of columns.entries())
      if (column.why !== undefined)
        changes.called(
          `Of the table “${shown(name.name)}” the column`,
          table.columns[i]?.name ?? '',
          column.name,
          column.why,
        );
  }
  for (const [i, { name, why }] of legal.names.entries())
    if (why !== undefined) changes.called('The name', book.names[i]?.name ?? '', name, why);
  const old = book.sheets.flatMap(({ name }, i) => (legal.sheets[i]?.why === undefined ? [] : [name]));
  for (const name of old)
    if (name !== '' && book.sheets.some(({ cells }) => cells.some((cell) => spells(cell, name))))
      changes.say(`Texts within formulas, as for INDIRECT, still spell “${shown(name)}”.`);
}

const spells = ({ formula }: BookCell, name: string): boolean =>
  formula !== undefined &&
  formula.includes(name) &&
  lex(formula).some(({ kind, raw }) => kind === 'value' && raw.startsWith('"') && raw.includes(name));

/** The table that a cell stands in. */
export const tableAround = ({ tables }: BookSheet, { row, column }: BookCell): BookTable | undefined =>
  tables.find(
    ({ area }) =>
      row >= area.row &&
      row < area.row + area.rows &&
      column >= area.column &&
      column < area.column + area.columns,
  );
