import type { BookRule } from '../book/book';
import { quotedText } from '../formula/quotedText';
import type { Area } from '../formula/area';
import type { Accepts } from './template';

/** Spreadsheets compare a number with "from … to" only, so that above 0 begins a hair above it. */
const JUST_ABOVE = 1e-9;

/** The one place where what a cell accepts becomes the rule of an area. */
export function bookRule(area: Area, { list, least, above, most, whole, message }: Accepts): BookRule {
  const common = { areas: [area], blank: true, refusal: message, strict: true };
  if (list) return { ...common, kind: 'list', bounds: [quotedText(list.join(','))] };
  const kind = whole ? 'whole' : 'decimal';
  const from = above === undefined ? least : above + JUST_ABOVE;
  if (from === undefined) return { ...common, kind, compare: 'lessThanOrEqual', bounds: [String(most)] };
  if (most === undefined) return { ...common, kind, compare: 'greaterThanOrEqual', bounds: [String(from)] };
  return { ...common, kind, compare: 'between', bounds: [String(from), String(most)] };
}
