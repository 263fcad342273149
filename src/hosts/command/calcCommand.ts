import { createInterface } from 'node:readline';
import { isCellError } from '../../formula/errors';
import type { EngineValue } from '../../engine/headless';
import { fifteen } from '../../engine/mends/digits';
import { calculate, type Calculated } from './calculateFormulas';
import { functionHelp, functionList } from './help';
import type { Terminal } from './terminal';

const USAGE = `Calculates formulas, SWEEP functions and those of any spreadsheet alike.

  npm run calc -- '=SWEEP.STOPDIFF(8,11)' '=SUM({1;2;3})'
  npm run calc -- --json < formulas.txt      one formula a line in, one line of JSON a formula out
  npm run calc -- --help STOPDIFF            explains a function

  npm run calc -- --book studio.xlsx '=SUM(C2:C9)'   as if typed on the first sheet of a workbook
  npm run calc -- --book studio.xlsx                 calculates it anew: one line of JSON for each formula cell that
                                                     holds another value
    --sheet Plan                                     on another sheet than the first; or only what stands there
    --out new.xlsx                                   writes the workbook with the new values

Numbers have 15 digits, as in spreadsheets; with --exact all that they have.
`;
const FLAGS: readonly string[] = ['--json', '--help', '--exact'];
/** These are followed by what they are about. */
const NAMING: readonly string[] = ['--book', '--sheet', '--out'];
const OPTIONS = [...FLAGS, ...NAMING];

/** A number of the engine as it is said. */
type Digits = (value: number) => number;
/** Digits that a spreadsheet shows: the one or two behind them are what a sum loses in binary. */
const inSpreadsheets: Digits = fifteen;
const exactly: Digits = (value) => value;

interface Asked {
  readonly flags: ReadonlySet<string>;
  readonly named: ReadonlyMap<string, string>;
  readonly given: readonly string[];
}

/** What a command line asks for; a sentence where it is not understood. */
function asked(args: readonly string[]): Asked | string {
  const [flags, named, given] = [new Set<string>(), new Map<string, string>(), [] as string[]];
  for (let i = 0; i < args.length; i++) {
    const arg = args[i] ?? '';
    if (!arg.startsWith('--')) given.push(arg);
    else if (FLAGS.includes(arg)) flags.add(arg);
    else if (!NAMING.includes(arg))
      return `There is no option ${arg}; there are ${OPTIONS.slice(0, -1).join(', ')} and ${OPTIONS.at(-1)}.`;
    else {
      const name = args[++i];
      if (name === undefined || name.startsWith('--'))
        return `${arg} must be followed by ${arg === '--sheet' ? 'the name of a sheet' : 'a file'}.`;
      named.set(arg, name);
    }
  }
  const alone = ['--sheet', '--out'].find((option) => named.has(option));
  return alone && !named.has('--book')
    ? `${alone} needs a workbook: name it by --book.`
    : { flags, named, given };
}

/** @returns the exit code: 0; 1 where a formula failed or a workbook differs; 2 where the command was not understood. */
export async function calc(args: readonly string[], terminal: Terminal): Promise<number> {
  const understood = asked(args);
  if (typeof understood === 'string') {
    terminal.complain(understood);
    return 2;
  }
  const { flags, named, given } = understood;
  if (flags.has('--help')) return help(given, terminal);

  const json = flags.has('--json');
  const formulas = given.length > 0 || !json ? given : await linesOf(terminal.input);
  const say = (results: readonly Calculated[]): number => {
    const digits = flags.has('--exact') ? exactly : inSpreadsheets;
    for (const result of results) {
      (json ? sayJson : sayPlain)(result, digits, terminal);
      if (result.leftOut !== undefined) terminal.complain(`${result.formula}: ${result.leftOut}`);
    }
    return results.some(({ refusals }) => refusals.length > 0) ? 1 : 0;
  };
  const book = named.get('--book');
  if (book !== undefined) {
    const { calcBook } = await import('./calcOnBook');
    return calcBook({ book, sheet: named.get('--sheet'), out: named.get('--out') }, formulas, terminal, say);
  }
  if (formulas.length === 0) {
    terminal.complain(json ? 'There is no formula on standard input.' : USAGE);
    return 2;
  }
  return say(await calculate(formulas));
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
