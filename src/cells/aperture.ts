import { exactMark, type MarkedScale, markText, nearestMark, writtenHalfMark } from '../exposure/stops/marks';
import { stopText } from '../exposure/stops/stopText';
import { fail, isFail, type Fail } from '../exposure/core/result';
import { groupsOf, type Maybe } from '../formula/patternGroups';
import { markMeaning, type Meaning, meaning } from './reason';
import { MOST_STOPS, tailStops } from './tailStops';
import { decimal, FIGURE, leadingNumber } from './textParts';

const TENTHS_ABOVE = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const FORM = new RegExp(`^(f ?/ ?|f ?(?=\\d))?(${FIGURE})(.*)$`);
/** How a lens names its widest aperture. */
const ON_LENS = /^1 ?: ?(\d+(?:[.,]\d+)?)$/;

/** An f-number taken apart: the figure, what it is marked with, and what is written after it. */
export interface Aperture {
  readonly prefix: string;
  readonly figure: number;
  /** Undefined where nothing follows. */
  readonly read: Meaning<number> | Fail | undefined;
}

/**
 * The f-number that a text stands for: 11, f/11, f/8 2/3, f/11+0.3, f/11 .3, f/16 -1/3, 11³, 11 exact, f/13 half.
 *
 * With stops added or taken away the figure is a mark, as on a meter or a lens ring. Whether a figure alone is one is for the
 * caller to say.
 *
 * @returns a refusal whose message says what is wrong with the text; undefined where the text is no f-number at all.
 */
export function readAperture(text: string): Aperture | Fail | undefined {
  const lens = ON_LENS.exec(text);
  if (lens) return fail('unreadable', `is how a lens names its widest aperture: write f/${lens[1]}`);
  const found = FORM.exec(text);
  if (!found) return undefined;
  const [prefix = '', digits, after] = groupsOf<[Maybe, string, string]>(found);
  const figure = decimal(digits);
  if (isFail(figure)) return figure;
  if (after === '') return { prefix, figure, read: undefined };
  const read = withAfter(after, prefix, digits, figure);
  return read && { prefix, figure, read };
}

function withAfter(
  after: string,
  prefix: string,
  digits: string,
  figure: number,
): Meaning<number> | Fail | undefined {
  const rest = after.trim();
  if (rest === 'exact') return meaning(figure, 'exact');
  if (rest === 'half') return halfMark('aperture', figure);
  const raised = after.length === 1 ? TENTHS_ABOVE.indexOf(after) : -1;
  const stops = raised >= 0 ? raised / 10 : /^[ +-]/.test(after) ? tailStops(rest) : undefined;
  const mark = exactMark('aperture', figure) ?? figure;
  if (stops === undefined) return notStops(after, digits, figure, mark);
  if (raised < 0 && prefix === '') return fail('unreadable', `needs its f/: write f/${digits}${after}`);
  return meaning(mark * 2 ** (stops / 2), 'stops');
}

/** `f/13 half`, `1/20 half`: the half-stop mark, where the two series share a figure. */
export function halfMark(scale: MarkedScale, figure: number): Meaning<number> | Fail {
  const mark = writtenHalfMark(scale, figure);
  return mark === undefined ? fail('unreadable', 'names no half-stop mark') : markMeaning(mark);
}

/** What somebody meant by a number after the figure that is no tail of stops: a range, whole stops, or many tenths. */
function notStops(after: string, digits: string, figure: number, mark: number): Fail | undefined {
  const second = leadingNumber(
    after.trim().replace(/^([-~—]) ?(?:f ?\/? ?)?/, (_, dash: string) => (dash === '-' ? dash : '-')),
  );
  if (second === undefined || isFail(second)) return second;
  const { value, form, signed, rest } = second;
  if (!signed || rest !== '' || form === 'fraction') return undefined;
  const size = Math.abs(value);
  if (value < 0 && (size >= figure || (size >= MOST_STOPS && !Number.isInteger(size))))
    return fail('unreadable', 'is a range, as on a zoom lens: write the aperture in use');
  if (Number.isInteger(size)) return wholeStops(digits, mark, value);
  const text = size < MOST_STOPS ? stopText(mark * 2 ** (value / 2)) : undefined;
  return text === undefined || isFail(text)
    ? undefined
    : fail('unreadable', `has more than tenths after it: write ${text}`);
}

/** f/11+3: three tenths, or three stops? */
function wholeStops(digits: string, mark: number, stops: number): Fail {
  const far = nearestMark('aperture', mark * 2 ** (stops / 2), 'third');
  const sign = stops < 0 ? '-' : '+';
  const tenths = Math.abs(stops) < 10 ? `0.${Math.abs(stops)}` : `${Math.abs(stops)}/10`;
  return fail(
    'unreadable',
    `can be read two ways: write f/${digits}${sign}${tenths}${isFail(far) ? '' : `, or ${markText('aperture', far.marked)}`}`,
  );
}
