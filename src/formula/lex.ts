import { type CellError, cellError, type ErrorCode, ERROR_CODES } from './errors';
import { groupsOf } from './patternGroups';

export type Constant = number | string | boolean | CellError;

/** One piece of a formula, as typed. */
interface AsTyped {
  readonly raw: string;
  /** The workbook, the sheet or the sheets put in front, with the ! behind them: `'My sheet'!`, `[Book.xlsx]Plan!`. */
  readonly before?: string;
}

export type Token = AsTyped &
  (
    | { readonly kind: 'space' | 'sign' | 'comma' | 'open' | 'close' | 'unknown' }
    | { readonly kind: 'value'; readonly value: Constant }
    /** An array constant, {8;11;16}. */
    | { readonly kind: 'list'; readonly rows: readonly (readonly Constant[])[] }
    /** A function's name in capitals. The bracket that follows it belongs to the piece. */
    | { readonly kind: 'call'; readonly name: string }
    /** `A1` or `A1:B2`, with or without dollar signs; `A1#` is all that the formula there gives. */
    | { readonly kind: 'cells'; readonly from: string; readonly to?: string; readonly spills: boolean }
    /** Whole columns or rows: `A:C`, `$2:$4`. */
    | { readonly kind: 'lines'; readonly from: string; readonly to: string }
    /** Columns of a table, with what stands in the brackets; without a name it is the table around the formula. */
    | { readonly kind: 'columns'; readonly table?: string; readonly inside: string }
    | { readonly kind: 'name'; readonly name: string }
    /** `{reading}`, the cell of that id: in templates alone. */
    | { readonly kind: 'field'; readonly id: string }
  );
export type TokenOf<Kind extends Token['kind']> = Extract<Token, { kind: Kind }>;

const LETTER = '\\p{L}_\\\\';
const CORNER = '\\$?[A-Za-z]{1,3}\\$?[1-9]\\d*';
const COLUMN = '\\$?[A-Za-z]{1,3}';
const ROW = '\\$?[1-9]\\d*';
const PLAIN = '[\\p{L}\\p{N}_.]+';
const DIGITS = '(?:\\d+(?:\\.\\d*)?|\\.\\d+)(?:[eE][+-]?\\d+)?';
const QUOTED = '"(?:[^"]|"")*"(?!")';
const ERRORS = ERROR_CODES.map((code) => code.replace('?', '\\?')).join('|');

const sticky = (pattern: string): RegExp => new RegExp(pattern, 'uy');
const SPACE = sticky('\\s+');
const TEXT = sticky(QUOTED);
const NUMBER = sticky(DIGITS);
const ERROR = sticky(ERRORS);
const NAME = sticky(`[${LETTER}][${LETTER}\\p{N}.?]*`);
const AREA = sticky(
  `(?:(${CORNER})(?::(${CORNER}))?(#)?|(${COLUMN}):(${COLUMN})|(${ROW}):(${ROW}))(?![${LETTER}\\p{N}.(!\\[])`,
);
const SHEET = sticky("'(?:[^']|'')*'(?!')");
const SHEETS = sticky(`(${PLAIN})(?::${PLAIN})?`);
const IS_CELL = new RegExp(`^${CORNER}$`);
const SIGN = sticky('<=|>=|<>|[-+*/^&=<>%:@#]');
const FIELD = sticky('\\{([A-Za-z][A-Za-z0-9]*)\\}');
const MEMBER_FORM = `\\s*(?:(${QUOTED})|(TRUE|FALSE)|(${ERRORS})|([+-]?${DIGITS}))\\s*`;
const MEMBER = new RegExp(`${MEMBER_FORM}([,;]|$)`, 'g');
const LIST = sticky(`\\{${MEMBER_FORM}(?:[,;]${MEMBER_FORM})*\\}`);
const ANY = sticky('[^]');

const unquoted = (text: string): string => text.slice(1, -1).replaceAll('""', '"');

/** The members of an array constant, whose form the pattern has checked. */
function listRows(inside: string): Constant[][] {
  let row: Constant[] = [];
  const rows = [row];
  for (const [, text, truth, error, number, after] of inside.matchAll(MEMBER)) {
    if (text !== undefined) row.push(unquoted(text));
    else if (truth !== undefined) row.push(truth === 'TRUE');
    else if (error !== undefined) row.push(cellError(error as ErrorCode));
    else row.push(Number(number));
    if (after === ';') rows.push((row = []));
  }
  return rows;
}

/** Goes along a formula once. What is opened and not closed takes all that follows: no formula goes on after it. */
class Lexer {
  readonly #text: string;
  readonly #fields: boolean;
  /** No place stands behind the last !, and none begins before this letter. */
  readonly #lastPlace: number;
  #noPlaceUntil = 0;
  #at = 0;
  #start = 0;

  constructor(text: string, fields: boolean) {
    this.#text = text;
    this.#fields = fields;
    this.#lastPlace = text.lastIndexOf('!');
  }

  all(): Token[] {
    const found: Token[] = [];
    while (this.#at < this.#text.length) {
      this.#start = this.#at;
      found.push(this.#next());
    }
    return found;
  }

  #take(pattern: RegExp): RegExpExecArray | undefined {
    pattern.lastIndex = this.#at;
    const found = pattern.exec(this.#text);
    if (!found) return undefined;
    this.#at += found[0].length;
    return found;
  }

  #raw(): string {
    return this.#text.slice(this.#start, this.#at);
  }

