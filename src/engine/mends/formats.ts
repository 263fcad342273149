/**
 * TEXT, FIXED and DOLLAR round a number as it is in binary (0.25.1): TEXT(1.005,"0.00") is 1.00. They are given the number
 * that its fifteen digits round to, at the places that the format shows, or the nearest fraction of so many digits, where TEXT
 * has 99 1/1 for 99.9. DOLLAR ends in a space, for which ECMA-376 has none.
 */
import { type BaseValueObject, NumberValueObject, StringValueObject } from '@univerjs/engine-formula';
import { toNumber } from './coerce';
import { fifteen, toPlaces } from './digits';
import { isError, type Mended, native, overAll, rewired } from './nativeFunction';

/** A section of a format without what stands in it as it is: texts, signs and conditions. */
const bare = (section: string): string => section.replace(/"[^"]*"|\\.|_.|\*.|\[[^\]]*\]/g, '');
/** Dates and times, powers and fractions are rounded otherwise, if at all. */
const IS_OTHERWISE = /[ymdhs@?/]|e[+-]|general/i;

const HAS_CONDITION = /\[[<>=]/;

/** A power of ten with one digit before the point: "0.00E+00". */
const POWER = /^0(?:\.(0*))?E[+-]0+$/i;
function powerPlaces(section: string, number: number): number | undefined {
  const form = POWER.exec(bare(section));
  return form ? (form[1]?.length ?? 0) - Number(fifteen(number).toExponential().split('e')[1]) : undefined;
}

/** How many places a section shows of the number, with its percents and thousands; none that is no plain number. */
function placesIn(section: string): number | undefined {
  const form = bare(section);
  if (IS_OTHERWISE.test(form) || !/[0#]/.test(form)) return undefined;
  const places = /\.([0#]*)/.exec(form)?.[1]?.length ?? 0;
  const percents = form.match(/%/g)?.length ?? 0;
  const thousands = /[0#](,+)(?![0#])/.exec(form)?.[1]?.length ?? 0;
  return places + 2 * percents - 3 * thousands;
}

/** What stands below the line of a fraction: places for digits, or a number. */
const FRACTION = /[#0?] *\/ *(?:([#0?]{1,4})(?!\d)|(\d+))/;
/** The nearest fraction whose lower number has no more digits than the format has places, or is the one that it names. */
function fractionFor(section: string, number: number): number | undefined {
  const [, places, named] = FRACTION.exec(bare(section)) ?? [];
  if (named !== undefined && Number(named) > 0) return Math.round(number * Number(named)) / Number(named);
  if (places === undefined) return undefined;
  let best = Math.round(number);
  for (let lower = 2; lower < 10 ** places.length; lower++) {
    const fraction = Math.round(number * lower) / lower;
    if (Math.abs(fraction - number) < Math.abs(best - number)) best = fraction;
  }
  return best;
}

function sectionFor(number: number, format: string): string {
  const sections = format.match(/(?:"[^"]*"|\\.|[^;])+|(?<=;)(?=;|$)/g) ?? [''];
  const [positive = '', negative, zero] = sections;
  if (number < 0 && negative !== undefined) return negative;
  return number === 0 && zero !== undefined ? zero : positive;
}

/** The number that a section shows; 0 where it shows the number as it is. */
function shortened(section: string, number: number): number {
  const places = placesIn(section) ?? powerPlaces(section, number);
  return places === undefined ? (fractionFor(section, number) ?? 0) : toPlaces(number, places);
}

function rounded(value: BaseValueObject, format: BaseValueObject): BaseValueObject {
  if (value.isError() || value.isNull() || value.isBoolean() || format.isError()) return value;
  const number = toNumber(value);
  if (isError(number)) return value;
  const text = String(format.getValue());
  // A condition looks at the number as it is, and so does the section for 0.
  const section = sectionFor(number, text);
  const short = HAS_CONDITION.test(text) ? 0 : shortened(section, number);
  return short === 0 ? value : NumberValueObject.create(short);
}

const atPlaces = (value: BaseValueObject, digits: BaseValueObject): BaseValueObject => {
  if (value.isError() || digits.isError()) return value;
  const [number, places] = [toNumber(value), toNumber(digits)];
  return isError(number) || isError(places)
    ? value
    : NumberValueObject.create(toPlaces(number, Math.trunc(places)));
};
type Round = (value: BaseValueObject, how: BaseValueObject) => BaseValueObject;
const roundedBy =
  (round: Round, standard?: BaseValueObject) =>
  ([value, how = standard, ...others]: BaseValueObject[]): BaseValueObject[] => {
    if (!value || !how) return [value, how, ...others].filter((each) => each !== undefined);
    const first = overAll([value, how], (one, other) =>
      round(one as BaseValueObject, other as BaseValueObject),
    );
    return [first, how, ...others];
  };
const TWO = NumberValueObject.create(2);

class Dollar extends native('DOLLAR') {
  override calculate(...values: BaseValueObject[]) {
    return overAll([super.calculate(...roundedBy(atPlaces, TWO)(values)) as BaseValueObject], (text) => {
      const value = text as BaseValueObject;
      return value.isString() ? StringValueObject.create(String(value.getValue()).trimEnd()) : value;
    });
  }
}

export const FORMATS: readonly Mended[] = [
  rewired('TEXT', roundedBy(rounded)),
  rewired('FIXED', roundedBy(atPlaces, TWO)),
  [Dollar, 'DOLLAR'],
];
