import { lex } from './lex';
import { namesSheet } from './sheetPlace';

const isSame = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

/** Whether a formula that stands elsewhere speaks of a sheet, or of one of the tables on it. */
export function speaksOf(formula: string, sheet: string, tables: readonly string[]): boolean {
  if (!formula.startsWith('=')) return false;
  return lex(formula).some((token) => {
    if (token.before !== undefined) return namesSheet(token.before, sheet);
    const table = token.kind === 'columns' ? token.table : token.kind === 'name' ? token.name : undefined;
    return table !== undefined && tables.some((name) => isSame(name, table));
  });
}
