/**
 * Texts in 0.25.1: a number becomes one with seventeen digits, or formatted as its cell is; CONCAT writes a truth as "true";
 * SEARCH knows no wildcards; TRIM removes more than spaces. A function that asks for texts is given texts here, made by one
 * rule, and only what it does then is its own.
 */
import {
  type BaseValueObject,
  ErrorType,
  NumberValueObject,
  StringValueObject,
} from '@univerjs/engine-formula';
import { toNumber, toText } from './coerce';
import { executor, failed, isArray, isError, type Mended, overAll, overEach, rewired } from './objects';
import { partPattern } from './wildcards';

const asText = (value: BaseValueObject): BaseValueObject => {
  if (isArray(value)) return overAll([value], (each) => asText(each as BaseValueObject));
  return value.isNumber() || value.isBoolean() ? StringValueObject.create(toText(value)) : value;
};
/** These take an empty cell for no text at all. */
const IS_TEXT_EMPTY = new Set(['EXACT', 'PROPER']);
const emptyAsText = (value: BaseValueObject): BaseValueObject =>
  overAll([value], (each) =>
    (each as BaseValueObject).isNull() ? StringValueObject.create('') : (each as BaseValueObject),
  );

/** Which of its values a function takes for texts; behind the last that is told the same holds as for that. */
const TEXT_VALUES: Readonly<Record<string, readonly boolean[]>> = {
  LEN: [true],
  LENB: [true],
  LEFT: [true, false],
  LEFTB: [true, false],
  RIGHT: [true, false],
  RIGHTB: [true, false],
  MID: [true, false],
  MIDB: [true, false],
  UPPER: [true],
  LOWER: [true],
  PROPER: [true],
  CLEAN: [true],
  CODE: [true],
  UNICODE: [true],
  REPT: [true, false],
  EXACT: [true],
  FIND: [true, true, false],
  FINDB: [true, true, false],
  REPLACE: [true, false, false, true],
  REPLACEB: [true, false, false, true],
  SUBSTITUTE: [true, true, true, false],
  CONCAT: [true],
  TEXTJOIN: [true, false, true],
  TEXTBEFORE: [true, true, false],
  TEXTAFTER: [true, true, false],
  TEXTSPLIT: [true, true, true, false],
};
const given = (name: string, takes: readonly boolean[]) => (values: BaseValueObject[]) =>
  values.map((value, i) => {
    if (!takes[Math.min(i, takes.length - 1)]) return value;
    return asText(IS_TEXT_EMPTY.has(name) ? emptyAsText(value) : value);
  });

/** Where a text stands in another; letters' case does not count, and * and ? stand for others. */
function search(sought: BaseValueObject, within: BaseValueObject, from: BaseValueObject): BaseValueObject {
  const start = toNumber(from);
  if (isError(start)) return start;
  const text = toText(within);
  const first = Math.trunc(start) - 1;
  if (first < 0 || first > text.length) return failed(ErrorType.VALUE);
  const pattern = partPattern(toText(sought));
  pattern.lastIndex = first;
  const found = pattern.exec(text);
  return found ? NumberValueObject.create(found.index + 1) : failed(ErrorType.VALUE);
}

/** Spaces and nothing else: a space that may not be broken stays, as Microsoft's help of TRIM says. */
const trim = (value: BaseValueObject): BaseValueObject =>
  StringValueObject.create(
    toText(value)
      .replace(/^ +| +$/g, '')
      .replace(/ {2,}/g, ' '),
  );

type Three = [BaseValueObject, BaseValueObject, BaseValueObject];
export const TEXTS: readonly Mended[] = [
  ...Object.entries(TEXT_VALUES).map(([name, takes]) => rewired(name, given(name, takes))),
  [
    executor(2, 3, (sought, within, from = NumberValueObject.create(1)) =>
      overEach([sought as BaseValueObject, within as BaseValueObject, from], (...each) =>
        search(...(each as Three)),
      ),
    ),
    'SEARCH',
  ],
  [executor(1, 1, (...values) => overEach(values, (each) => trim(each as BaseValueObject))), 'TRIM'],
];
