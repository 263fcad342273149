/**
 * TEXT, FIXED and DOLLAR round a number as it is in binary (0.25.1): TEXT(1.005,"0.00") is 1.00. They are given the number
 * that its fifteen digits round to, at the places that the format shows.
 */
import { type BaseValueObject, NumberValueObject } from '@univerjs/engine-formula';
import { toNumber } from './coerce';
import { toPlaces } from './digits';
import { isError, type Mended, overAll, rewired } from './objects';

/** A section of a format without what stands in it as it is: texts, signs and conditions. */
const bare = (section: string): string => section.replace(/"[^"]*"|\\.|_.|\*.|\[[^\]]*\]/g, '');
/** Dates and times, powers and fractions are rounded otherwise, if at all. */
const IS_OTHERWISE = /[ymdhs@?/]|e[+-]|general/i;

const HAS_CONDITION = /\[[<>=]/;

/** How many places a section shows of the number, with its percents and thousands; none that is no plain number. */
function placesIn(section: string): number | undefined {
  const form = bare(section);
  if (IS_OTHERWISE.test(form) || !/[0#]/.test(form)) return undefined;
  const places = /\.([0#]*)/.exec(form)?.[1]?.length ?? 0;
  const percents = form.match(/%/g)?.length ?? 0;
  const thousands = /[0#](,+)(?![0#])/.exec(form)?.[1]?.length ?? 0;
  return places + 2 * percents - 3 * thousands;
}

function sectionFor(number: number, format: string): string {
  const sections = format.match(/(?:"[^"]*"|\\.|[^;])+|(?<=;)(?=;|$)/g) ?? [''];
  const [positive = '', negative, zero] = sections;
  if (number < 0 && negative !== undefined) return negative;
  return number === 0 && zero !== undefined ? zero : positive;
}

function rounded(value: BaseValueObject, format: BaseValueObject): BaseValueObject {
  if (value.isError() || value.isNull() || value.isBoolean() || format.isError()) return value;
  const number = toNumber(value);
  if (isError(number)) return value;
  const text = String(format.getValue());
  // A condition looks at the number as it is, and so does the section for 0.
  const places = HAS_CONDITION.test(text) ? undefined : placesIn(sectionFor(number, text));
  const short = places === undefined ? 0 : toPlaces(number, places);
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

export const FORMATS: readonly Mended[] = [
  rewired('TEXT', roundedBy(rounded)),
  rewired('FIXED', roundedBy(atPlaces, TWO)),
  rewired('DOLLAR', roundedBy(atPlaces, TWO)),
];
