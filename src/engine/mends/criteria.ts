/**
 * What COUNTIF, SUMIF, AVERAGEIF and their kind ask of a cell, in one place for all of them. Microsoft's help of COUNTIF and
 * COUNTIFS: an operator may stand in front (">5.60"); of texts, * and ? stand for others and letters' case does not count; a
 * reference to an empty cell is 0; "=" is an empty cell, "" also an empty text, and "<>" any cell that is not empty.
 */
import { type BaseValueObject, ERROR_TYPE_SET, type ErrorType } from '@univerjs/engine-formula';
import { numberInText } from './coerce';
import { isSame } from './digits';
import type { Cells } from './cellsByValue';
import { isError } from './nativeFunction';
import { type Cell, cellOf, isOfOneKind, keyOf, order, type Plain } from './sortOrder';
import { hasWildcards, wholePattern } from './wildcards';

export interface Criterion {
  holds(cell: Cell): boolean;
  /** Where it holds, if that can be looked up. */
  places?(cells: Cells): readonly number[];
}

const sorted = (places: readonly number[]): number[] => [...places].sort((a, b) => a - b);

/** A number, or a text that stands for it: COUNTIF of 5 counts "5". */
const isNumber = (number: number): Criterion => ({
  holds: (cell) =>
    typeof cell === 'number'
      ? isSame(cell, number)
      : typeof cell === 'string' && isSame(numberInText(cell) ?? Number.NaN, number),
  places: (cells) => sorted([...cells.placesOf(keyOf(number)), ...cells.placesOfTextFor(number)]),
});
const isPlain = (value: Plain): Criterion => ({
  holds: (cell) => !isError(cell) && keyOf(cell) === keyOf(value),
  places: (cells) => cells.placesOf(keyOf(value)),
});
const isErrorOf = (type: string): Criterion => ({
  holds: (cell) => isError(cell) && cell.getErrorType() === type,
});
const BLANK = isPlain(null);
const BLANK_OR_EMPTY: Criterion = {
  holds: (cell) => cell === null || cell === '',
  places: (cells) => sorted([...cells.placesOf(null), ...cells.placesOf('')]),
};
const not = ({ holds }: Criterion): Criterion => ({ holds: (cell) => !holds(cell) });

function isText(text: string): Criterion {
  if (!hasWildcards(text)) return isPlain(text);
  const pattern = wholePattern(text);
  return { holds: (cell) => typeof cell === 'string' && pattern.test(cell) };
}

/** What the text of a criterion stands for. */
function meant(text: string): Cell | { readonly error: string } {
  const word = text.trim().toUpperCase();
  if (word === 'TRUE' || word === 'FALSE') return word === 'TRUE';
  if (ERROR_TYPE_SET.has(word as ErrorType)) return { error: word };
  return numberInText(text) ?? text;
}

function isMeant(text: string): Criterion {
  const value = meant(text);
  if (typeof value === 'number') return isNumber(value);
  if (typeof value === 'string') return isText(value);
  if (typeof value === 'boolean') return isPlain(value);
  return isErrorOf((value as { error: string }).error);
}

const SIGNS: Readonly<Record<string, (sign: number) => boolean>> = {
  '<': (sign) => sign < 0,
  '<=': (sign) => sign <= 0,
  '>': (sign) => sign > 0,
  '>=': (sign) => sign >= 0,
};
/** More and less hold among values of one kind alone. */
function isBeyond(sign: string, text: string): Criterion {
  const value = meant(text);
  const is = SIGNS[sign];
  if (!is || text === '' || (typeof value === 'object' && value !== null)) return { holds: () => false };
  return {
    holds: (cell) => !isError(cell) && cell !== null && isOfOneKind(cell, value) && is(order(cell, value)),
  };
}

const FORM = /^(<=|>=|<>|=|<|>)?([^]*)$/;

export function criterion(value: BaseValueObject): Criterion {
  const given = cellOf(value);
  if (isError(given)) return isErrorOf(given.getErrorType());
  if (typeof given !== 'string') return typeof given === 'boolean' ? isPlain(given) : isNumber(given ?? 0);
  const [, sign, text = ''] = FORM.exec(given) ?? [];
  if (sign === undefined) return text === '' ? BLANK_OR_EMPTY : isMeant(text);
  if (sign === '=') return text === '' ? BLANK : isMeant(text);
  if (sign === '<>') return not(text === '' ? BLANK : isMeant(text));
  return isBeyond(sign, text);
}
