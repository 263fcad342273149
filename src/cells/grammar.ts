import type { FilterMeasure, Quantity } from '../catalogue/quantities';
import { exactHalfMark, exactMark, type MarkedScale } from '../exposure/stops/marks';
import { fail, isFail, type Fail, type Result } from '../exposure/core/result';
import { readAperture } from './aperture';
import { leadingNumber, orList } from './text';
import { unitFactor, whatItMeasures } from './units';

/**
 * What a text stands for, by the grammar of a quantity.
 *
 * @param text - normalised, in small letters, and none of the words of the quantity.
 * @param exact - takes bare numbers as typed, though the quantity knows marks.
 * @returns a refusal whose message says what is wrong with the text; undefined where the text is no such quantity at all.
 */
export const byGrammar = (text: string, quantity: Quantity, exact: boolean): Result<number> | undefined =>
  quantity.grammar === 'aperture' ? apertureText(text, quantity, exact) : plainText(text, quantity);

function apertureText(text: string, quantity: Quantity, exact: boolean): Result<number> | undefined {
  const marked = quantity.marks === undefined ? 'none' : exact ? 'with f/' : 'all';
  return readAperture(text, marked) ?? foreignUnit(text, quantity);
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

function plainText(text: string, quantity: Quantity): Result<number> | undefined {
  if (quantity.filter !== undefined) {
    const nd = neutralDensity(text, quantity.filter);
    if (nd !== undefined) return nd;
  }
  if (quantity.grammar === 'length') {
    const feet = /^(\d+)' ?(\d+(?:[.,]\d+)?)"$/.exec(text);
    if (feet)
      return (
        Number(feet[1]) * unit(quantity, "'") +
        Number((feet[2] as string).replace(',', '.')) * unit(quantity, '"')
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
  const mark = (): number =>
    quantity.marks === undefined ? value : (exactMark(quantity.marks, value) ?? value);
  if (rest === '') return mark();
  if (rest === '%') return quantity.percent ? value / 100 : foreignUnit(text, quantity);
  if (rest.startsWith(':')) return quantity.pair ? pair(value, rest.slice(1)) : undefined;
  if (quantity.marksInText !== undefined) {
    const marked = markedText(value, rest, quantity, quantity.marksInText);
    if (marked !== undefined) return marked;
  }
  const factor = unitFactor(quantity, rest);
  if (factor === undefined) return foreignUnit(text, quantity);
  return factor === 1 ? mark() : value * factor;
}

const unit = (quantity: Quantity, word: string): number => unitFactor(quantity, word) ?? Number.NaN;

function pair(value: number, text: string): Result<number> | undefined {
  const second = leadingNumber(text);
  if (second === undefined || isFail(second)) return second;
  if (second.rest !== '' || second.value === 0) return undefined;
  return value / second.value;
}

/** `1/60 exact`, `1/20 half`, `1/125 s +0.3`, `ISO 100 +0.3`: what follows the figure of a time or a speed. */
function markedText(
  value: number,
  rest: string,
  quantity: Quantity,
  scale: MarkedScale,
): Result<number> | undefined {
  const plain = rest.replace(/^s(?:ec|econds?)?(?=[ +-])/, '').trim();
  if (plain === 'exact') return value;
  if (plain === 'half') return exactHalfMark(scale, value) ?? fail('unreadable', 'names no half-stop mark');
  if (!/^[+-]/.test(plain)) return undefined;
  const stops = leadingNumber(plain);
  if (stops === undefined || isFail(stops)) return stops;
  if (!/^(?:stops?)?$/.test(stops.rest)) return undefined;
  if (Number.isInteger(stops.value))
    return fail('unreadable', `can be read two ways. Write ${orList(quantity.forms)}`);
  return (exactMark(scale, value) ?? value) * 2 ** stops.value;
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
