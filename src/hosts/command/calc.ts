import { createInterface } from 'node:readline';
import { isCellError } from '../../formula/errors';
import type { EngineValue } from '../../engine/headless';
import { calculate, type Calculated } from './calculate';
import { functionHelp, functionList } from './help';
import type { Terminal } from './terminal';

const USAGE = `Calculates formulas, SWEEP functions and those of any spreadsheet alike.

  npm run calc -- '=SWEEP.STOPDIFF(8,11)' '=SUM({1;2;3})'
  npm run calc -- --json < formulas.txt      one formula a line in, one line of JSON a formula out
  npm run calc -- --help STOPDIFF            explains a function

Numbers have 15 digits, as in spreadsheets; with --exact all that they have.
`;
const OPTIONS: readonly string[] = ['--json', '--help', '--exact'];

/** A number of the engine as it is said. */
type Digits = (value: number) => number;
/** Digits that a spreadsheet shows: the one or two behind them are what a sum loses in binary. */
const DIGITS = 15;
const inSpreadsheets: Digits = (value) => Number(value.toPrecision(DIGITS));
const exactly: Digits = (value) => value;

/** @returns the exit code: 0, 1 where a formula failed, 2 where the command was not understood. */
export async function calc(args: readonly string[], terminal: Terminal): Promise<number> {
  const options = args.filter((arg) => arg.startsWith('--'));
  const given = args.filter((arg) => !arg.startsWith('--'));
  const unknown = options.find((option) => !OPTIONS.includes(option));
  if (unknown) {
    terminal.complain(
      `There is no option ${unknown}; there are ${OPTIONS.slice(0, -1).join(', ')} and ${OPTIONS.at(-1)}.`,
    );
    return 2;
  }
  if (options.includes('--help')) return help(given, terminal);

  const json = options.includes('--json');
  const formulas = given.length > 0 || !json ? given : await linesOf(terminal.input);
  if (formulas.length === 0) {
    terminal.complain(json ? 'There is no formula on standard input.' : USAGE);
    return 2;
  }
  const results = await calculate(formulas);
  const digits = options.includes('--exact') ? exactly : inSpreadsheets;
  for (const result of results) (json ? sayJson : sayPlain)(result, digits, terminal);
  return results.some(({ refusals }) => refusals.length > 0) ? 1 : 0;
}

async function help(names: readonly string[], terminal: Terminal): Promise<number> {
  if (names.length === 0) terminal.say(`${USAGE}\n${functionList()}`);
  const texts = names.map(functionHelp);
  for (const { text, found } of texts) (found ? terminal.say : terminal.complain)(text);
  return texts.every(({ found }) => found) ? 0 : 1;
}

async function linesOf(input: Terminal['input']): Promise<string[]> {
  const lines: string[] = [];
  for await (const line of createInterface({ input: input as NodeJS.ReadableStream }))
    if (line.trim()) lines.push(line);
  return lines;
}

const withDigits = (value: EngineValue, digits: Digits): EngineValue =>
  typeof value === 'number' ? digits(value) : value;

function sayJson(
  { formula, value, refusals }: Calculated,
  digits: Digits,
  { say, complain }: Terminal,
): void {
  if (!Array.isArray(value)) {
    const refusal = refusals[0];
    say(
      JSON.stringify(
        refusal
          ? { formula, error: refusal.error, message: refusal.message }
          : { formula, value: withDigits(value, digits) },
      ),
    );
    return;
  }
  say(
    JSON.stringify({
      formula,
      value: value.map((row) =>
        row.map((cell) => (isCellError(cell) ? cell.error : withDigits(cell, digits))),
      ),
    }),
  );
  sayRefusals(formula, refusals, complain);
}

function sayPlain(
  { formula, value, refusals }: Calculated,
  digits: Digits,
  { say, complain }: Terminal,
): void {
  const plain = (cell: EngineValue): string => plainText(withDigits(cell, digits));
  if (Array.isArray(value)) say(value.map((row) => row.map(plain).join('\t')).join('\n'));
  else if (!isCellError(value)) say(plain(value));
  sayRefusals(formula, refusals, complain);
}

/** Cells of one spill that are refused in the same words are one line. */
function sayRefusals(
  formula: string,
  refusals: Calculated['refusals'],
  complain: Terminal['complain'],
): void {
  for (const line of new Set(refusals.map(({ error, message }) => `${formula}: ${error} ${message}`)))
    complain(line);
}

function plainText(value: EngineValue): string {
  if (value === null) return '';
  if (typeof value === 'boolean') return value ? 'TRUE' : 'FALSE';
  return isCellError(value) ? value.error : String(value);
}
