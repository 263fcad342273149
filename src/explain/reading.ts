import type { Quantity } from '../catalogue/quantities';
import type { Arg } from '../catalogue/types';
import { SLACK } from '../exposure/core/numbers';
import { isFail } from '../exposure/core/result';
import { exactHalfMark, exactMark, type MarkedScale, markText, nearestMark } from '../exposure/stops/marks';
import { stopText } from '../exposure/stops/stopText';
import { readArgument, type ArgumentValue } from '../cells/argument';
import { type CellError, isCellError } from '../formula/errors';
import { BLANK, readQuantity } from '../cells/quantity';
import { normalise } from '../cells/text';
import { near, worth } from './worth';

/** One cell that went into a function, and what it was taken for. */
export interface CellReading {
  /** What is in the cell. */
  readonly given: string;
  /** What it was read as, or why it could not be read. */
  readonly meaning: string;
  /** The exact value the function got; none where it got none. */
  readonly value: ArgumentValue;
  readonly isRefused: boolean;
  /** Whether the function got nothing where it needs something: a blank, an error, or what cannot be read. */
  readonly isMissing: boolean;
}

const LONGEST = 60;

const isBlank = (cell: unknown): boolean =>
  cell === null || cell === undefined || (typeof cell === 'string' && normalise(cell) === '');

/** What a cell holds, as a person sees it there. */
export function givenText(cell: unknown): string {
  if (isBlank(cell)) return 'blank';
  if (isCellError(cell)) return cell.error;
  if (typeof cell === 'number') return near(cell, 6);
  if (typeof cell === 'boolean') return String(cell).toUpperCase();
  if (typeof cell !== 'string') return 'something else';
  const signs = [...cell.trim()];
  return signs.length > LONGEST ? `${signs.slice(0, LONGEST - 1).join('')}…` : signs.join('');
}

/** The sentence of an error; where it has none, the way to the cell that has it from the start. */
export const errorText = ({ error, message }: CellError): string =>
  message ?? `A cell that this one uses shows ${error}: put that cell right first.`;

/**
 * How one cell is read as an argument, in words. It reads with the same reader as the functions do.
 *
 * @param quantity - as for `readArgument`: settled by the caller where another argument decides it.
 * @param exact - bare numbers are taken as typed, though the quantity knows marks.
 */
export function describeReading(
  cell: unknown,
  arg: Arg,
  quantity: Quantity | undefined,
  exact = false,
): CellReading {
  const given = givenText(cell);
  if (isCellError(cell))
    return { given, meaning: errorText(cell), value: undefined, isRefused: true, isMissing: true };
  const value = readArgument(cell, arg, quantity, exact);
  if (isFail(value))
    return { given, meaning: value.message, value: undefined, isRefused: true, isMissing: true };
  if (value === BLANK) return blank(cell, given, arg, quantity);
  return {
    given,
    meaning: meaning(cell, value, arg, quantity, exact),
    value,
    isRefused: false,
    isMissing: false,
  };
}

/** An empty cell where none may stand alone: in a list it is passed over, or counts as something. */
function blank(cell: unknown, given: string, arg: Arg, quantity: Quantity | undefined): CellReading {
  const nothing = cell === 0 ? '0 counts as blank: nothing is given' : 'nothing is given';
  const counts = arg.blankMember;
  if (counts === undefined || quantity === undefined)
    return { given, meaning: nothing, value: undefined, isRefused: false, isMissing: true };
  const said = `${worth(counts, quantity)}, as nothing is given`;
  return { given, meaning: said, value: counts, isRefused: false, isMissing: false };
}

