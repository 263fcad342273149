import type { Draws } from '../hostile/draws';

/** Numbers in every spelling that a person types. */
export const SPELT = [
  '1.50', '.5', '007', '1E3', '4.0', '0.50', '2.0', '1e2', '5.60', '1E-3', '8.0', '0.0', '12.00', '00.25', '1.5E1', '12345678901234567890', '15%', '3.', '1E+2', '0.1000',
]; // prettier-ignore
export const PLAIN = ['0', '1', '2', '3', '5', '7', '10', '12', '100', '0.1', '0.3', '2.5', '19.99', '1.005'];
export const COMPARISONS = ['=', '<>', '<', '>', '<=', '>='];
const NUMBER_CELLS = [
  'A1',
  'A2',
  'A4',
  'A10',
  'A12',
  'C1',
  'C2',
  'C3',
  'C5',
  'E1',
  'E2',
  'E5',
  'H2',
  'H4',
  'M1',
  'F1',
];
/** What is no number, and is asked for one all the same. */
const ODD_CELLS = ['A3', 'A5', 'A6', 'A7', 'A8', 'A9', 'A11', 'B7', 'L4'];
const TEXT_CELLS = [
  'A6',
  'B1',
  'B2',
  'B3',
  'B4',
  'B5',
  'B6',
  'B9',
  'B10',
  'D1',
  'D2',
  'D4',
  'J1',
  'J2',
  'J4',
  'J5',
];
const NUMBER_AREAS = ['E1:E6', 'H1:H6', 'I1:I6', 'M1:M6', 'C1:C8', 'G1:G6', 'A1:A5', 'L1:L5', 'H1:I6'];
export const TEXTS = [
  'abc',
  'Softbox',
  'f/8',
  'a-b-c',
  'two words',
  '',
  '12',
  ' x ',
  '5.60',
  'Été',
  'a*',
  '2 x 500 Ws',
];

export const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;
export const area = (draw: Draws): string => draw.pick(NUMBER_AREAS);
export const digits = (draw: Draws): string =>
  draw.isSo(0.3)
    ? draw.pick(SPELT)
    : draw.isSo(0.5)
      ? draw.pick(PLAIN)
      : String(draw.whole(0, 4000) / draw.pick([1, 4, 10, 100]));
export const numberCell = (draw: Draws): string => draw.pick(draw.isSo(0.12) ? ODD_CELLS : NUMBER_CELLS);
export const textCell = (draw: Draws): string => draw.pick(TEXT_CELLS);

/** A number from calculations so many deep. */
export function anyNumber(draw: Draws, depth: number): string {
  const more = () => anyNumber(draw, depth - 1);
  if (depth <= 0) return draw.isSo(0.5) ? digits(draw) : numberCell(draw);
  const kinds: readonly (() => string)[] = [
    () => `${more()}${draw.pick(['+', '-', '*', '/'])}${more()}`,
    () => `${more()}${draw.pick(['+', '-', '*'])}${more()}`,
    () => `(${more()}${draw.pick(['+', '-', '*', '/'])}${more()})`,
    () => `${draw.pick(['-', '+', '--'])}${more()}`,
    () =>
      `${draw.pick(['2', '3', 'A1', '1.5', '(-2)', 'H2', '.5'])}^${draw.pick(['2', '3', '0.5', '-1', '2^2', '0', '-2'])}`.replace(
        '(-2)^0.5',
        '2^0.5',
      ),
    () => `${more()}%`.replace('%%%', '%%'),
    () => `ROUND(${more()},${draw.whole(-2, 4)})`,
    () => `${draw.pick(['INT', 'ABS', 'SIGN', 'TRUNC'])}(${more()})`,
    () => `MOD(${more()},${draw.pick(['3', '2', '-4', '0.5', '7'])})`,
    () => `${draw.pick(['MIN', 'MAX', 'SUM', 'AVERAGE', 'PRODUCT'])}(${more()},${more()})`,
    () => `${draw.pick(['SUM', 'MAX', 'MIN', 'COUNT', 'AVERAGE', 'COUNTA'])}(${area(draw)})`,
    () => `IF(${anyTruth(draw, depth - 1)},${more()},${more()})`,
    () => `IFERROR(${more()},${digits(draw)})`,
    () => `LEN(${anyText(draw, depth - 1)})`,
    () => `SQRT(ABS(${more()}))`,
    () => `VALUE(${quoted(draw.pick(SPELT.slice(0, 15)))})`,
  ];
  return draw.pick(kinds)();
}

/** A text from calculations so many deep. */
export function anyText(draw: Draws, depth: number): string {
  const more = () => anyText(draw, depth - 1);
  if (depth <= 0) return draw.isSo(0.5) ? quoted(draw.pick(TEXTS)) : textCell(draw);
  const kinds: readonly (() => string)[] = [
    () => `${more()}&${more()}`,
    () => `${draw.pick(['LEFT', 'RIGHT'])}(${more()},${draw.whole(0, 4)})`,
    () => `MID(${more()},${draw.whole(1, 4)},${draw.whole(0, 3)})`,
    () => `${draw.pick(['UPPER', 'LOWER', 'PROPER', 'TRIM', 'CLEAN', 'T'])}(${more()})`,
    () =>
      `SUBSTITUTE(${more()},${quoted(draw.pick(['a', '-', 'o', ' ']))},${quoted(draw.pick(['+', '', 'xx']))})`,
    () => `REPLACE(${more()},${draw.whole(1, 3)},${draw.whole(0, 2)},${quoted(draw.pick(['_', '', 'new']))})`,
    () => `REPT(${more()},${draw.whole(0, 3)})`,
    () => `IF(${anyTruth(draw, depth - 1)},${more()},${more()})`,
    () => `${anyNumber(draw, depth - 1)}&${more()}`.replace(/^/, '(').replace(/&/, ')&'),
    () => `CONCAT(${more()},${more()})`,
    () =>
      `TEXTJOIN(${quoted(draw.pick(['-', '', ', ']))},${draw.pick(['TRUE', 'FALSE'])},${more()},${more()})`,
    () => `IFERROR(${more()},"none")`,
  ];
  return draw.pick(kinds)();
}

/** A truth value from calculations so many deep. */
export function anyTruth(draw: Draws, depth: number): string {
  const cmp = draw.pick(COMPARISONS);
  const more = () => anyTruth(draw, depth - 1);
  if (depth <= 0)
    return draw.isSo(0.5)
      ? `${numberCell(draw)}${cmp}${digits(draw)}`
      : `${textCell(draw)}${cmp}${quoted(draw.pick(TEXTS))}`;
  const kinds: readonly (() => string)[] = [
    () => `${anyNumber(draw, depth - 1)}${cmp}${anyNumber(draw, depth - 1)}`,
    () => `(${anyText(draw, depth - 1)})${cmp}(${anyText(draw, depth - 1)})`,
    () => `${draw.pick(['AND', 'OR', 'XOR'])}(${more()},${more()})`,
    () => `NOT(${more()})`,
    () => `${draw.pick(['ISNUMBER', 'ISTEXT', 'ISBLANK', 'ISERROR', 'ISNA', 'ISEVEN'])}(${numberCell(draw)})`,
    () => `${draw.pick(['ISNUMBER', 'ISERROR', 'ISTEXT'])}(${anyNumber(draw, depth - 1)})`,
    () => `EXACT(${anyText(draw, depth - 1)},${anyText(draw, depth - 1)})`,
    () => `IF(${more()},${more()},${more()})`,
  ];
  return draw.pick(kinds)();
}
