import { CATALOGUE, NAMESPACE } from '../../catalogue';
import { functionName } from '../../catalogue/words';
import { functionsIn } from '../../formula/calls';
import type { CellError, ErrorCode } from '../../formula/errors';
import { lex } from '../../formula/lex';
import { ENGINE_FUNCTIONS } from '../../engine/natives';
import { errorMeaning } from '../../explain/errorSentences';
import { nearest } from '../../formula/nearestNames';

export interface FormulaRefusal {
  readonly error: ErrorCode;
  readonly message: string;
}

const SWEEP_FUNCTIONS = CATALOGUE.map(functionName);

/** The error of a formula with a sentence for the person who typed it. */
export function formulaRefusal(formula: string, { error, message }: CellError): FormulaRefusal {
  const sentence = message ?? (error === '#NAME?' ? unknownName(formula) : undefined) ?? errorMeaning(error);
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
