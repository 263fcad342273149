import { CATALOGUE, NAMESPACE } from '../../catalogue';
import { functionName } from '../../catalogue/words';
import { functionsIn } from '../../formula/calls';
import type { CellError, ErrorCode } from '../../formula/errors';
import { lex } from '../../formula/lex';
import { ENGINE_FUNCTIONS } from '../../engine/natives';
import { nearest } from './nearest';

export interface FormulaRefusal {
  readonly error: ErrorCode;
  readonly message: string;
}

/** What a spreadsheet's own errors mean. A SWEEP function's errors bring sentences of their own. */
const SENTENCES: Readonly<Record<string, string>> = {
  '#DIV/0!': 'Something is divided by zero, or by an empty cell.',
  '#NAME?': 'A name in the formula is not known here.',
  '#REF!': 'The formula points at cells that are not there.',
  '#VALUE!':
    'A value is of the wrong kind: a text where a number is needed, say, or a range where one cell is.',
  '#NUM!': 'A number is outside what its function takes, or the answer is too large or too small for a cell.',
  '#N/A': 'What was looked for was not found, or a value is missing.',
  '#NULL!': 'The two ranges have no cell in common.',
  '#SPILL!': 'The answer has more cells than there is room for.',
  '#CALC!': 'The answer would be an empty list, or a list within a list.',
  '#CYCLE!': 'The formula refers to its own cell.',
};
const OTHERWISE = 'The formula cannot be calculated: check its brackets, commas and quotation marks.';

const SWEEP_FUNCTIONS = CATALOGUE.map(functionName);

/** The error of a formula with a sentence for the person who typed it. */
export function formulaRefusal(formula: string, { error, message }: CellError): FormulaRefusal {
  const sentence =
    message ?? (error === '#NAME?' ? unknownName(formula) : undefined) ?? SENTENCES[error] ?? OTHERWISE;
  return { error, message: sentence };
}

/** The first function of the formula that does not exist, and those with a name like it. */
function unknownName(formula: string): string | undefined {
  const known = new Set([...SWEEP_FUNCTIONS, ...ENGINE_FUNCTIONS]);
  const unknown = functionsIn(lex(formula)).find((name) => !known.has(name));
  if (unknown === undefined) return undefined;
  const near = nearest(unknown, unknown.startsWith(`${NAMESPACE}.`) ? SWEEP_FUNCTIONS : [...known]);
  return `There is no function ${unknown}.${near.length > 0 ? ` Did you mean ${either(near)}?` : ''}`;
}

/** "A", "A or B", "A, B or C". */
export const either = (words: readonly string[]): string =>
  words.length < 2 ? words.join('') : `${words.slice(0, -1).join(', ')} or ${words.at(-1)}`;
