import { ownNames } from './calls';
import { lex, type Token, type TokenOf } from './lex';
import { placeOf } from './sheetPlace';

/** What has another name now; undefined where it keeps its own. */
export interface Renames {
  sheet(name: string): string | undefined;
  /** Of a table, or a name for cells or for a formula. */
  name(name: string): string | undefined;
  /** A column of a table, by the old names of both; without a table it is the one that the formula stands in. */
  column(table: string | undefined, column: string): string | undefined;
}

/** A formula that follows what was renamed. What stands within quotation marks it leaves alone. */
export function renamed(formula: string, renames: Renames): string {
  const tokens = lex(formula);
  const own = ownNames(tokens);
  return tokens.map((token) => placeAfter(token, renames) + restAfter(token, renames, own)).join('');
}

/** A sheet as it stands before the ! of a reference. */
const asPlace = (sheets: readonly string[]): string => `'${sheets.join(':').replaceAll("'", "''")}'!`;

function placeAfter({ before }: Token, renames: Renames): string {
  if (before === undefined) return '';
  // A name that a file may not have can look like several sheets, or like another workbook: all of it is tried first.
  const quoted = /^'(.*)'!$/su.exec(before)?.[1];
  const whole = renames.sheet(quoted?.replaceAll("''", "'") ?? before.slice(0, -1));
  if (whole !== undefined) return asPlace([whole]);
  const { isElsewhere, sheets } = placeOf(before);
  const found = sheets.map((sheet) => renames.sheet(sheet));
  if (isElsewhere || found.every((sheet) => sheet === undefined)) return before;
  return asPlace(sheets.map((sheet, i) => found[i] ?? sheet));
}

function restAfter(token: Token, renames: Renames, own: ReadonlySet<string>): string {
  const rest = token.raw.slice(token.before?.length ?? 0);
  if (token.kind === 'columns') return columnsAfter(token, renames);
  if (token.kind !== 'name' || own.has(token.name.toLowerCase())) return rest;
  return renames.name(token.name) ?? rest;
}

function columnsAfter({ table, inside }: TokenOf<'columns'>, renames: Renames): string {
  const columnAfter = (column: string): string | undefined => {
    const name = renames.column(table, column.replace(/'(.)/gsu, '$1'));
    return name?.replace(/[[\]#'@]/g, "'$&");
  };
  const named = table === undefined ? '' : (renames.name(table) ?? table);
  const [, at = '', bare = ''] = /^(@?)(.*)$/su.exec(inside) ?? [];
  if (!inside.includes('[')) {
    const column = columnAfter(bare);
    if (column === undefined) return `${named}[${inside}]`;
    return at === '' ? `${named}[${column}]` : `${named}[@[${column}]]`;
  }
  const within = inside.replace(
    /\[((?:[^[\]']|'.)*)\]/gsu,
    (whole, column: string) => bracketed(columnAfter(column)) ?? whole,
  );
  return `${named}[${within}]`;
}

const bracketed = (column: string | undefined): string | undefined => column && `[${column}]`;
