import { rowOf } from '../../catalogue';
import type { AnyRow } from '../../catalogue/types';
import { type AnswerCell, call as callRow } from '../../cells/call';
import { errorOfCell } from '../../explain/errorSentences';
import { errorFromText, errorNamed, isCellError } from '../../formula/errors';

/** These hosts hand over a cell that holds an error as its text. */
const OTHER_ERROR = /^#[A-Z/]+[!?]$/;
const fromHost = (cell: unknown): unknown =>
  typeof cell === 'string' && OTHER_ERROR.test(cell) ? errorNamed(cell) : errorFromText(cell);

/** In a list of answers an error has to stand as text: these hosts take no error values from a script. */
const toHost = (cell: AnswerCell): number | string => (isCellError(cell) ? cell.error : cell);

/**
 * Calls a function for a host that knows nothing but scripts: one cell comes as a lone value, a range as rows, a blank as
 * an empty text, an error as its text. A refusal is thrown, so that the host shows its sentence.
 */
export function call(id: string, given: readonly unknown[]): unknown {
  const cells = given.map((argument) =>
    Array.isArray(argument)
      ? argument.map((row: unknown) => (Array.isArray(row) ? row.map(fromHost) : fromHost(row)))
      : fromHost(argument),
  );
  const answer = callRow(rowOf(id) as AnyRow, cells);
  if (isCellError(answer)) throw new Error(`${answer.error} ${errorOfCell(answer)}`);
  return Array.isArray(answer) ? answer.map((row) => row.map(toHost)) : answer;
}
