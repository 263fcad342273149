/**
 * Texts in 0.25.1: a number becomes one with seventeen digits, or formatted as its cell is; CONCAT writes a truth as "true";
 * SEARCH knows no wildcards; TRIM removes more than spaces; PROPER knows the letters from a to z alone; TEXTSPLIT makes numbers
 * of pieces; VALUE knows no 1 1/2. A function that asks for texts is given texts here, made by one
 * rule, and only what it does then is its own.
 */
import {
  type BaseValueObject,
  ErrorType,
  NumberValueObject,
  StringValueObject,
} from '@univerjs/engine-formula';
import { mixedNumber, toNumber, toText } from './coerce';
import {
  block,
  executor,
  failed,
  isArray,
  isError,
  type Mended,
  native,
  overAll,
  overEach,
  rewired,
} from './nativeFunction';
import { partPattern } from './wildcards';

const asText = (value: BaseValueObject): BaseValueObject => {
  if (isArray(value)) return overAll([value], (each) => asText(each as BaseValueObject));
  return value.isNumber() || value.isBoolean() ? StringValueObject.create(toText(value)) : value;
};
/** These take an empty cell for no text at all. */
const IS_TEXT_EMPTY = new Set(['EXACT']);
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

/** A capital behind what is no letter, small letters behind one, whatever the alphabet. */
const proper = (value: BaseValueObject): BaseValueObject =>
  StringValueObject.create(
    toText(value)
      .toLowerCase()
      .replace(/(?<!\p{L})\p{Ll}/gu, (letter) => (letter === 'ß' ? letter : letter.toUpperCase())),
  );

const withMixed = (value: BaseValueObject): BaseValueObject => {
  const mixed = value.isString() ? mixedNumber(String(value.getValue())) : undefined;
  return mixed === undefined ? value : NumberValueObject.create(mixed);
};

const NO_PIECE = '#N/A';
const piece = (text: string): BaseValueObject =>
  text === NO_PIECE ? failed(ErrorType.NA) : StringValueObject.create(text);
/** The engine's own reads each piece as if it were typed into a cell: what it splits is replaced, for nothing behind it tells "007" from 7. */
class TextSplit extends native('TEXTSPLIT') {
  override calculate(...values: BaseValueObject[]) {
    return super.calculate(...given('TEXTSPLIT', [true, true, true, false])(values));
  }

  _getResult(
    text: string,
    columns: readonly string[],
    rows: readonly string[],
    ignoresEmpty: number,
    ignoresCase: number,
    padding: string,
  ): BaseValueObject {
    const flags = ignoresCase ? 'gi' : 'g';
    const [rowEnd, columnEnd] = [new RegExp(rows.join('|'), flags), new RegExp(columns.join('|'), flags)];
    const pieces = text
      .split(rowEnd)
      .map((row) => row.split(columnEnd).filter((each) => !ignoresEmpty || each !== ''));
    const width = Math.max(1, ...pieces.map((row) => row.length));
    return block(
      pieces.map((row) => [
        ...row.map((each) => StringValueObject.create(each)),
        ...Array.from({ length: width - row.length }, () => piece(padding)),
      ]),
    );
  }
}

type Three = [BaseValueObject, BaseValueObject, BaseValueObject];
export const TEXTS: readonly Mended[] = [
  ...Object.entries(TEXT_VALUES).map(([name, takes]) => rewired(name, given(name, takes))),
  [TextSplit, 'TEXTSPLIT'],
  rewired('VALUE', (values) =>
    values.map((text) => overAll([text], (each) => withMixed(each as BaseValueObject))),
  ),
  [executor(1, 1, (...values) => overEach(values, (each) => proper(each as BaseValueObject))), 'PROPER'],
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