function meaning(
  cell: unknown,
  value: ArgumentValue,
  arg: Arg,
  quantity: Quantity | undefined,
  exact: boolean,
): string {
  const isNone = typeof cell === 'string' && normalise(cell).toLowerCase() === 'none';
  const isZeroBlank = cell === 0 && quantity?.blank === 'missing';
  const why = isNone ? 'for none' : isZeroBlank ? 'as 0 counts as blank' : 'as nothing is given';
  if (value === undefined) return isNone ? 'none: left out' : 'left out, as nothing is given';
  if (typeof value !== 'number' || quantity === undefined) {
    const word = typeof value === 'boolean' ? String(value).toUpperCase() : `“${value}”`;
    return isBlank(cell) || cell === 0 || isNone ? `${word}, ${why}` : word;
  }
  if (isBlank(cell) || isZeroBlank || isNone) return `${worth(value, quantity)}, ${why}`;
  if (typeof cell === 'number') return numberMeaning(value, quantity, exact);
  return textMeaning(String(cell), value, quantity);
}

/** A bare number: the mark that it names, or itself. */
function numberMeaning(value: number, quantity: Quantity, exact: boolean): string {
  const { marks } = quantity;
  if (marks === undefined || exact) return asItStands(value, quantity);
  // A mark as it is typed, or an exact number that another cell worked out.
  return (
    markNamed(marks, value, quantity) ?? tenthNamed(marks, value, quantity) ?? asItStands(value, quantity)
  );
}

/** Says so where a reader might expect a mark: of 11.3 beside the marks, and of 11 in a function that takes no marks. */
function asItStands(value: number, quantity: Quantity): string {
  const said = worth(value, quantity);
  if (quantity.marks !== undefined) return `${said}, as it stands`;
  const mark = quantity.marksInText && exactMark(quantity.marksInText, value);
  return mark === undefined || mark === value ? said : `${said}, as it stands`;
}

const BARE = /^(?:f ?\/? ?|iso ?)?[\d.,/]+$/;
const WITH_STOPS = /[+-]|half$|[⁰¹²³⁴-⁹]$/;

/** A text: what it comes to in the unit that the function counts in, and the mark where it is one. */
function textMeaning(text: string, value: number, quantity: Quantity): string {
  const said = worth(value, quantity);
  const word = normalise(text).toLowerCase();
  if (quantity.words !== undefined && Object.hasOwn(quantity.words, word)) return `${said}, for ${word}`;
  if (word.endsWith('exact')) return `${said}, exactly as written`;
  const scale = quantity.marks ?? quantity.marksInText;
  if (scale === undefined) return said;
  const isBare = BARE.test(word);
  const namesMark =
    quantity.marks !== undefined || WITH_STOPS.test(word) || (scale === 'aperture' && !isBare);
  const named = namesMark
    ? (markNamed(scale, value, quantity) ?? tenthNamed(scale, value, quantity))
    : undefined;
  return named ?? (isBare ? asItStands(value, quantity) : said);
}

/** The mark whose exact value this is. */
function markNamed(scale: MarkedScale, value: number, quantity: Quantity): string | undefined {
  const isAt = (exact: number | undefined): boolean => Math.abs((exact ?? NaN) - value) <= SLACK * value;
  const third = nearestMark(scale, value, 'third');
  if (!isFail(third) && isAt(exactMark(scale, third.marked)))
    return markMeaning(scale, third.marked, value, quantity);
  const half = nearestMark(scale, value, 'half');
  return !isFail(half) && isAt(exactHalfMark(scale, half.marked))
    ? markMeaning(scale, half.marked, value, quantity)
    : undefined;
}

/** A full stop and whole tenths above it. */
function tenthNamed(scale: MarkedScale, value: number, quantity: Quantity): string | undefined {
  const text = stopText(value, scale, 'tenth');
  if (isFail(text)) return undefined;
  const back = readQuantity(text, quantity, '');
  return typeof back === 'number' && Math.abs(back - value) <= SLACK * value
    ? `${text}, ${worth(value, quantity)}`
    : undefined;
}

/** "the mark f/11, 11.31"; where the mark says its exact value, only the mark. */
function markMeaning(scale: MarkedScale, marked: number, value: number, quantity: Quantity): string {
  const name = `the mark ${markText(scale, marked)}`;
  return Math.abs(marked - value) <= SLACK * value ? name : `${name}, ${worth(value, quantity)}`;
}
