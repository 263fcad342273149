import type { Table } from './sheet';
import { Refusal } from './wire';

const LONGEST = 8192;

/** What a formula speaks of. */
interface Spoken {
  readonly isOpen: boolean;
  readonly sheets: readonly string[];
  readonly columns: readonly (readonly [table: string, column: string])[];
}
/** By their texts: a column says one thing in each of its rows. */
const known = new Map<string, Spoken>();
function spokenOf(formula: string): Spoken {
  const before = known.get(formula);
  if (before) return before;
  const bare = formula.replace(/"(?:[^"]|"")*"/g, '""');
  const isOpen = ['()', '[]', '{}'].some(
    ([open, close]) => bare.split(open as string).length !== bare.split(close as string).length,
  );
  const sheets = [...bare.matchAll(/(?:'((?:[^']|'')+)'|([\p{L}\p{N}_.]+))!/gu)].map(
    ([, quoted, plain]) => (quoted?.replaceAll("''", "'") ?? plain) as string,
  );
  const columns = [...bare.matchAll(/([\p{L}_][\p{L}\p{N}_.]*)\[((?:[^[\]]|\[[^[\]]*\])*)\]/gu)].map(
    ([, name, inside]) =>
      [name as string, (inside ?? '').replace(/^\[#This Row\],/, '').replace(/^\[(.*)\]$/, '$1')] as const,
  );
  const spoken = { isOpen, sheets, columns };
  known.set(formula, spoken);
  return spoken;
}

/** Refuses what Excel does not take as a formula: open brackets, and tables, columns and sheets that are not there. */
export function checkFormula(formula: string, tables: readonly Table[], sheets: readonly string[]): void {
  if (formula.length > LONGEST) throw new Refusal('FormulaLengthExceedsLimit', formula.slice(0, 80));
  const refuse = (reason: string): never => {
    throw new Refusal('InvalidArgument', `${reason}: ${formula}`);
  };
  const spoken = spokenOf(formula);
  if (spoken.isOpen) refuse('a bracket is open');
  for (const name of spoken.sheets)
    if (!sheets.some((sheet) => sheet.toLowerCase() === name.toLowerCase())) refuse(`no sheet ${name}`);
  for (const [name, column] of spoken.columns) {
    const table = tables.find((one) => one.name.toLowerCase() === name.toLowerCase());
    if (!table) return refuse(`no table ${name}`);
    if (!table.sheet.headings(table).includes(column)) refuse(`no column ${column} in ${name}`);
  }
}
