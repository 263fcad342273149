/**
 * Dates that 0.25.1 gets wrong: EDATE runs over the end of a shorter month, ISOWEEKNUM and WEEKNUM(…,21) are one low in
 * years that begin on a Saturday, and YEARFRAC counts other days than Microsoft's help and ISDA's rules do.
 */
import {
  type BaseValueObject,
  ErrorType,
  type ErrorValueObject,
  NumberValueObject,
} from '@univerjs/engine-formula';
import { toNumber } from './coerce';
import { executor, failed, isError, type Mended, native, overEach } from './nativeFunction';

const DAY = 86_400_000;
/** Day 0, but that day 60 never was: the 29th of February of 1900. */
const EPOCH = Date.UTC(1899, 11, 31);
const LAST_OF_ALL = 2_958_465;
const DATE_FORMAT = 'yyyy/mm/dd;@';

interface Day {
  readonly year: number;
  /** From 0. */
  readonly month: number;
  readonly day: number;
}
function dayOf(serial: number): Day {
  const date = new Date(EPOCH + (serial > 59 ? serial - 1 : serial) * DAY);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth(), day: date.getUTCDate() };
}
function serialOf({ year, month, day }: Day): number {
  const days = (Date.UTC(year, month, day) - EPOCH) / DAY;
  return days > 59 ? days + 1 : days;
}
const lengthOfMonth = (year: number, month: number): number =>
  new Date(Date.UTC(year, month + 1, 0)).getUTCDate();

/** A date as whole days, as a number or as a text that stands for one. */
function serialIn(value: BaseValueObject): number | ErrorValueObject {
  if (value.isBoolean()) return failed(ErrorType.VALUE);
  const serial = toNumber(value);
  if (isError(serial)) return serial;
  return serial < 0 || serial >= LAST_OF_ALL + 1 ? failed(ErrorType.NUM) : Math.floor(serial);
}
const days =
  (calculate: (...serials: number[]) => BaseValueObject) =>
  (...values: BaseValueObject[]) => {
    const serials = values.map(serialIn);
    return serials.find(isError) ?? calculate(...(serials as number[]));
  };

/** The same day so many months on, or the last of a month that is shorter. */
function edate(start: BaseValueObject, months: BaseValueObject): BaseValueObject {
  const serial = serialIn(start);
  if (isError(serial)) return serial;
  const many = months.isBoolean() ? failed(ErrorType.VALUE) : toNumber(months);
  if (isError(many)) return many;
  const { year, month, day } = dayOf(serial);
  const first = new Date(Date.UTC(year, month + Math.trunc(many), 1));
  const [y, m] = [first.getUTCFullYear(), first.getUTCMonth()];
  const moved = serialOf({ year: y, month: m, day: Math.min(day, lengthOfMonth(y, m)) });
  return moved < 0 || moved > LAST_OF_ALL
    ? failed(ErrorType.NUM)
    : NumberValueObject.create(moved, DATE_FORMAT);
}

/** ISO 8601: a week belongs to the year of its Thursday. Day 1 was a Sunday, as spreadsheets have it. */
function isoWeek(serial: number): number {
  const weekday = (serial + 6) % 7 || 7;
  const thursday = serial - weekday + 4;
  const { year } = dayOf(thursday);
  return Math.floor((thursday - serialOf({ year, month: 0, day: 1 })) / 7) + 1;
}
const ISO = 21;
const isoWeekOf = days((serial) => NumberValueObject.create(isoWeek(serial as number)));

type Fraction = (start: Day, end: Day, apart: number) => number;
const isLeap = (year: number): boolean => lengthOfMonth(year, 1) === 29;
const isLastOfFebruary = ({ year, month, day }: Day): boolean =>
  month === 1 && day === lengthOfMonth(year, 1);
const thirties = (start: Day, end: Day, from: number, to: number): number =>
  ((end.year - start.year) * 360 + (end.month - start.month) * 30 + (to - from)) / 360;

/**
 * Thirty days a month as in the United States: a start on the last of February counts for its 30th, and so does an end there
 * if both are; an end on a 31st counts for a 30th only behind a start on the 30th or 31st. OpenFormula's basis 0.
 */
const american: Fraction = (start, end) => {
  const isLast = isLastOfFebruary(start);
  const from = isLast ? 30 : Math.min(start.day, 30);
  const isWhole = (isLast && isLastOfFebruary(end)) || (end.day === 31 && start.day >= 30);
  return thirties(start, end, from, isWhole ? 30 : end.day);
};
const european: Fraction = (start, end) =>
  thirties(start, end, Math.min(start.day, 30), Math.min(end.day, 30));

const isWithinYear = (start: Day, end: Day): boolean =>
  start.year === end.year ||
  (end.year === start.year + 1 &&
    (start.month > end.month || (start.month === end.month && start.day >= end.day)));
/** Whether a 29th of February lies between the two. */
const holdsLeapDay = (start: Day, end: Day): boolean =>
  (isLeap(start.year) &&
    start.month < 2 &&
    (end.year > start.year || end.month > 1 || isLastOfFebruary(end))) ||
  (end.year > start.year && isLeap(end.year) && (end.month > 1 || isLastOfFebruary(end)));
/** Days as they are: over a year of 366 if its leap day is among them, and over the mean of all years if they are more than one. */
const actual: Fraction = (start, end, apart) => {
  if (isWithinYear(start, end)) {
    const isLong = start.year === end.year ? isLeap(start.year) : holdsLeapDay(start, end);
    return apart / (isLong ? 366 : 365);
  }
  const years = end.year - start.year + 1;
  const whole =
    serialOf({ year: end.year + 1, month: 0, day: 1 }) - serialOf({ year: start.year, month: 0, day: 1 });
  return (apart * years) / whole;
};
const BASES: readonly Fraction[] = [
  american,
  actual,
  (_start, _end, apart) => apart / 360,
  (_start, _end, apart) => apart / 365,
  european,
];

function yearfrac(start: BaseValueObject, end: BaseValueObject, basis: BaseValueObject): BaseValueObject {
  const kind = toNumber(basis);
  if (isError(kind)) return kind;
  const fraction = BASES[Math.trunc(kind)];
  return days((one, other) => {
    const [from, to] = [Math.min(one as number, other as number), Math.max(one as number, other as number)];
    return fraction && kind >= 0
      ? NumberValueObject.create(fraction(dayOf(from), dayOf(to), to - from))
      : failed(ErrorType.NUM);
  })(start, end);
}

type Two = [BaseValueObject, BaseValueObject];
type Three = [BaseValueObject, BaseValueObject, BaseValueObject];
export const DATES: readonly Mended[] = [
  [executor(2, 2, (...values) => overEach(values, (...each) => edate(...(each as Two)))), 'EDATE'],
  [executor(1, 1, (...values) => overEach(values, isoWeekOf)), 'ISOWEEKNUM'],
  [
    class extends native('WEEKNUM') {
      override calculate(...values: BaseValueObject[]) {
        const [date, kind] = values;
        const asked = kind && !kind.isArray() ? toNumber(kind) : undefined;
        if (asked === ISO) return overEach([date as BaseValueObject], isoWeekOf);
        return super.calculate(...values);
      }
    },
    'WEEKNUM',
  ],
  [
    executor(2, 3, (start, end, basis = NumberValueObject.create(0)) =>
      overEach([start as BaseValueObject, end as BaseValueObject, basis], (...each) =>
        yearfrac(...(each as Three)),
      ),
    ),
    'YEARFRAC',
  ],
];
