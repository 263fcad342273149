/**
 * COUNTIF, SUMIF, AVERAGEIF, MAXIFS and their kind with one matcher, in the place of the engine's own (0.25.1), which
 * – take a criterion of 5.60 for a text;
 * – widen the range of a short third argument where it stands, so that every other formula with that range has it widened;
 * – take "=" and "<>" for an empty text too, and ~~ for nothing;
 * – give an empty text where MAXIFS and MINIFS find nothing, which is 0;
 * – say #VALUE! of a range that is another error.
 */
import {
  type ArrayValueObject,
  type BaseValueObject,
  ErrorType,
  NumberValueObject,
} from '@univerjs/engine-formula';
import { at } from '../../exposure/core/at';
import { criterion, type Criterion } from './criteria';
import { type Cells, cellsIn } from './cellsByValue';
import {
  asReference,
  type Calculate,
  type Executor,
  failed,
  isError,
  type Mended,
  overAll,
  referenceExecutor,
  valuesIn,
} from './nativeFunction';
import { asLargeAs, isAsLarge, named } from './references';

/** Where all criteria hold. */
function placesWhere(ranges: readonly Cells[], criteria: readonly Criterion[]): number[] {
  const known = criteria.findIndex(({ places }) => places);
  const [first] = ranges;
  const candidates =
    known < 0
      ? (first?.list.map((_, place) => place) ?? [])
      : (criteria[known]?.places?.(at(ranges, known)) ?? []);
  return candidates.filter((place) =>
    criteria.every(({ holds }, i) => i === known || holds(at(at(ranges, i).list, place))),
  );
}

/** What is made of the cells that are found. An error among them is the answer. */
type Gather = (numbers: readonly number[]) => BaseValueObject;
const number = (value: number): BaseValueObject => NumberValueObject.create(value);

/** Added up as SUM does, which is right in the last digit. */
const total = (numbers: readonly number[]): NumberValueObject =>
  numbers.reduce<NumberValueObject>(
    (sum, each) => sum.plusBy(each) as NumberValueObject,
    NumberValueObject.create(0),
  );
const GATHER = {
  SUM: total,
  AVERAGE: (numbers: readonly number[]) => total(numbers).dividedBy(numbers.length),
  MAX: (numbers: readonly number[]) => number(numbers.reduce((a, b) => Math.max(a, b), numbers[0] ?? 0)),
  MIN: (numbers: readonly number[]) => number(numbers.reduce((a, b) => Math.min(a, b), numbers[0] ?? 0)),
} satisfies Record<string, Gather>;

function gathered(cells: Cells, places: readonly number[], gather: Gather): BaseValueObject {
  const found = places.map((place) => cells.list[place]);
  return found.find(isError) ?? gather(found.filter((cell) => typeof cell === 'number'));
}

/** A range that is an error, as one on a sheet that is not there, is the answer. A criterion may be one. */
const ofRanges = (
  least: number,
  most: number,
  isRange: (place: number) => boolean,
  calculate: Calculate,
): Executor =>
  referenceExecutor(
    least,
    most,
    (...values) => values.find((value, i) => isRange(i) && value.isError()) ?? calculate(...values),
  );
const isEven = (place: number): boolean => place % 2 === 0;
const isFirstOrOdd = (place: number): boolean => place === 0 || !isEven(place);

/** SUMIF and AVERAGEIF: one range, one criterion, and the cells to gather if they are others. */
const single = (gather: Gather) =>
  ofRanges(2, 3, isEven, (range, asked, target) => {
    const where = named(range as BaseValueObject);
    const reference = target && asReference(target);
    if (!where || (target && !reference)) return failed(ErrorType.VALUE);
    const cells = cellsIn(reference ? asLargeAs(where, reference) : where);
    return overAll([valuesIn(asked as BaseValueObject)], (one) =>
      gathered(cells, placesWhere([cellsIn(where)], [criterion(one as BaseValueObject)]), gather),
    );
  });

/** Ranges and criteria in turn. */
function pairsOf(values: readonly BaseValueObject[]) {
  const ranges = values.filter((_, i) => i % 2 === 0).map(named);
  const criteria = values.filter((_, i) => i % 2 === 1).map(valuesIn);
  const [first] = ranges;
  const fits = (range: ArrayValueObject | undefined): range is ArrayValueObject =>
    first !== undefined && range !== undefined && isAsLarge(first, range);
  return ranges.length === criteria.length && ranges.every(fits) ? { ranges, criteria } : undefined;
}

const counted = (...values: BaseValueObject[]): BaseValueObject => {
  const pairs = pairsOf(values);
  if (!pairs) return failed(ErrorType.VALUE);
  const ranges = pairs.ranges.map(cellsIn);
  return overAll(pairs.criteria, (...asked) => number(placesWhere(ranges, asked.map(criterion)).length));
};

const several = (gather: Gather) =>
  ofRanges(3, 255, isFirstOrOdd, (target, ...values) => {
    const cells = named(target as BaseValueObject);
    const pairs = pairsOf(values);
    if (!cells || !pairs?.ranges.every((range) => isAsLarge(range, cells))) return failed(ErrorType.VALUE);
    const ranges = pairs.ranges.map(cellsIn);
    return overAll(pairs.criteria, (...asked) =>
      gathered(cellsIn(cells), placesWhere(ranges, asked.map(criterion)), gather),
    );
  });

export const CONDITIONAL: readonly Mended[] = [
  [ofRanges(2, 2, isEven, counted), 'COUNTIF'],
  [ofRanges(2, 255, isEven, counted), 'COUNTIFS'],
  [single(GATHER.SUM), 'SUMIF'],
  [single(GATHER.AVERAGE), 'AVERAGEIF'],
  [several(GATHER.SUM), 'SUMIFS'],
  [several(GATHER.AVERAGE), 'AVERAGEIFS'],
  [several(GATHER.MAX), 'MAXIFS'],
  [several(GATHER.MIN), 'MINIFS'],
];
