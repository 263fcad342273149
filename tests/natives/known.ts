import type { Piece } from '../../src/formula/tree';
import { type Answer, agree, isError } from './answers';
import { cellsOf, handedOn, type Kind, kindsOf, mayBe, piecesOf } from './kinds';
import { cellAt } from './sheet';

/** A formula that two suites answer differently. */
export interface Difference {
  readonly formula: string;
  readonly ours: Answer;
  readonly theirs: Answer;
}

/** A difference that is known: LibreOffice does not do what the documentation says, or the documentation leaves it open. */
export interface Known {
  readonly name: string;
  /** Functions or signs, with the shape that their arguments have where the suites differ. */
  readonly of: readonly string[];
  readonly shape: (args: readonly Piece[], whole: Difference) => boolean;
  readonly word: string;
  /** One that is excused, and one of the same function that never is. */
  readonly excused: Difference;
  readonly never: Difference;
}

const COMPARISONS = ['=', '<>', '<', '>', '<=', '>='];
const COUNTING = ['SUM', 'COUNT', 'AVERAGE', 'MIN', 'MAX', 'MEDIAN', 'PRODUCT', 'SUMSQ', 'SUMPRODUCT'];
const SPREADS = [
  'VARA',
  'STDEVA',
  'VARPA',
  'STDEVPA',
  'DEVSQ',
  'AVEDEV',
  'STDEV',
  'STDEVP',
  'STDEV.S',
  'STDEV.P',
  'VAR',
  'VARP',
  'VAR.S',
  'VAR.P',
  'SKEW',
  'KURT',
];
const CRITERIA = ['COUNTIF', 'COUNTIFS', 'SUMIF', 'SUMIFS', 'AVERAGEIF', 'AVERAGEIFS', 'MAXIFS', 'MINIFS'];
const BEHIND_A_SUM = ['SUMIFS', 'AVERAGEIFS', 'MAXIFS', 'MINIFS'];
const AS_TEXT = [
  '&',
  'CONCAT',
  'TEXTJOIN',
  'LEN',
  'LEFT',
  'RIGHT',
  'MID',
  'UPPER',
  'LOWER',
  'TRIM',
  'REPT',
  'SUBSTITUTE',
  'FIND',
  'SEARCH',
  'PROPER',
  'CLEAN',
  'EXACT',
  'REPLACE',
];

const refused = (code: string): Answer => ({ error: code });
const constant = (piece: Piece | undefined): unknown => (piece?.kind === 'value' ? piece.value : undefined);
const isWritten = (piece: Piece | undefined, pattern: RegExp): boolean => {
  const value = constant(piece);
  return typeof value === 'string' && pattern.test(value);
};
/** Something in a cell or an area, or in those that a call hands on; not the result of a calculation. */
const inCells = (piece: Piece | undefined, kind: Kind): boolean => {
  if (piece?.kind === 'call') return handedOn(piece).some((each) => inCells(each, kind));
  return piece?.kind === 'reference' && mayBe(piece, kind);
};
const valuesOf = (piece: Piece | undefined): unknown[] => {
  if (piece?.kind === 'reference') return cellsOf(piece.text).map(cellAt);
  return piece?.kind === 'value' ? [piece.value] : [];
};
const holds = (piece: Piece | undefined, test: (text: string) => boolean): boolean =>
  valuesOf(piece).some((value) => typeof value === 'string' && test(value));
const looksLikeNumber = (text: string): boolean => text.trim() !== '' && Number.isFinite(Number(text));
/** The areas that a call with criteria compares, each with what is asked of it. */
function criteria(args: readonly Piece[], { formula }: Difference): (readonly [Piece, Piece])[] {
  const isBehind = BEHIND_A_SUM.some((name) => formula.includes(`${name}(${args[0]?.text ?? '?'},`));
  const from = isBehind ? 1 : 0;
  return args.flatMap((area, i) => {
    const asked = args[i + 1];
    return i >= from && (i - from) % 2 === 0 && asked ? [[area, asked] as const] : [];
  });
}
const asksFor = (asked: Piece, pattern: RegExp): boolean =>
  valuesOf(asked).some((value) => pattern.test(String(value)));
