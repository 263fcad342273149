import { CellValueType, getNumfmtParseValueFilter, numfmt, willLoseNumericPrecision } from '@univerjs/core';
import { Q, type Quantity } from '../../../catalogue/quantities';
import { readQuantity } from '../../../cells/quantityReader';
import { entryMeant } from './listEntry';

/** Of a cell that keeps what is typed as it is, such as 1/60, which would be a date elsewhere. */
export const TEXT_FORMAT = '@';
/** Digits, signs and percent: any letter in a format is one of a date, a time, a currency or a unit. */
const OF_NUMBERS = /^[#0?,./ %E+]*$/;

/** 3:1 and 1:2 are ratios: a time of day has two digits behind its colon. 5' are feet, which are no plain 5. */
const KEPT_AS_TYPED = /^(\d+:\d|.*['’′])$/;

/** The cell that a text comes into. */
export interface Target {
  /** Its number format, if it has one. */
  readonly format: string | undefined;
  /** Whether its input rule takes numbers alone. */
  readonly isNumber: boolean;
  /** What may stand in it, where its input rule takes nothing else. */
  readonly entries?: readonly string[] | undefined;
}

/** What it holds then; a format where the text brings one into a cell that has none. */
export interface PastedValue {
  readonly v: string | number | null;
  readonly t: CellValueType | null;
  readonly format?: string;
}

const text = (v: string, t = CellValueType.STRING): PastedValue => ({ v, t });
const number = (v: number): PastedValue => ({ v, t: CellValueType.NUMBER });

/** What of the catalogue a cell of this format holds, by its unit. */
export const quantitiesIn = (format: string): Quantity[] =>
  Object.values<Quantity>(Q).filter(({ shown }) => shown.input === format || shown.result === format);

/** What the format writes around a number: the f/ of f/5.6. */
const AROUND = /^(?:"([^"]*)")?[^";]*(?:"([^"]*)")?$/;

/** A text as the cell would show a number: f/5.6 as the 5.6 of a cell of f-numbers, where it means the exact stop elsewhere. */
function asShown(words: string, format: string): number | undefined {
  const [found, before = '', behind = ''] = AROUND.exec(format) ?? [];
  if (found === undefined || !words.startsWith(before) || !words.endsWith(behind)) return undefined;
  const figures = words.slice(before.length, words.length - behind.length).trim();
  return /^-?\d+(\.\d+)?$/.test(figures) ? Number(figures) : undefined;
}

/** A text with a unit as the number of a cell that takes numbers alone: 80 cm where metres stand. */
function withUnit(words: string, format: string): number | undefined {
  const read = quantitiesIn(format).map((quantity) => readQuantity(words, quantity, '', true));
  const [first] = read;
  return typeof first === 'number' && read.every((each) => each === first) ? first : undefined;
}

const isOfDates = (format: string): boolean => numfmt.isDateFormat(format);

/**
 * An entry of its list that a text means, as the rule of the cell knows it: 1/3 is no date there. Of a truth, 10% or 1.10 the cell
 * holds what sums and conditions read, as elsewhere.
 */
function listed(words: string, { entries, ...target }: Target): PastedValue | undefined {
  const entry = entries && entryMeant(words, entries);
  if (entry === undefined) return undefined;
  const read = pastedValue(entry, target);
  if (String(read.v) === entry) return read;
  const isDate = read.format !== undefined && isOfDates(read.format);
  return read.t === CellValueType.STRING || isDate ? text(entry) : undefined;
}

/**
 * What is typed into a cell, where the grid would make something else of it: as if it came from elsewhere. Undefined where the grid
 * reads it as it should: into a cell without a format all but ratios and feet, and into one of texts or dates. Of a list it is the
 * entry that is meant.
 */
export function typedValue(words: string, target: Target): PastedValue | undefined {
  const { format = 'General' } = target;
  const entry = listed(words, target);
  if (entry) return entry;
  if (format === TEXT_FORMAT) return undefined;
  const isForGrid = format === 'General' || isOfDates(format);
  if (isForGrid && !KEPT_AS_TYPED.test(words.trim())) return undefined;
  return pastedValue(words, target);
}

/**
 * A text from another program, as a cell of the grid takes it: its look, its unit and its type stay. The grid itself would make
 * a date of 1/2 wherever it comes, and put its own format in the place of the cell's. Here a cell without a format takes what
 * the text says; one of texts takes the text; one of numbers takes numbers, and what is none stays a text, which is shown as
 * what it is.
 */
export function pastedValue(words: string, target: Target): PastedValue {
  const { format = 'General', isNumber } = target;
  const trimmed = words.trim();
  if (trimmed === '') return { v: null, t: null };
  const entry = listed(words, target);
  if (entry) return entry;
  if (format === TEXT_FORMAT) return text(words);
  if (/^(true|false)$/i.test(trimmed))
    return { v: Number(trimmed.toLowerCase() === 'true'), t: CellValueType.BOOLEAN };
  const parsed = KEPT_AS_TYPED.test(trimmed) ? null : getNumfmtParseValueFilter(trimmed);
  const brings = parsed?.z ? String(parsed.z) : undefined;
  if (typeof parsed?.v === 'number') {
    if (brings === undefined)
      return willLoseNumericPrecision(trimmed) ? text(words, CellValueType.FORCE_STRING) : number(parsed.v);
    if (format === 'General') return { ...number(parsed.v), format: brings };
    const isPercent = brings.includes('%');
    if (numfmt.isDateFormat(brings) && isOfDates(format)) return number(parsed.v);
    if (OF_NUMBERS.test(brings) && (!isPercent || format.includes('%'))) return number(parsed.v);
  }
  const read = isNumber ? (asShown(trimmed, format) ?? withUnit(trimmed, format)) : undefined;
  // as many digits as a cell holds: 1400 mm are 1.4 m
  return read === undefined ? text(words) : number(Number(read.toPrecision(15)));
}
