import { lex, type Token } from './lex';

/** The pieces of a formula as a template writes it. */
export const templateTokens = (formula: string): readonly Token[] => lex(formula, 'fields');

/** What a template's formula may refer to. */
export type TemplateReference =
  /** `{reading}`: the cell of that id. */
  | { readonly kind: 'cell'; readonly id: string }
  /** `[@Reading]`: this row's cell of the table the formula stands in. */
  | { readonly kind: 'row'; readonly column: string }
  /** `Heads[Reading]`: a whole column of a table. */
  | { readonly kind: 'column'; readonly table: string; readonly column: string };

/** A column's name as its cells are called without brackets and apostrophes of its own. */
const COLUMN = /^(@?)([A-Za-z][A-Za-z0-9 ]*)$/;

export function templateReference(token: Token): TemplateReference | undefined {
  if (token.kind === 'field') return { kind: 'cell', id: token.id };
  if (token.kind !== 'columns' || token.before !== undefined) return undefined;
  const [, at, column] = COLUMN.exec(token.inside) ?? [];
  if (column === undefined) return undefined;
  const isRow = at === '@';
  if (token.table === undefined) return isRow ? { kind: 'row', column } : undefined;
  return isRow ? undefined : { kind: 'column', table: token.table, column };
}

/** Whether a template may hold a piece: what every spreadsheet reads alike, and no cell by its address or its name. */
export function isOfTemplate(token: Token): boolean {
  switch (token.kind) {
    case 'space':
    case 'comma':
    case 'open':
    case 'close':
    case 'field':
      return true;
    case 'sign':
      return token.raw !== '@' && token.raw !== '#';
    case 'value':
      return typeof token.value !== 'object';
    case 'list':
      return token.rows.flat().every((member) => typeof member === 'number' || typeof member === 'string');
    case 'call':
      return token.before === undefined;
    case 'columns':
      return templateReference(token) !== undefined;
    default:
      return false;
  }
}