const size = (piece: Piece | undefined): readonly [number, number] | undefined => {
  if (piece?.kind === 'list') return [piece.rows.length, piece.rows[0]?.length ?? 0];
  if (piece?.kind !== 'reference') return undefined;
  const cells = cellsOf(piece.text);
  const columns = new Set(cells.map((a1) => a1.replace(/\d+/, ''))).size;
  return [cells.length / columns, columns];
};
const numberIn = (piece: Piece | undefined): number | undefined => {
  const [value] = valuesOf(piece);
  if (typeof value === 'number') return value;
  if (piece?.kind === 'calculation' && piece.parts.length === 1) {
    const inner = numberIn(piece.parts[0]);
    if (inner === undefined) return undefined;
    return piece.sign === '%' ? inner / 100 : inner * (piece.sign === '-' ? -1 : 1);
  }
  return undefined;
};
/** A number that is written, in a cell, or the text of one; an empty cell is 0, and a division a time of day. */
function asNumber(piece: Piece | undefined): number | undefined {
  if (piece?.kind === 'calculation' && piece.sign === '/') return 0;
  const [value] = valuesOf(piece);
  if (value === null) return 0;
  return typeof value === 'string' && looksLikeNumber(value) ? Number(value) : numberIn(piece);
}
/** A number, or what two of them come to. */
function worth(piece: Piece | undefined): number | undefined {
  if (piece?.kind !== 'calculation' || piece.parts.length !== 2) return numberIn(piece);
  const [one, other] = piece.parts.map(worth);
  if (one === undefined || other === undefined) return undefined;
  if (piece.sign === '*') return one * other;
  return piece.sign === '/' ? one / other : undefined;
}
const isBefore1900March = (day: number | undefined): boolean => day !== undefined && day < 61;
const isFormat = (piece: Piece | undefined, pattern: RegExp): boolean => isWritten(piece, pattern);

