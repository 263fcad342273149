/**
 * Statistics of cells pass over texts, and so does what is paid by turns, as Microsoft's help of each says; others refuse them.
 * 0.25.1 takes a text of digits for a number in these, and an empty cell for 0 in MINA and MAXA.
 */
import { type BaseReferenceObject, type BaseValueObject, StringValueObject } from '@univerjs/engine-formula';
import {
  asReference,
  block,
  isArray,
  type Mended,
  NOTHING,
  replaced,
  rewired,
  rowsOf,
} from './nativeFunction';

/** What these functions pass over themselves: a text that is no number. */
const WORD = StringValueObject.create('text');
const isText = (value: BaseValueObject): boolean => value.isString();

/** Cells or a list whose texts are words. */
function worded(value: BaseValueObject): BaseValueObject {
  if (!isArray(value) || !rowsOf(value).flat().some(isText)) return value;
  return replaced(value, (each) => (isText(each) ? WORD : each));
}

/** The same for cells that are asked for as a reference; one reference serves several formulas, so this is another one. */
function wordedReference(value: BaseValueObject): BaseValueObject {
  const reference = asReference(value);
  if (!reference) return value;
  const other = Object.create(reference) as BaseReferenceObject;
  other.toArrayValueObject = (...given) =>
    worded(reference.toArrayValueObject(...given)) as ReturnType<BaseReferenceObject['toArrayValueObject']>;
  return other as unknown as BaseValueObject;
}

/** The cells that are not empty, one below the other. */
function filled(value: BaseValueObject): BaseValueObject {
  if (!isArray(value)) return value;
  const cells = rowsOf(value)
    .flat()
    .filter((cell) => !cell.isNull());
  return cells.length > 0 ? block(cells.map((cell) => [cell])) : NOTHING;
}

// prettier-ignore
const OF_NUMBERS = [
  'MEDIAN', 'GEOMEAN', 'HARMEAN', 'SKEW', 'SKEW.P', 'KURT', 'DEVSQ', 'TRIMMEAN', 'PERCENTRANK', 'PERCENTRANK.INC',
  'PERCENTRANK.EXC', 'CORREL', 'PEARSON', 'SLOPE', 'INTERCEPT', 'RSQ', 'STEYX', 'COVAR', 'COVARIANCE.P', 'COVARIANCE.S',
  'FORECAST', 'FORECAST.LINEAR', 'FREQUENCY', 'NPV', 'IRR', 'MIRR', 'F.TEST', 'FTEST', 'T.TEST', 'TTEST', 'CHISQ.TEST',
  'CHITEST', 'PROB',
];

/** These refuse a text that is no number: so Microsoft's help of each has it of every text, and of cells that are not numeric. */
// prettier-ignore
const NUMBERS_ALONE = [
  'SERIESSUM', 'XNPV', 'XIRR', 'FVSCHEDULE', 'MMULT', 'MDETERM', 'MINVERSE', 'GCD', 'LCM', 'MULTINOMIAL',
];

export const SAMPLES: readonly Mended[] = [
  ...[...OF_NUMBERS, ...NUMBERS_ALONE].map((name) => rewired(name, (values) => values.map(worded))),
  ...['RANK', 'RANK.EQ', 'RANK.AVG'].map((name) =>
    rewired(name, ([number, cells, ...others]) => [
      ...[number].flatMap((value) => value ?? []),
      ...[cells].flatMap((value) => (value ? wordedReference(value) : [])),
      ...others,
    ]),
  ),
  ...['MINA', 'MAXA'].map((name) => rewired(name, (values) => values.map(filled))),
];
