import type { FilterMeasure, Quantity } from '../catalogue/quantities';
import { at } from '../exposure/core/at';
import { exactMark, type MarkedScale } from '../exposure/stops/marks';
import { fail, isFail, type Fail } from '../exposure/core/result';
import { halfMark, readAperture } from './aperture';
import { type Meaning, meaning } from './reason';
import { leadingNumber, orList } from './text';
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
  quantity.grammar === 'aperture' ? apertureText(text, quantity, exact) : plainText(text, quantity);

function apertureText(text: string, quantity: Quantity, exact: boolean): Read {
  const marked = quantity.marks === undefined ? 'none' : exact ? 'with f/' : 'all';
  const read = readAperture(text, marked);
  if (quantity.tail === 'apart' && read !== undefined && !isFail(read) && read.reason.by === 'stops')
    return fail('unreadable', 'has tenths of its own: leave the tenths beside it blank');
  return read ?? foreignUnit(text, quantity);
}

/** A unit that measures something else, said so. */
function foreignUnit(text: string, quantity: Quantity): Fail | undefined {
  const found = leadingNumber(text);
  if (found === undefined || isFail(found)) return undefined;
  const measured = whatItMeasures(found.rest);
  if (measured === undefined) return undefined;
  const stray = quantity.strayUnits?.[found.rest];
  const extra = stray === undefined ? '' : ` (${stray})`;
  return fail('unreadable', `is ${measured}, not ${quantity.title}${extra}. Write ${orList(quantity.forms)}`);
}

function plainText(text: string, quantity: Quantity): Read {
  if (quantity.filter !== undefined) {
    const nd = neutralDensity(text, quantity.filter);
    if (nd !== undefined) return meaning(nd, 'form');
  }
  if (quantity.grammar === 'length') {
    const feet = /^(\d+)' ?(\d+(?:[.,]\d+)?)"$/.exec(text);
    if (feet)
      return meaning(
        Number(feet[1]) * unit(quantity, "'") + Number(at(feet, 2).replace(',', '.')) * unit(quantity, '"'),
        'unit',
      );
  }
  const bare =
    quantity.prefix !== undefined && text.startsWith(quantity.prefix)
      ? text.slice(quantity.prefix.length)
      : text;
  const found = leadingNumber(bare);
  if (found === undefined || isFail(found)) return found;
  const { value, form, rest } = found;
  if (form !== 'decimal' && quantity.fraction === undefined) return foreignUnit(text, quantity);
  if (rest === '') return markOr(value, quantity, 'number');
  if (rest === '%') return quantity.percent ? meaning(value / 100, 'form') : foreignUnit(text, quantity);
  if (quantity.tail === 'read' && /^[+-]/.test(rest)) return withStops(value, rest);
  if (rest.startsWith(':')) return quantity.pair ? pair(value, rest.slice(1)) : undefined;
  if (quantity.marksInText !== undefined) {
    const marked = markedText(value, rest, quantity, quantity.marksInText);
    if (marked !== undefined) return marked;
  }
  const factor = unitFactor(quantity, rest);
  if (factor === undefined) return foreignUnit(text, quantity);
  return factor === 1 ? markOr(value, quantity, 'unit') : meaning(value * factor, 'unit');
}

/** A number in the base unit: the exact value behind the mark that it names, or itself. */
function markOr(value: number, { marks }: Quantity, by: 'number' | 'unit'): Meaning<number> {
  const mark = marks && exactMark(marks, value);
  return mark === undefined ? meaning(value, by) : meaning(mark, 'mark');
}

const unit = (quantity: Quantity, word: string): number => unitFactor(quantity, word) ?? Number.NaN;

function pair(value: number, text: string): Read {
  const second = leadingNumber(text);
  if (second === undefined || isFail(second)) return second;
  if (second.rest !== '' || second.value === 0) return undefined;
  return meaning(value / second.value, 'form');
}

/** `1/60 exact`, `1/20 half`, `1/125 s +0.3`, `ISO 100 +0.3`: what follows the figure of a time or a speed. */
function markedText(value: number, rest: string, quantity: Quantity, scale: MarkedScale): Read {
  const plain = rest.replace(/^s(?:ec|econds?)?(?=[ +-])/, '').trim();
  if (plain === 'exact') return meaning(value, 'exact');
  if (plain === 'half') return halfMark(scale, value);
  if (!/^[+-]/.test(plain)) return undefined;
  const stops = leadingNumber(plain);
  if (stops === undefined || isFail(stops)) return stops;
  if (!/^(?:stops?)?$/.test(stops.rest)) return undefined;
  if (Number.isInteger(stops.value))
    return fail('unreadable', `can be read two ways. Write ${orList(quantity.forms)}`);
  return meaning((exactMark(scale, value) ?? value) * 2 ** stops.value, 'stops');
}

/** `1/4 -0.3`: a part of full power, and stops off it or on top of it. */
function withStops(value: number, rest: string): Read {
  const stops = leadingNumber(rest);
  if (stops === undefined || isFail(stops)) return stops;
  const isTail = stops.rest === '' && !Number.isInteger(stops.value) && Math.abs(stops.value) < 3;
  return isTail ? meaning(value * 2 ** stops.value, 'stops') : undefined;
}

/** `ND8` is a factor, `ND 0.9` a density, `8x` a factor: whichever way the value is wanted. */
function neutralDensity(text: string, wanted: FilterMeasure): number | undefined {
  const found = /^(?:nd ?(\d+(?:[.,]\d+)?|[.,]\d+)|(\d+(?:[.,]\d+)?) ?x|x ?(\d+(?:[.,]\d+)?))$/.exec(text);
  if (!found) return undefined;
  const digits = (found[1] ?? found[2] ?? found[3]) as string;
  const value = Number(digits.replace(',', '.'));
  const isDensity = found[1] !== undefined && /[.,]/.test(digits);
  if (wanted === 'density') return isDensity ? value : Math.log10(value);
  const factor = isDensity ? 10 ** value : value;
  return wanted === 'transmission' ? 1 / factor : factor;
}