  #next(): Token {
    const first = this.#text.charAt(this.#at);
    switch (first) {
      case '(':
        return this.#single('open');
      case ')':
        return this.#single('close');
      case ',':
        return this.#single('comma');
      case '"': {
        const text = this.#take(TEXT)?.[0];
        return text === undefined ? this.#rest() : { kind: 'value', raw: text, value: unquoted(text) };
      }
      case "'":
        return this.#quotedPlace();
      case '[':
        return this.#bracket();
      case '{':
        return this.#braces();
      case '#':
        return this.#error() ?? this.#sign();
      default:
        return this.#other();
    }
  }

  #single(kind: 'open' | 'close' | 'comma'): Token {
    this.#at++;
    return { kind, raw: this.#raw() };
  }

  #rest(): Token {
    this.#at = this.#text.length;
    return { kind: 'unknown', raw: this.#raw() };
  }

  #sign(): Token {
    if (this.#take(SIGN)) return { kind: 'sign', raw: this.#raw() };
    this.#take(ANY);
    return { kind: 'unknown', raw: this.#raw() };
  }

  #quotedPlace(): Token {
    if (!this.#take(SHEET)) return this.#rest();
    return this.#text.charAt(this.#at) === '!' ? this.#behindPlace() : { kind: 'unknown', raw: this.#raw() };
  }

  /** Columns of the table around, or a workbook in front of something. */
  #bracket(): Token {
    if (!this.#takeBrackets()) return this.#rest();
    const end = this.#at;
    this.#takeSheets();
    if (this.#text.charAt(this.#at) === '!') return this.#behindPlace();
    this.#at = end;
    return { kind: 'columns', raw: this.#raw(), inside: this.#raw().slice(1, -1) };
  }

  /** Brackets may hold brackets, [[#This Row],[Light]]; an apostrophe keeps a sign from counting. */
  #takeBrackets(): boolean {
    let depth = 0;
    for (let at = this.#at; at < this.#text.length; at++) {
      const sign = this.#text.charAt(at);
      if (sign === "'") at++;
      else if (sign === '[') depth++;
      else if (sign === ']') depth--;
      if (depth > 2) return false;
      if (depth > 0) continue;
      this.#at = at + 1;
      return true;
    }
    return false;
  }

  #braces(): Token {
    const id = this.#fields ? this.#take(FIELD)?.[1] : undefined;
    if (id !== undefined) return { kind: 'field', raw: this.#raw(), id };
    const list = this.#take(LIST)?.[0];
    return list === undefined ? this.#sign() : { kind: 'list', raw: list, rows: listRows(list.slice(1, -1)) };
  }

  #error(before?: string): Token | undefined {
    const error = this.#take(ERROR)?.[0];
    if (error === undefined) return undefined;
    return this.#put({ kind: 'value', raw: this.#raw(), value: cellError(error as ErrorCode) }, before);
  }

  #put(token: Token, before: string | undefined): Token {
    return before === undefined ? token : { ...token, before };
  }

  #other(): Token {
    if (this.#take(SPACE)) return { kind: 'space', raw: this.#raw() };
    if (this.#at < this.#lastPlace && this.#at >= this.#noPlaceUntil) {
      if (this.#takeSheets() && this.#text.charAt(this.#at) === '!') return this.#behindPlace();
      this.#at = this.#start;
    }
    const operand = this.#operand();
    if (operand) return operand;
    const number = this.#take(NUMBER)?.[0];
    return number === undefined ? this.#sign() : { kind: 'value', raw: number, value: Number(number) };
  }

  /** `Plan`, or `Jan:Dec`; what reads like a cell, as in A1:Plan!B2, is one end of a range and not the first sheet. */
  #takeSheets(): boolean {
    const start = this.#at;
    const found = this.#take(SHEETS);
    if (!found) return false;
    const [first] = groupsOf<[string]>(found);
    this.#noPlaceUntil = start + first.length;
    if (found[0] !== first && IS_CELL.test(first)) this.#at = this.#noPlaceUntil;
    return true;
  }

  #behindPlace(): Token {
    this.#at++;
    const before = this.#raw();
    return this.#operand(before) ?? this.#error(before) ?? { kind: 'unknown', raw: before, before };
  }

  #operand(before?: string): Token | undefined {
    const area = this.#take(AREA);
    if (area) return this.#put(this.#cells(area), before);
    const name = this.#take(NAME)?.[0];
    if (name === undefined) return undefined;
    const next = this.#text.charAt(this.#at);
    if (next === '(') {
      this.#at++;
      return this.#put({ kind: 'call', raw: this.#raw(), name: name.toUpperCase() }, before);
    }
    if (next === '[') {
      const start = this.#at;
      if (!this.#takeBrackets()) return this.#rest();
      const inside = this.#text.slice(start + 1, this.#at - 1);
      return this.#put({ kind: 'columns', raw: this.#raw(), table: name, inside }, before);
    }
    if (before === undefined && /^(?:true|false)$/i.test(name))
      return { kind: 'value', raw: name, value: name.toUpperCase() === 'TRUE' };
    return this.#put({ kind: 'name', raw: this.#raw(), name }, before);
  }

  #cells([, cell, otherCell, spill, column, otherColumn, row, otherRow]: RegExpExecArray): Token {
    const [from, to] = [column ?? row, otherColumn ?? otherRow];
    if (from !== undefined && to !== undefined) return { kind: 'lines', raw: this.#raw(), from, to };
    return {
      kind: 'cells',
      raw: this.#raw(),
      from: cell as string,
      ...(otherCell === undefined ? {} : { to: otherCell }),
      spills: spill !== undefined,
    };
  }
}

/**
 * The pieces of a formula, with or without its =. It takes every text, and its pieces put together are the text again.
 * @param fields - whether it is a template's formula, in which {reading} is a cell
 */
export const lex = (formula: string, fields?: 'fields'): readonly Token[] =>
  new Lexer(formula, fields !== undefined).all();
