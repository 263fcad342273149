import { exactHalfMark, exactMark, type MarkedScale, markText, nearestMark } from '../exposure/stops/marks';
import { fail, isFail, type Fail, type Result } from '../exposure/core/result';
import { groupsOf, type Maybe } from '../formula/groups';
import { type Meaning, meaning } from './reason';
import { decimal, leadingNumber } from './text';

const TENTHS_ABOVE = '⁰¹²³⁴⁵⁶⁷⁸⁹';
const NUMBER = '(?:\\d+(?:[.,]\\d+)?|[.,]\\d+)';
const FORM = new RegExp(`^(f ?/? ?)?(${NUMBER})(.*)$`, 'i');

/**
 * The f-number that a text stands for: 11, f/11, f/8 2/3, f/11+0.3, f/11 .3, f/16 -1/3, 11³, 11 exact, f/13 half.
 *
 * With stops added or taken away the figure is a mark, as on a meter or a lens ring. A figure alone is the mark behind it
 * or as typed.
 *
 * @param marked - which figures alone are marks: all, those written with f/, or none.
 * @returns the exact f-number with the reason for it, or a refusal whose message says what is wrong with the text;
 *   undefined where the text is no f-number at all.
 */
export function readAperture(
  text: string,
  marked: 'all' | 'with f/' | 'none',
): Meaning<number> | Fail | undefined {
  const found = FORM.exec(text);
  if (!found) return undefined;
  const [prefix = '', figure, after] = groupsOf<[Maybe, string, string]>(found);
  const number = decimal(figure);
  if (isFail(number)) return number;
  const mark = exactMark('aperture', number);
  const rest = after.trim();
  if (rest === '') {
    if (marked === 'with f/' && prefix === '') return meaning(number, 'decimals');
    return mark === undefined || marked === 'none' ? meaning(number, 'number') : meaning(mark, 'mark');
  }
  if (/^exact$/i.test(rest)) return meaning(number, 'exact');
  if (/^half$/i.test(rest)) return halfMark('aperture', number);
  const raised = TENTHS_ABOVE.indexOf(rest);
  const isRaised = raised >= 0 && rest.length === 1;
  const stops = isRaised ? raised / 10 : stopsAfter(rest, prefix, figure, number);
  if (stops === undefined || isFail(stops)) return stops;
  return meaning((mark ?? number) * 2 ** (stops / 2), 'stops');
}

/** `f/13 half`, `1/20 half`: the half-stop mark, where the two series share a figure. */
export function halfMark(scale: MarkedScale, figure: number): Meaning<number> | Fail {
  const mark = exactHalfMark(scale, figure);
  return mark === undefined ? fail('unreadable', 'names no half-stop mark') : meaning(mark, 'mark');
}

/** Stops written behind the figure: +0.3, +3/10, -1/3, 2/3, .3. A whole number there is a slip, and refused. */
function stopsAfter(
  rest: string,
  prefix: string,
  figure: string,
  number: number,
): Result<number> | undefined {
  const stops = leadingNumber(rest);
  if (stops === undefined) return undefined;
  if (isFail(stops)) return stops;
  if (stops.rest !== '' && !/^stops?$/i.test(stops.rest)) return undefined;
  if (stops.form === 'decimal' && Number.isInteger(stops.value))
    return stops.signed ? wholeStops(figure, number, stops.value) : undefined;
  if (prefix === '')
    return fail('unreadable', `needs its f/: write f/${figure}${stops.signed ? '' : ' '}${rest}`);
  return stops.value;
}

/** f/11+3: three tenths, or three stops? */
function wholeStops(figure: string, number: number, stops: number): Fail {
  const far = nearestMark('aperture', (exactMark('aperture', number) ?? number) * 2 ** (stops / 2), 'third');
  const sign = stops < 0 ? '-' : '+';
  const tenths = Math.abs(stops) < 10 ? `0.${Math.abs(stops)}` : `${Math.abs(stops)}/10`;
  return fail(
    'unreadable',
    `can be read two ways: write f/${figure}${sign}${tenths}${isFail(far) ? '' : `, or ${markText('aperture', far.marked)}`}`,
  );
}
