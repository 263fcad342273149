import type { Table } from './sheet';
import { Refusal } from './wire';

const LONGEST = 8192;

/** Refuses what Excel does not take as a formula: open brackets, and tables, columns and sheets that are not there. */
export function checkFormula(formula: string, tables: readonly Table[], sheets: readonly string[]): void {
  if (formula.length > LONGEST) throw new Refusal('FormulaLengthExceedsLimit', formula.slice(0, 80));
  const refuse = (reason: string): never => {
    throw new Refusal('InvalidArgument', `${reason}: ${formula}`);
  };
  const bare = formula.replace(/"(?:[^"]|"")*"/g, '""');
  for (const [open, close] of ['()', '[]', '{}'])
    if (bare.split(open as string).length !== bare.split(close as string).length) refuse('a bracket is open');
  for (const [, quoted, plain] of bare.matchAll(/(?:'((?:[^']|'')+)'|([\p{L}\p{N}_.]+))!/gu)) {
    const name = (quoted?.replaceAll("''", "'") ?? plain) as string;
    if (!sheets.some((sheet) => sheet.toLowerCase() === name.toLowerCase())) refuse(`no sheet ${name}`);
  }
  for (const [, name, inside] of bare.matchAll(/([\p{L}_][\p{L}\p{N}_.]*)\[((?:[^[\]]|\[[^[\]]*\])*)\]/gu)) {
    const table = tables.find((one) => one.name.toLowerCase() === name?.toLowerCase());
    if (!table) return refuse(`no table ${name}`);
    const column = (inside ?? '').replace(/^\[#This Row\],/, '').replace(/^\[(.*)\]$/, '$1');
    if (!table.sheet.headings(table).includes(column)) refuse(`no column ${column} in ${name}`);
  }
}
