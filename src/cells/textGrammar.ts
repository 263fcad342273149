import type { Quantity } from '../catalogue/quantities';
import { exactMark, writtenMark } from '../exposure/stops/marks';
import { fail, isFail, type Fail } from '../exposure/core/result';
import { groupsOf, type Maybe } from '../formula/patternGroups';
import { halfMark, readAperture } from './aperture';
import { bareOf, beyondLimit, readBare } from './bareNumber';
import { filterNamed } from './filter';
import { readInches } from './inches';
import { markMeaning, type Meaning, meaning } from './reason';
import { tailStops } from './tailStops';
import { isParted, type Leading, leadingNumber, orList, twoWays } from './textParts';
import { unitFactor, whatItMeasures } from './units';

/** What a text stands for and why, or what is wrong with it; undefined where it is no such quantity at all. */
type Read = Meaning<number> | Fail | undefined;

/**
 * What a text stands for, by the grammar of a quantity.
 *
 * @param text - normalised, in small letters, and none of the words of the quantity.
 * @param exact - takes bare numbers as typed, though the quantity knows marks.
 * @returns the value with the reason for it, or a refusal whose message says what is wrong with the text; undefined where the text is no such quantity at all.
 */
export const byGrammar = (text: string, quantity: Quantity, exact: boolean): Read =>
  quantity.grammar === 'aperture' ? apertureText(text, quantity, exact) : plainText(text, quantity, exact);

function apertureText(text: string, quantity: Quantity, exact: boolean): Read {
  const found = readAperture(text);
  if (found === undefined) return foreignUnit(text, quantity);
  if (isFail(found)) return found;
  const { prefix, figure, read } = found;
  if (quantity.tails === 'apart' && read !== undefined && !isFail(read) && read.reason.by === 'stops')
    return fail('unreadable', 'has tenths of its own: leave the tenths beside it blank');
  if (read !== undefined) return read;
  return prefix === '' ? bare(figure, quantity, exact) : believed(figure, quantity, 'number');
}

/** A number that stands alone. */
const bare = (value: number, quantity: Quantity, exact: boolean): Read =>
  value === 0 ? meaning(0, 'number') : readBare(value, quantity, bareOf(quantity, exact, true));

/** A number with its unit: the exact value behind the mark that it names, or itself. */
function believed(value: number, quantity: Quantity, by: 'number' | 'unit' | 'form'): Read {
  const beyond = quantity.limits?.always ? beyondLimit(value, quantity) : undefined;
  if (beyond !== undefined) return beyond;
  const mark = quantity.marks && writtenMark(quantity.marks, value);
  return mark === undefined ? meaning(value, by) : markMeaning(mark);
}

/** A unit that measures something else, said so. */
function foreignUnit(text: string, quantity: Quantity): Fail | undefined {
  const found = leadingNumber(text);
  if (found === undefined || isFail(found)) return undefined;
  const unit = found.rest.trim();
  const measured = whatItMeasures(unit);
  // where the unit is one of its own, it is the number that is not read
  if (measured === undefined || factorOf(unit, quantity) !== undefined) return undefined;
  const stray = quantity.strayUnits?.[unit];
  const extra = stray === undefined ? '' : ` (${stray})`;
  return fail('unreadable', `is ${measured}, not ${quantity.title}${extra}. Write ${orList(quantity.forms)}`);
}

function plainText(text: string, quantity: Quantity, exact: boolean): Read {
  const named = quantity.filter && filterNamed(text, quantity.filter);
  if (named !== undefined) return isFail(named) ? named : meaning(named, 'form');
  const inches = quantity.grammar === 'length' ? readInches(text, quantity) : undefined;
  if (inches !== undefined) return isFail(inches) ? inches : meaning(inches, 'unit');
  const prefix = prefixOf(text, quantity);
  const found = leadingNumber(text.slice(prefix.length));
  if (found === undefined || isFail(found)) return found;
  const second = /^ ?: ?(.*)/.exec(found.rest)?.[1];
  if (second !== undefined) return quantity.pair ? pair(found, second, quantity) : undefined;
  return amount(found, prefix, quantity, exact) ?? foreignUnit(text, quantity);
}

/** A word that stands right before a number. */
const prefixOf = (text: string, { prefixes }: Quantity): string =>
  prefixes?.map((word) => (text.startsWith(`${word} `) ? `${word} ` : word)).find((word) => text.startsWith(word) && /^[\d.]/.test(text.slice(word.length))) ?? ''; // prettier-ignore

const PER_CENT = 100;

/** One of a unit in the base unit; undefined where the quantity has no such unit. */
function factorOf(unit: string, quantity: Quantity): number | undefined {
  if (unit === '%') return quantity.percent && 1 / PER_CENT;
  return unit === '' ? 1 : unitFactor(quantity, unit);
}

