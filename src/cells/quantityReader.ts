import type { Quantity } from '../catalogue/quantities';
import { fail, isFail, type Fail, type Result } from '../exposure/core/result';
import { spoken } from '../exposure/core/numbers';
import { bareNumber, bareOf, readBare } from './bareNumber';
import { commonText } from './quickText';
import { byGrammar } from './textGrammar';
import { meaning, type Reading } from './reason';
import { normalise, orList, quote } from './textParts';
import { unitFactor } from './units';

/** An empty cell. */
export const BLANK = Symbol('blank');
export type Blank = typeof BLANK;

const unreadable = (name: string, quantity: Quantity, text: string): Fail =>
  fail(
    'unreadable',
    `${name}: ${quote(text)} cannot be read as ${quantity.title}. Write ${orList(quantity.forms)}.`,
  );

/** A number in a cell, and why it is read so. What a spreadsheet made of a fraction is refused. */
function readNumber(value: number, quantity: Quantity, name: string, exact: boolean): Reading<number> {
  if (value === 0) return quantity.blank === 'missing' ? { missing: 'zero' } : meaning(0, 'number');
  const read = readBare(value, quantity, bareOf(quantity, exact));
  if (!isFail(read)) return read;
  const came = Number.isFinite(value) ? `${name}: ${spoken(value, 6)}` : name;
  return { refused: fail('unreadable', `${came} ${read.message}.`) };
}

const NOTHING: Reading<number> = { missing: 'nothing' };
const ZERO_FOR_NOTHING = meaning(0, 'nothing');
const blankReading = ({ blank }: Quantity): Reading<number> =>
  blank === 'missing' ? NOTHING : ZERO_FOR_NOTHING;

/** The unit behind a large M, which may be that of milli, or a slip: the s of 1 Ms, the m/s of 2 Mm/s. */
const afterLargeM = (text: string): string | undefined => /[\d ]M([a-z][a-z/]*)/.exec(text)?.[1];

/** A text in a cell, whatever its form, and why it is read so. */
function readText(given: string, quantity: Quantity, name: string, exact: boolean): Reading<number> {
  const text = normalise(given);
  if (text === '') return blankReading(quantity);
  const unit = afterLargeM(text);
  if (unit !== undefined && [unit, `m${unit}`].every((word) => unitFactor(quantity, word) !== undefined))
    return {
      refused: fail('unreadable', `${name}: ${quote(given)} can be read two ways: m${unit} or ${unit}?`),
    };
  const word = text.toLowerCase();
  const worded = quantity.words?.[word];
  // every record has names of its own, such as "constructor": no number stands behind those
  if (typeof worded === 'number') return { value: worded, reason: { by: 'word', word } };
  const read = byGrammar(word, quantity, exact);
  if (read === undefined) return { refused: unreadable(name, quantity, given) };
  if (isFail(read)) return { refused: fail('unreadable', `${name}: ${quote(given)} ${read.message}.`) };
  return read.value === 0 && quantity.blank === 'missing' ? { missing: 'zero' } : read;
}

/** Dates come from hosts that run us in a world of their own, so that `instanceof` does not know them. */
const isDate = (cell: unknown): boolean => Object.prototype.toString.call(cell) === '[object Date]';

/** What a cell holds, in words. */
export function describe(cell: unknown): string {
  if (typeof cell === 'string') return quote(cell);
  if (typeof cell === 'number') return Number.isFinite(cell) ? String(cell) : 'a number without end';
  if (typeof cell === 'boolean') return String(cell).toUpperCase();
  if (isDate(cell)) return 'a date';
  return 'something that is neither a number nor a text';
}

/**
 * One cell as a quantity in its base unit, and why it is read so.
 *
 * @param cell - what the host passes for the cell.
 * @param name - the argument's name, for messages.
 * @param exact - takes bare numbers as typed, though the quantity knows marks.
 * @returns the number with its reason; `missing` for an empty cell of a quantity that cannot be 0; or a refusal in words.
 */
export function readingOf(cell: unknown, quantity: Quantity, name: string, exact = false): Reading<number> {
  if (typeof cell === 'number') return readNumber(cell, quantity, name, exact);
  if (cell === null || cell === undefined) return blankReading(quantity);
  if (typeof cell === 'string') return readText(cell, quantity, name, exact);
  const { date } = quantity.limits ?? {};
  if (date !== undefined && isDate(cell))
    return { refused: fail('unreadable', `${name}: it looks like a date, ${date}.`) };
  const wanted = `not ${quantity.title}. Write ${orList(quantity.forms)}.`;
  return { refused: fail('unreadable', `${name} holds ${describe(cell)}, ${wanted}`) };
}

/** What a reading comes to, without its reason. */
export const valueOf = <Value>(reading: Reading<Value>): Value | Blank | Fail =>
  'value' in reading ? reading.value : 'refused' in reading ? reading.refused : BLANK;

/** The number of a cell in one of the forms that most cells have; NaN for every other, and where there is more to say. */
export const quickNumber = (cell: unknown, quantity: Quantity, exact: boolean): number =>
  typeof cell === 'number'
    ? bareNumber(cell, bareOf(quantity, exact))
    : typeof cell === 'string'
      ? commonText(cell, quantity, bareOf(quantity, exact, true))
      : NaN;

/** The same number as that of `readingOf`, without the reason and in less time; `BLANK` where it is missing. */
export function readQuantity(
  cell: unknown,
  quantity: Quantity,
  name: string,
  exact = false,
): Result<number> | Blank {
  const quick = quickNumber(cell, quantity, exact);
  return Number.isNaN(quick) ? valueOf(readingOf(cell, quantity, name, exact)) : quick;
}