export const KNOWN: readonly Known[] = [
  {
    name: 'a truth value beside a number or a text in a comparison',
    of: COMPARISONS,
    shape: ([one, other]) =>
      one !== undefined &&
      other !== undefined &&
      (mayBe(one, 'truth') || mayBe(other, 'truth')) &&
      !(isOnly(one, 'truth') && isOnly(other, 'truth')),
    word: 'LibreOffice holds TRUE for 1. Microsoft, "Sort data in a range or table": numbers come before texts, texts before FALSE and TRUE, and so they compare.',
    excused: { formula: '=5<5<.5', ours: false, theirs: true },
    never: { formula: '=5<.5', ours: false, theirs: true },
  },
  {
    name: 'a truth value written as a text',
    of: AS_TEXT,
    shape: (args) => args.some((arg) => mayBe(arg, 'truth')),
    word: 'LibreOffice writes 1 for TRUE. Microsoft, help of CONCAT and of T: a truth value becomes the text TRUE or FALSE.',
    excused: { formula: '=CONCAT("a",2=2)', ours: 'aTRUE', theirs: 'a1' },
    never: { formula: '=CONCAT("a",2)', ours: 'a2', theirs: 'a1' },
  },
  {
    name: 'a truth value of a formula that goes over cells, stored as 0 or 1',
    of: [
      ...COMPARISONS,
      'AND',
      'OR',
      'NOT',
      'XOR',
      'EXACT',
      'ISNUMBER',
      'ISTEXT',
      'ISERROR',
      'ISBLANK',
      'ISNA',
      'ISEVEN',
      'IF',
      'IFERROR',
    ],
    shape: (_, { formula, ours, theirs }) =>
      /[:{]/.test(formula) && typeof ours === 'boolean' && theirs === Number(ours),
    word: 'A file of LibreOffice keeps the kind of a truth value by the format of its cell, which a formula over cells does not get.',
    excused: { formula: '=MIN(E1:E6)<COUNTA(H1:I6)', ours: true, theirs: 1 },
    never: { formula: '=MIN(E1:E6)<COUNTA(H1:I6)', ours: true, theirs: 0 },
  },
  {
    name: 'a truth value in a cell among those that are counted or added',
    of: COUNTING,
    shape: (args) => args.some((arg) => inCells(arg, 'truth')),
    word: 'LibreOffice counts TRUE in a cell as 1. Microsoft, help of SUM, COUNT, AVERAGE, MEDIAN, MAX and MIN: truth values in references are ignored.',
    excused: { formula: '=COUNT(G1:G6)', ours: 2, theirs: 3 },
    never: { formula: '=COUNT(E1:E6)', ours: 6, theirs: 7 },
  },
  {
    name: 'a truth value in a cell that is compared with a criterion, or as one',
    of: CRITERIA,
    shape: (args, whole) =>
      criteria(args, whole).some(([area, asked]) => inCells(area, 'truth') || mayBe(asked, 'truth')),
    word: 'LibreOffice holds TRUE for 1. Microsoft, help of COUNTIF: a criterion is a number, a comparison or a text; a truth value is none of them and is alike to itself alone.',
    excused: { formula: '=COUNTIF(G1:G6,1)', ours: 1, theirs: 2 },
    never: { formula: '=COUNTIF(H1:H6,1)', ours: 1, theirs: 2 },
  },
  {
    name: 'a pattern over cells that hold numbers',
    of: CRITERIA,
    shape: (args, whole) =>
      criteria(args, whole).some(([area, asked]) => inCells(area, 'number') && asksFor(asked, /[*?]/)),
    word: 'LibreOffice compares numbers with a pattern by their digits. Microsoft, help of COUNTIF: * and ? are wildcards for texts.',
    excused: { formula: '=COUNTIF(E1:E6,"*")', ours: 0, theirs: 6 },
    never: { formula: '=COUNTIF(D1:D6,"*")', ours: 0, theirs: 6 },
  },
  {
    name: 'a number asked of cells with a text that looks like it',
    of: CRITERIA,
    shape: (args, whole) =>
      criteria(args, whole).some(
        ([area, asked]) =>
          holds(area, looksLikeNumber) &&
          valuesOf(asked).some(
            (value) => typeof value === 'number' || looksLikeNumber(String(value).replace(/^(=|<>)/, '')),
          ),
      ),
    word: 'Microsoft, help of COUNTIF: 32 and "32" are one criterion; that a text of digits counts as well is from memory, and known by 16 digits that COUNTIF takes for alike.',
    excused: { formula: '=COUNTIF(L1:L5,0)', ours: 2, theirs: 1 },
    never: { formula: '=COUNTIF(H1:H6,0)', ours: 2, theirs: 1 },
  },
  {
    name: 'a tilde before a letter in a pattern',
    of: [...CRITERIA, 'MATCH', 'VLOOKUP', 'SEARCH'],
    shape: (args) => args.some((arg) => holds(arg, (text) => /~[^*?~]/.test(text))),
    word: 'OpenFormula 3.4, wildcards: a tilde takes the meaning from a *, ? or ~ behind it; of other signs nothing is said. LibreOffice drops it.',
    excused: { formula: '=SUMPRODUCT(COUNTIF(J1:J6,J1:J6))', ours: 14, theirs: 13 },
    never: { formula: '=COUNTIF(J1:J4,"a~*")', ours: 1, theirs: 0 },
  },
  {
    name: 'a pattern looked for in columns that a function puts together',
    of: ['VLOOKUP', 'MATCH'],
    shape: ([value, table]) =>
      holds(value, (text) => /[*?~]/.test(text)) &&
      table?.kind === 'call' &&
      ['CHOOSE', 'IF'].includes(table.name),
    word: 'LibreOffice knows patterns in cells alone. Microsoft, help of VLOOKUP: with FALSE, a text may have wildcards.',
    excused: { formula: '=VLOOKUP(J2,IF({1,0},J1:J3,H1:H3),2,FALSE)', ours: 1, theirs: 3 },
    never: { formula: '=VLOOKUP(J1,IF({1,0},J1:J3,H1:H3),2,FALSE)', ours: 1, theirs: 3 },
  },
  {
    name: 'the text "TRUE" or "FALSE" for a truth value',
    of: ['AND', 'OR', 'NOT', 'XOR', 'IF'],
    shape: (args, { theirs }) =>
      args.some((arg) => isWritten(arg, /^(true|false)$/i)) && (isError(theirs) || theirs === 'refused'),
    word: 'LibreOffice refuses it. Microsoft, help of AND: arguments must evaluate to truth values; a text that spells one, written into the call, does (from memory).',
    excused: { formula: '=AND(2,"TRUE")', ours: true, theirs: refused('#VALUE!') },
    never: { formula: '=AND(2,"a")', ours: true, theirs: refused('#VALUE!') },
  },
  {
    name: 'an empty cell, a text of digits or a truth value asked whether it is even',
    of: ['ISEVEN', 'ISODD'],
    shape: ([cell], { ours }) =>
      mayBe(cell, 'truth') || (!isError(ours) && (inCells(cell, 'empty') || holds(cell, looksLikeNumber))),
    word: 'LibreOffice refuses it. Microsoft, help of ISEVEN: 0 is even, and what is not numeric is refused; an empty cell is 0 and a text of digits a number where one is asked for, a truth value is not.',
    excused: { formula: '=XOR(A1,ISEVEN(A3))', ours: false, theirs: refused('#VALUE!') },
    never: { formula: '=ISEVEN(A6)', ours: true, theirs: refused('#VALUE!') },
  },
  {
    name: 'a text of digits for a truth value',
    of: ['AND', 'OR', 'NOT', 'XOR', 'IF'],
    shape: (args, { ours }) =>
      (isError(ours) || ours === 'refused') && args.some((arg) => holds(arg, looksLikeNumber)),
    word: 'LibreOffice makes a number of it. Microsoft, help of AND: an argument must evaluate to a truth value, else #VALUE!; a text of digits is none (from memory).',
    excused: { formula: '=IF(B7,"yes","no")', ours: refused('#VALUE!'), theirs: 'yes' },
    never: { formula: '=IF(A6,"yes","no")', ours: refused('#VALUE!'), theirs: 'yes' },
  },
  {
    name: 'a truth value asked whether it is a number',
    of: ['ISNUMBER'],
    shape: ([value]) => mayBe(value, 'truth'),
    word: 'LibreOffice holds TRUE for 1. Microsoft, help of the IS functions: ISNUMBER is TRUE for numbers, ISLOGICAL for truth values.',
    excused: { formula: '=XOR(ISERROR(A1),ISNUMBER(A7))', ours: false, theirs: true },
    never: { formula: '=ISNUMBER(A1)', ours: false, theirs: true },
  },
  {
    name: 'the week of the last days of a year',
    of: ['WEEKNUM'],
    shape: (args, { ours, theirs }) =>
      numberIn(args[1]) !== 21 && theirs === 1 && (ours === 53 || ours === 54),
    word: 'LibreOffice counts them to the first week of the next year. Microsoft, help of WEEKNUM: week 1 holds the 1st of January, and the count starts there.',
    excused: { formula: '=WEEKNUM(F4,1)', ours: 53, theirs: 1 },
    never: { formula: '=WEEKNUM(F4,21)', ours: 53, theirs: 1 },
  },
  {
    name: 'a date before March 1900 in a text',
    of: ['TEXT'],
    shape: ([day, format]) =>
      isBefore1900March(asNumber(day)) &&
      isFormat(format, /[ymd]/i) &&
      !isFormat(format, /^(?!.*[yd])[^y]*m/i),
    word: 'LibreOffice counts days from 30 December 1899. Microsoft, "Date systems in Excel": day 1 is 1 January 1900.',
    excused: { formula: '=TEXT(1,"yyyy-mm-dd")', ours: '1900-01-01', theirs: '1899-12-31' },
    never: { formula: '=TEXT(F1,"yyyy-mm-dd")', ours: '2024-01-01', theirs: '2023-12-31' },
  },
  {
    name: 'half a second and more in a text of seconds',
    of: ['TEXT'],
    shape: ([time, format]) => isFormat(format, /s+$/) && isPartSecond(numberIn(time)),
    word: 'LibreOffice drops the part of a second; OpenFormula, SECOND, rounds it, and so does a cell (from memory).',
    excused: { formula: '=TEXT(45351.999,"hh:mm:ss")', ours: '23:58:34', theirs: '23:58:33' },
    never: { formula: '=TEXT(0.75,"hh:mm:ss")', ours: '18:00:01', theirs: '18:00:00' },
  },
  {
    name: 'an optional place behind a point that nothing stands behind',
    of: ['TEXT'],
    shape: (args, { ours, theirs }) =>
      isFormat(args[1], /\.#+$/) && typeof ours === 'string' && ours === `${String(theirs)}.`,
    word: 'LibreOffice leaves the point out too. Microsoft, "Number format codes": # shows no zeros, the point is always shown.',
    excused: { formula: '=TEXT(-5,"#.##")', ours: '-5.', theirs: '-5' },
    never: { formula: '=TEXT(-5,"0.00")', ours: '-5.', theirs: '-5' },
  },
  {
    name: 'a half at the last place of FIXED or TEXT that is less in binary',
    of: ['FIXED', 'TEXT'],
    shape: ([number, how], { ours, theirs }) =>
      isDecimalHalf(numberIn(number), placesOf(how)) && isOneMore(ours, theirs),
    word: 'LibreOffice rounds what the binary number is. Microsoft, "Floating-point arithmetic may give inaccurate results": fifteen digits count, and ROUND(1.005,2) is 1.01.',
    excused: { formula: '=FIXED(0.145,2)', ours: '0.15', theirs: '0.14' },
    never: { formula: '=FIXED(0.146,2)', ours: '0.15', theirs: '0.14' },
  },
  {
    name: 'lists and ranges of different length: an error where one has no element',
    of: ['+', '-', '*', '/', '^'],
    shape: ([one, other], { ours, theirs }) => isRagged(one, other) && isError(ours) && isError(theirs),
    word: 'LibreOffice leaves out what the shorter lacks, so that there is nothing to index. Microsoft, "Guidelines and examples of array formulas": #N/A stands there.',
    excused: { formula: '=INDEX({3,1.50,2}/{10,1},1,3)', ours: refused('#N/A'), theirs: refused('#VALUE!') },
    never: { formula: '=INDEX({3,1.50,2}/{10,1,2},1,3)', ours: refused('#N/A'), theirs: refused('#VALUE!') },
  },
  {
    name: 'a number from 1E19 on in a text',
    of: AS_TEXT,
    shape: (args) => args.some((arg) => reaches(arg, 1e19)),
    word: 'LibreOffice writes powers with three digits, and sooner. Microsoft, "Number format codes": General writes E+ and two digits at least.',
    excused: { formula: '=(1E21)&""', ours: '1E+21', theirs: '1E+021' },
    never: { formula: '=(1E18)&""', ours: '1E+18', theirs: '1E+018' },
  },
  {
    name: 'the remainder of a number a billion times the divisor',
    of: ['MOD'],
    shape: ([number, divisor], { ours }) =>
      isError(ours) && (worth(number) ?? 0) > 1e12 * Math.abs(worth(divisor) ?? Infinity),
    word: 'LibreOffice answers. Microsoft, "XL: MOD() function returns #NUM! error value": so it does where the quotient is too large.',
    excused: { formula: '=MOD(12345678901234567890,7)', ours: refused('#NUM!'), theirs: 0 },
    never: { formula: '=MOD(12345,7)', ours: refused('#NUM!'), theirs: 4 },
  },
  {
    name: 'a multiple with another sign than the number',
    of: ['MROUND'],
    shape: ([number, multiple], { ours }) =>
      isError(ours) && Math.sign(numberIn(number) ?? 0) * Math.sign(numberIn(multiple) ?? 0) === -1,
    word: 'LibreOffice answers. Microsoft, help of MROUND: MROUND(5,-2) is #NUM!, as the signs differ.',
    excused: { formula: '=MROUND(A12,0.5)', ours: refused('#NUM!'), theirs: -3 },
    never: { formula: '=MROUND(A1,0.5)', ours: refused('#NUM!'), theirs: 5 },
  },
  {
    name: 'a text written as an argument among numbers',
    of: [...COUNTING, ...SPREADS, 'MINA', 'MAXA', 'AVERAGEA', 'GEOMEAN', 'HARMEAN'],
    shape: (args) => args.some((arg) => typeof constant(arg) === 'string'),
    word: 'LibreOffice refuses it, or counts it as 0. Microsoft, help of SUM and of AVERAGEA: SUM("5",15,TRUE) is 21; a text typed into the list counts as its number, and is refused where it has none.',
    excused: { formula: '=PRODUCT(A1,"1.50")', ours: 7.5, theirs: refused('#VALUE!') },
    never: { formula: '=PRODUCT(A1,B7)', ours: 28, theirs: 5 },
  },
  {
    name: 'a text in the cells of GCD or LCM',
    of: ['GCD', 'LCM'],
    shape: (args) => args.some((arg) => inCells(arg, 'text')),
    word: 'LibreOffice passes over it. Microsoft, help of GCD and LCM: #VALUE! where an argument is not numeric.',
    excused: { formula: '=GCD(D5:D12)', ours: refused('#VALUE!'), theirs: 1 },
    never: { formula: '=GCD(H1:H6)', ours: refused('#VALUE!'), theirs: 1 },
  },
  {
    name: 'the bits of a fraction',
    of: ['BITAND', 'BITOR', 'BITXOR'],
    shape: (args, { ours }) =>
      isError(ours) && args.some((arg) => valuesOf(arg).some((value) => !Number.isInteger(Number(value)))),
    word: 'LibreOffice cuts it off. Microsoft, help of BITAND: #NUM! where a number is not whole.',
    excused: { formula: '=BITAND(E1,"1.50")', ours: refused('#NUM!'), theirs: 0 },
    never: { formula: '=BITAND(E1,8)', ours: refused('#NUM!'), theirs: 8 },
  },
  {
    name: 'a formula, or a truth value, asked for its type or for being a formula',
    of: ['TYPE', 'ISFORMULA'],
    shape: ([cell], { theirs }) =>
      (theirs === 8 || theirs === true) && cell?.kind === 'reference' && isCalculatedThere(cell),
    word: 'LibreOffice has 8 for a formula, and a truth value read from a file is the formula TRUE(). Microsoft, help of TYPE: 2 is a text, 4 a truth value; 8 is none of its answers.',
    excused: { formula: '=TYPE(A11)', ours: 2, theirs: 8 },
    never: { formula: '=TYPE(A6)', ours: 2, theirs: 8 },
  },
  {
    name: 'pounds',
    of: ['CONVERT'],
    shape: (args) => args.some((arg) => isWritten(arg, /^lbm$/)),
    word: 'By hand: the international pound is 0.45359237 kg exactly (NIST Special Publication 811), LibreOffice has 0.4535923097.',
    excused: { formula: '=CONVERT(100,"kg","lbm")', ours: 220.46226218487757, theirs: 220.462291469134 },
    never: { formula: '=CONVERT(1,"m","ft")', ours: 3.28, theirs: 3.29 },
  },
  {
    name: 'the number of an error that a function gives',
    of: ['ERROR.TYPE'],
    shape: ([asked], { theirs }) => asked?.kind === 'call' && isError(theirs),
    word: 'LibreOffice has numbers of its own for them. Microsoft, help of ERROR.TYPE: 3 for #VALUE!, 6 for #NUM!.',
    excused: { formula: '=ERROR.TYPE(SQRT(-1))', ours: 6, theirs: refused('#N/A') },
    never: { formula: '=ERROR.TYPE(A9)', ours: 2, theirs: refused('#N/A') },
  },
  {
    name: 'which error: 0 to a power below 0',
    of: ['^', 'POWER'],
    shape: (_, { ours, theirs }) =>
      isError(ours) && ours.error === '#DIV/0!' && isError(theirs) && theirs.error === '#NUM!',
    word: 'LibreOffice has #NUM!. A power below 0 is a division by the power above it, and Microsoft, "How to correct a #DIV/0! error", has that error for a division by 0 (for POWER from memory).',
    excused: { formula: '=POWER(0,-1)', ours: refused('#DIV/0!'), theirs: refused('#NUM!') },
    never: { formula: '=POWER(0,-1)', ours: refused('#VALUE!'), theirs: refused('#NUM!') },
  },
  {
    name: 'a rank as a share that has more than three digits',
    of: ['PERCENTRANK', 'PERCENTRANK.INC', 'PERCENTRANK.EXC'],
    shape: (args, { ours, theirs }) =>
      args.length === 2 &&
      typeof ours === 'number' &&
      typeof theirs === 'number' &&
      Math.abs(theirs - ours - 0.001) < 1e-9,
    word: 'LibreOffice rounds it. Microsoft, help of PERCENTRANK.INC: three digits, and its example of five ninths is 0.555.',
    excused: { formula: '=PERCENTRANK.EXC(H1:H6,5)', ours: 0.428, theirs: 0.429 },
    never: { formula: '=PERCENTRANK.EXC(H1:H6,5)', ours: 0.43, theirs: 0.429 },
  },
  {
    name: 'which error: a row that a range has not',
    of: ['INDEX'],
    shape: (_, { ours, theirs }) =>
      isError(ours) && ours.error === '#REF!' && isError(theirs) && theirs.error === '#VALUE!',
    word: 'LibreOffice has its error 502. Microsoft, help of INDEX: #REF! where the row or column is outside.',
    excused: { formula: '=INDEX(E1:E6,A8)', ours: refused('#REF!'), theirs: refused('#VALUE!') },
    never: { formula: '=INDEX(E1:E6,A8)', ours: refused('#N/A'), theirs: refused('#VALUE!') },
  },
  {
    name: 'a date before March 1900 moved by months',
    of: ['EDATE', 'EOMONTH', 'YEAR', 'MONTH', 'DAY', 'WEEKDAY', 'DATE'],
    shape: ([day], { ours, theirs }) =>
      isBefore1900March(asNumber(day)) && typeof ours === 'number' && typeof theirs === 'number',
    word: 'LibreOffice counts days from 30 December 1899. Microsoft, "Date systems in Excel": day 1 is 1 January 1900.',
    excused: { formula: '=EDATE(B7,2)', ours: 65, theirs: 64 },
    never: { formula: '=EDATE(F1,2)', ours: 45352, theirs: 45351 },
  },
  {
    name: 'the geometric mean with 0 among the numbers',
    of: ['GEOMEAN'],
    shape: (_, { ours, theirs }) => isError(ours) && theirs === 0,
    word: 'LibreOffice has 0. Microsoft, help of GEOMEAN: #NUM! where a number is 0 or less.',
    excused: { formula: '=GEOMEAN(A1:A5,A1)', ours: refused('#NUM!'), theirs: 0 },
    never: { formula: '=GEOMEAN(E1:E6)', ours: refused('#NUM!'), theirs: 8 },
  },
  {
    name: 'which error: too few pairs',
    of: ['STEYX'],
    shape: (_, { ours, theirs }) => isError(ours) && ours.error === '#DIV/0!' && isError(theirs),
    word: 'LibreOffice has its error 502. Microsoft, help of STEYX: #DIV/0! for fewer than three.',
    excused: { formula: '=STEYX(L1:L5,H1:H5)', ours: refused('#DIV/0!'), theirs: refused('#VALUE!') },
    never: { formula: '=STEYX(L1:L5,H1:H5)', ours: 0.53, theirs: refused('#VALUE!') },
  },
  {
    name: 'which error: a quotient by nothing',
    of: ['QUOTIENT', 'FLOOR'],
    shape: ([, divisor], { ours }) => isError(ours) && ours.error === '#DIV/0!' && asNumber(divisor) === 0,
    word: 'LibreOffice has its error 502. Microsoft, "How to correct a #DIV/0! error": that error for a division by 0 or an empty cell.',
    excused: { formula: '=QUOTIENT(2,A3)', ours: refused('#DIV/0!'), theirs: refused('#VALUE!') },
    never: { formula: '=QUOTIENT(2,A1)', ours: refused('#DIV/0!'), theirs: 0 },
  },
  {
    name: 'less than nothing in DOLLAR',
    of: ['DOLLAR'],
    shape: ([number], { ours }) =>
      (numberIn(number) ?? 0) < 0 && typeof ours === 'string' && ours.startsWith('($'),
    word: 'LibreOffice writes a minus sign. ECMA-376, DOLLAR: the format is $#,##0.00;($#,##0.00).',
    excused: { formula: '=DOLLAR(-5,0)', ours: '($5)', theirs: '-$5' },
    never: { formula: '=DOLLAR(5,0)', ours: '($5)', theirs: '$5' },
  },
  {
    name: 'a difference of decimals beside the decimal that it is',
    of: ['-'],
    shape: ([one, other]) => isAlmost(constant(one), constant(other)),
    word: 'By hand: 8.1 - 8 is 0.1. The engine takes a difference of numbers as they are written; LibreOffice has 0.0999999999999996 from the binary ones.',
    excused: { formula: '=8.1-8=0.1', ours: true, theirs: false },
    never: { formula: '=8.5-8=0.1', ours: true, theirs: false },
  },
  {
    name: 'which error: out of the range of a function',
    of: [
      'SQRT',
      'PERCENTILE.EXC',
      'QUARTILE.EXC',
      'LARGE',
      'SMALL',
      'LN',
      'LOG',
      'LOG10',
      '^',
      'FACT',
      'COMBIN',
      'DATEDIF',
      'GEOMEAN',
      'CUMIPMT',
      'DATE',
      'NPER',
      'RATE',
      'IRR',
      'DB',
      'CHOOSE',
      'ADDRESS',
      'EDATE',
      'HARMEAN',
      'PERCENTILE',
      'PERCENTILE.INC',
      'QUARTILE',
      'QUARTILE.INC',
      'MEDIAN',
    ],
    shape: (_, { ours, theirs }) =>
      isError(ours) && ours.error === '#NUM!' && isError(theirs) && theirs.error === '#VALUE!',
    word: 'LibreOffice stores its errors 502 and 503 as #VALUE!. Microsoft, help of each of them: #NUM! where the number is out of range.',
    excused: { formula: '=PERCENTILE.EXC(E1:E6,0.90)', ours: refused('#NUM!'), theirs: refused('#VALUE!') },
    never: { formula: '=PERCENTILE.EXC(E1:E6,0.90)', ours: refused('#VALUE!'), theirs: refused('#NUM!') },
  },
];

/** Whether LibreOffice has a formula in a cell. */
const isCalculatedThere = (cell: Piece): boolean =>
  valuesOf(cell).some(
    (value) => typeof value === 'boolean' || (typeof value === 'string' && value.startsWith('=')),
  );
function isOnly(piece: Piece, kind: Kind): boolean {
  const kinds = kindsOf(piece);
  return kinds.size === 1 && kinds.has(kind);
}
function isPartSecond(time: number | undefined): boolean {
  if (time === undefined) return false;
  const seconds = time * 86_400;
  return seconds - Math.floor(seconds) >= 0.5 - 1e-6 && Math.abs(seconds - Math.round(seconds)) > 1e-3;
}
/** How many decimal places FIXED or TEXT is asked to keep; nothing where the format is none of numbers. */
function placesOf(how: Piece | undefined): number | undefined {
  if (how === undefined) return 2;
  const [value] = valuesOf(how);
  if (typeof value !== 'string') return numberIn(how);
  if (/[ymdhs]/i.test(value)) return undefined;
  const places = /\.([0#]+)/.exec(value)?.[1]?.length ?? 0;
  return places + (value.includes('%') ? 2 : 0);
}
/** Whether a number's decimal digits end in a five, one place behind those that are kept. */
function isDecimalHalf(number: number | undefined, places: number | undefined): boolean {
  const behind = /\.(\d*5)$/.exec(String(number))?.[1];
  return behind !== undefined && behind.length === (places ?? NaN) + 1;
}
/** Whether the difference of two numbers is not in binary what it is in decimal. */
const isAlmost = (one: unknown, other: unknown): boolean =>
  typeof one === 'number' && typeof other === 'number' && Number((one - other).toFixed(12)) !== one - other;
const digitsOf = (text: Answer): number => Number(String(text).replace(/[^\d]/g, ''));
const isOneMore = (ours: Answer, theirs: Answer): boolean =>
  typeof ours === 'string' &&
  typeof theirs === 'string' &&
  ours.length === theirs.length &&
  digitsOf(ours) - digitsOf(theirs) === 1;
function isRagged(one: Piece | undefined, other: Piece | undefined): boolean {
  const [a, b] = [size(one), size(other)];
  if (!a || !b) return false;
  return a.some((length, i) => length !== b[i] && length > 1 && (b[i] ?? 0) > 1);
}
/** Whether a number so large is written in a piece. */
const reaches = (piece: Piece | undefined, least: number): boolean => {
  if (piece === undefined) return false;
  if (piece.kind === 'calculation') return piece.parts.some((part) => reaches(part, least));
  if (piece.kind === 'call') return piece.args.some((arg) => reaches(arg, least));
  return Math.abs(numberIn(piece) ?? 0) >= least;
};

const nameOf = (piece: Piece): string | undefined =>
  piece.kind === 'call' ? piece.name.toUpperCase() : piece.kind === 'calculation' ? piece.sign : undefined;
const argsOf = (piece: Piece): readonly Piece[] =>
  piece.kind === 'call' ? piece.args : piece.kind === 'calculation' ? piece.parts : [];

/** The entry that excuses a difference: a call or a sign in the formula has the shape that it names. */
export const excuseFor = (difference: Difference): Known | undefined => {
  if (agree(difference.ours, difference.theirs)) return undefined;
  const pieces = piecesOf(difference.formula);
  return KNOWN.find(({ of, shape }) =>
    pieces.some((piece) => of.includes(nameOf(piece) ?? '') && shape(argsOf(piece), difference)),
  );
};
