import { rowOf } from '../catalogue';
import { lex, type Token, type TokenOf } from './lex';
import { isOurs, OURS } from './names';
import { placeOf } from './sheetPlace';
import { parseReference } from './reference';

const ENDS: ReadonlySet<Token['kind']> = new Set(['cells', 'lines', 'columns', 'name', 'close']);
const STARTS: ReadonlySet<Token['kind']> = new Set(['cells', 'lines', 'columns', 'name', 'call', 'open']);

/** A sheet reads alike with quotation marks and without, in whatever case. */
function place(before: string | undefined): string {
  if (before === undefined) return '';
  const { isElsewhere, sheets } = placeOf(before);
  return `${isElsewhere ? before : sheets.join(':')}!`.toLowerCase();
}

/** Columns of a table: `[@Reading]`, `Lights[@Reading]` and `Lights[[#This Row],[Reading]]` are one within Lights. */
function columns(raw: string, table: string | undefined): string {
  const found = parseReference(raw);
  if (found?.kind !== 'table') return raw.toLowerCase();
  const { table: of = table, first, last, rows } = found;
  return JSON.stringify([of, first, last, rows]).toLowerCase();
}

function meaning(token: Token, table: string | undefined): string {
  const { raw, before } = token;
  switch (token.kind) {
    case 'value':
      return place(before) + JSON.stringify(token.value);
    case 'list':
      return JSON.stringify(token.rows);
    case 'call':
      return `${place(before)}${token.name}(`;
    case 'columns':
      return columns(raw, table);
    case 'cells':
    case 'lines':
    case 'name':
      return place(before) + raw.slice(before?.length ?? 0).toUpperCase();
    default:
      return raw;
  }
}

/** Whether a function gives a list or a table, of which an @ before it would leave the first value. */
function givesMany({ name }: TokenOf<'call'>): boolean {
  const row = isOurs(name) ? rowOf(name.slice(OURS.length)) : undefined;
  return row !== undefined && row.answers !== 'one';
}

/**
 * What a formula says, piece by piece. A space counts only between two ranges, where it asks for the cells of both; and an
 * @ before a function does not where the function gives one value.
 */
function meanings(formula: string, table: string | undefined): string {
  const tokens = lex(formula);
  const said: string[] = [];
  let last: Token | undefined;
  for (const [i, token] of tokens.entries()) {
    const next = tokens[i + 1];
    const isOneValue = token.raw === '@' && next?.kind === 'call' && !givesMany(next);
    if (token.kind === 'space' || isOneValue) continue;
    const isApart = tokens[i - 1]?.kind === 'space';
    if (isApart && last && ENDS.has(last.kind) && STARTS.has(token.kind)) said.push(' ');
    said.push(meaning(token, table));
    last = token;
  }
  return JSON.stringify(said);
}

/**
 * Whether two formulas say the same, where a spreadsheet only spells one of them in its own way: capitals, spaces, the short
 * form of a table's columns, quotation marks around a sheet, digits of a number, an @ before a function that gives one value.
 * @param table - the table that both stand in
 */
export const saysTheSame = (a: string, b: string, table?: string): boolean =>
  a === b || meanings(a, table) === meanings(b, table);