/** A number, its unit, and `exact`, `half` or stops after it. */
const AFTER = /^ ?(.*?)(?: ?\b(exact|half)| ?([+-] ?[\d.].*))?$/;

function amount(found: Leading, prefix: string, quantity: Quantity, exact: boolean): Read {
  const [unit, word, tail] = groupsOf<[string, Maybe, Maybe]>(AFTER.exec(found.rest) as RegExpExecArray);
  const factor = factorOf(unit, quantity);
  if (factor === undefined || !isWellFormed(found, factor, quantity)) return undefined;
  if (isParted(found.digits) && inThousands(quantity, factor)) return twoWays(found.digits);
  const isBare = unit === '' && prefix === '';
  const isPercent = unit === '%';
  const value = isPercent ? found.value / PER_CENT : found.value * factor;
  if (tail !== undefined)
    return withTail(
      value,
      tail,
      isBare ? (found.rest.startsWith(' ') ? 'spaced' : 'joined') : 'unit',
      quantity,
    );
  if (word !== undefined) return marked(value, word, quantity);
  return isBare ? bare(value, quantity, exact) : believed(value, quantity, isPercent ? 'form' : 'unit');
}

const inThousands = ({ thousands = [] }: Quantity, factor: number): boolean =>
  thousands === 'all' || thousands.includes(factor);

/** Whether a number is written as one of the quantity may be. */
function isWellFormed({ form, value, over, under }: Leading, factor: number, quantity: Quantity): boolean {
  if (form === 'decimal') return true;
  if (form === 'power') return quantity.powers === true;
  const { fraction } = quantity;
  if (fraction === 'stops') return isFractionOfStops(form, value, over, under);
  return (
    fraction !== undefined &&
    form === 'fraction' &&
    // nobody means a fraction of a millisecond
    factor >= 1 &&
    (fraction === 'any' || over < under) &&
    divisor(over, under) <= 1
  );
}

/** What a stop is divided into: halves, thirds and so on, tenths, twentieths. */
const PARTS_OF_A_STOP = [2, 3, 4, 5, 6, 8, 10, 20];

function isFractionOfStops(form: Leading['form'], value: number, over: number, under: number): boolean {
  if (!PARTS_OF_A_STOP.includes(under)) return false;
  return form === 'mixed' ? over < under : Math.abs(value) < 3;
}

/** The greatest common divisor, or a part of 1 where one of them is not whole. */
const divisor = (a: number, b: number): number => (b < 1e-9 ? a : divisor(b, a % b));

function pair(first: Leading, text: string, quantity: Quantity): Read {
  const second = leadingNumber(text);
  if (second === undefined || isFail(second)) return second;
  for (const { digits } of [first, second]) if (isParted(digits)) return twoWays(digits);
  const isPlain =
    first.form === 'decimal' && second.form === 'decimal' && !second.signed && second.rest === '';
  // 3:05 is a time of day
  if (!isPlain || second.value === 0 || /^0\d/.test(second.digits)) return undefined;
  return believed(first.value / second.value, quantity, 'form');
}

/** `1/60 exact`, `1/20 half`. */
function marked(value: number, word: string, { marksInText }: Quantity): Read {
  if (marksInText === undefined) return undefined;
  return word === 'exact' ? meaning(value, 'exact') : halfMark(marksInText, value);
}

/** What stands before a tail: a unit or a prefix, or a bare number with or without a space. */
type Before = 'unit' | 'spaced' | 'joined';

/** `1/125 s +0.3`, `ISO 100 +0.3`, `1/60 +1/3`: the stops after a time, a speed or an energy. */
function withTail(value: number, tail: string, before: Before, quantity: Quantity): Read {
  const { tails, marksInText, forms } = quantity;
  if (tails === undefined) return undefined;
  const stops = tailStops(tail);
  const isAfter = tails === 'any' || (tails === 'space' && before === 'spaced');
  const isClear = before === 'unit' || (isAfter && !maybeSecond(value, tail));
  if (stops !== undefined && isClear) {
    const mark = marksInText && exactMark(marksInText, value);
    return meaning((mark ?? value) * 2 ** stops, 'stops');
  }
  const second = leadingNumber(tail);
  if (isFail(second)) return second;
  return fail(
    'unreadable',
    `can be read two ways. Write ${orList(forms)}, and stops after the unit as in ${forms[1]} +1/3`,
  );
}

/** A space after the sign makes a sum of it; and 1/4 -1/8 are two times, as times that belong together lie within a factor of ten. */
function maybeSecond(value: number, tail: string): boolean {
  const second = /^.1\/([248])$/.exec(tail)?.[1];
  return tail.charAt(1) === ' ' || value * 10 > 1 / Number(second);
}
