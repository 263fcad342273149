import type { Quantity } from '../catalogue/quantities';
import type { Arg } from '../catalogue/types';
import { SLACK } from '../exposure/core/numbers';
import { exactMark } from '../exposure/stops/marks';
import { type MarkName, nameText } from '../exposure/stops/stopText';
import { type ArgumentValue, readWithMark } from '../cells/argument';
import { isCellError } from '../formula/errors';
import type { Absence, Meaning, Reason } from '../cells/reason';
import { normalise } from '../cells/textParts';
import { errorOfCell } from './errorSentences';
import { near, worth } from './figures';

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

const refused = (given: string, why: string): CellReading => ({
  given,
  meaning: why,
  value: undefined,
  isRefused: true,
  isMissing: true,
});

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
  if (isCellError(cell)) return refused(given, errorOfCell(cell));
  const reading = readWithMark(cell, arg, quantity, exact);
  if ('refused' in reading) return refused(given, reading.refused.message);
  if ('missing' in reading) return missing(reading.missing, given, arg, quantity);
  return {
    given,
    meaning: meaning(reading, quantity),
    value: reading.value,
    isRefused: false,
    isMissing: false,
  };
}

/** Nothing where none may stand alone: in a list it is passed over, or counts as something. */
function missing(why: Absence, given: string, arg: Arg, quantity: Quantity | undefined): CellReading {
  const nothing = why === 'zero' ? '0 counts as blank: nothing is given' : 'nothing is given';
  const counts = arg.blankMember;
  if (counts === undefined || quantity === undefined)
    return { given, meaning: nothing, value: undefined, isRefused: false, isMissing: true };
  const said = `${worth(counts, quantity)}, as nothing is given`;
  return { given, meaning: said, value: counts, isRefused: false, isMissing: false };
}

function meaning({ value, reason }: Meaning<ArgumentValue>, quantity: Quantity | undefined): string {
  if (value === undefined) return reason.by === 'none' ? 'none: left out' : 'left out, as nothing is given';
  if (typeof value !== 'number' || quantity === undefined) {
    const word = typeof value === 'boolean' ? String(value).toUpperCase() : `“${value}”`;
    return `${word}${because(reason)}`;
  }
  return numberMeaning(value, reason, quantity);
}

/** What is added to a value where it is not what the cell says in so many words. */
function because(reason: Reason): string {
  switch (reason.by) {
    case 'nothing':
      return ', as nothing is given';
    case 'zero':
      return ', as 0 counts as blank';
    case 'none':
      return ', for none';
    case 'word':
      return `, for ${reason.word}`;
    case 'exact':
      return ', exactly as written';
    default:
      return '';
  }
}

/** What a number comes to in the unit that the function counts in, and the mark where it is one. */
function numberMeaning(value: number, reason: Reason, quantity: Quantity): string {
  if ('mark' in reason && reason.mark !== undefined) return markWords(reason.mark, value, quantity);
  if (reason.by === 'number' || reason.by === 'decimals') return asItStands(value, quantity);
  return `${worth(value, quantity)}${because(reason)}`;
}

/** Says so where a reader might expect a mark: of 11.3 beside the marks, and of 11 in a function that takes no marks. */
function asItStands(value: number, quantity: Quantity): string {
  const said = worth(value, quantity);
  if (quantity.marks !== undefined) return `${said}, as it stands`;
  const mark = quantity.marksInText && exactMark(quantity.marksInText, value);
  return mark === undefined || mark === value ? said : `${said}, as it stands`;
}

/** "the mark f/11, 11.31", "f/11 +0.3, 12.55"; where the mark says its exact value, only the mark. */
function markWords(mark: MarkName, value: number, quantity: Quantity): string {
  const name = `${mark.tenths === 0 ? 'the mark ' : ''}${nameText(mark)}`;
  const isAll = mark.tenths === 0 && Math.abs(mark.figure - value) <= SLACK * value;
  return isAll ? name : `${name}, ${worth(value, quantity)}`;
}
