import type { CellError } from '../formula/errors';

/** What a spreadsheet's own errors mean. A SWEEP function's errors bring sentences of their own. */
const MEANINGS: Readonly<Record<string, string>> = {
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

/** What an error means, to whoever looks at the formula that gives it. */
export const errorMeaning = (error: string): string => MEANINGS[error] ?? OTHERWISE;

/**
 * What an error means to a formula that uses the cell with it: its own sentence; where it has none, the way to the cell that has
 * it from the start.
 */
export const errorOfCell = ({ error, message }: CellError): string =>
  message ?? `A cell that this one uses shows ${error}: put that cell right first.`;
