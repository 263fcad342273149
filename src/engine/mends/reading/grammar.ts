import type { ErrorCode } from '../../../formula/errors';
import { isTooLong } from '../../../formula/spelling';
import { type Constant, lex, type Token, type TokenOf } from '../../../formula/lex';

/** A formula as a spreadsheet calculates it. */
export type Expression =
  | { readonly kind: 'value'; readonly value: Constant }
  | { readonly kind: 'list'; readonly rows: readonly (readonly Constant[])[] }
  /** A cell, or a whole column or row as one end of a range, with the sheet in front. */
  | { readonly kind: 'corner'; readonly text: string }
  /** Columns of a table, in the spelling of files. */
  | { readonly kind: 'columns'; readonly text: string }
  | { readonly kind: 'name'; readonly name: string; readonly before: string }
  | { readonly kind: 'call'; readonly name: string; readonly args: readonly Argument[] }
  /** What a bracket behind a bracket calls: LAMBDA(x,x+1)(2). */
  | { readonly kind: 'applied'; readonly callee: Expression; readonly args: readonly Argument[] }
  | { readonly kind: 'joined'; readonly sign: string; readonly left: Expression; readonly right: Expression }
  /** One value and a sign: - in front, % and # behind, @ in front. */
  | { readonly kind: 'signed'; readonly sign: '-' | '%' | '#' | '@'; readonly of: Expression }
  | { readonly kind: 'range'; readonly from: Expression; readonly to: Expression }
  /** The cells that two references have in common, with a space between them. */
  | { readonly kind: 'common'; readonly left: Expression; readonly right: Expression }
  /** References with commas between them, in brackets. */
  | { readonly kind: 'union'; readonly parts: readonly Expression[] };
export type ExpressionOf<K extends Expression['kind']> = Extract<Expression, { readonly kind: K }>;
/** Nothing between two commas is an argument too. */
export type Argument = Expression | undefined;

/** Why a formula cannot be read, for the person who typed it. */
export class Unreadable extends Error {
  readonly code: ErrorCode;

  constructor(message: string, code: ErrorCode = '#VALUE!') {
    super(message);
    this.code = code;
  }
}

const NOT_WHOLE = 'This is not a whole formula: check its brackets, commas, signs and quotation marks.';
const SEMICOLON =
  'A semicolon stands here between arguments: write a comma there, and a point in numbers, as in =ROUND(1.5*2,0).';
const COMMA =
  'A comma stands here where it parts nothing: write a point in numbers, as in =1.5*2, and commas only between arguments.';
const NO_TABLE =
  'A bracket stands here without a table: write the name of the table in front of it, as in Kit[@Qty].';
const TOO_LONG =
  'The formula is longer than the 8,192 letters that a cell takes: break it up into several cells.';
const TOO_DEEP = 'The formula has too many brackets one in the other: break it up into several cells.';

const unexpected = (token: Token | undefined): Unreadable =>
  new Unreadable(token?.raw === ';' ? SEMICOLON : NOT_WHOLE);

/** Signs between two values, by how tightly they bind, the loosest first. All of one strength go from left to right, ^ too. */
const STRENGTHS: readonly (readonly string[])[] = [
  ['=', '<', '>', '<=', '>=', '<>'],
  ['&'],
  ['+', '-'],
  ['*', '/'],
  ['^'],
];
const STRENGTH: ReadonlyMap<string, number> = new Map(
  STRENGTHS.flatMap((signs, i) => signs.map((sign) => [sign, i] as const)),
);
/** Excel takes 64 calls one in the other. Brackets and signs in front count here as well. */
const MOST_DEPTH = 256;

const REFERENCES: readonly Expression['kind'][] = [
  'corner',
  'columns',
  'name',
  'call',
  'applied',
  'range',
  'common',
  'union',
];
const STARTS: readonly Token['kind'][] = ['cells', 'lines', 'columns', 'name', 'call', 'open'];

class Reader {
  readonly #tokens: readonly Token[];
  #at = 0;
  #depth = 0;

  constructor(formula: string) {
    this.#tokens = lex(formula);
  }

  whole(): Expression {
    const parts = this.#parts(() => this.#at >= this.#tokens.length);
    return this.#oneOf(parts);
  }

  /** Expressions with commas between them, none left out. */
  #parts(ends: () => boolean): Expression[] {
    const parts = [this.#joined(0)];
    while (!ends()) {
      const next = this.#next();
      if (next?.kind !== 'comma') throw unexpected(next);
      this.#at++;
      parts.push(this.#joined(0));
    }
    return parts;
  }

  #oneOf(parts: readonly Expression[]): Expression {
    const [only] = parts;
    if (parts.length === 1 && only) return only;
    // Only references can be taken together.
    if (!parts.every(({ kind }) => REFERENCES.includes(kind))) throw new Unreadable(COMMA);
    return { kind: 'union', parts };
  }

  #skipSpace(): void {
    while (this.#tokens[this.#at]?.kind === 'space') this.#at++;
  }

  #next(): Token | undefined {
    this.#skipSpace();
    return this.#tokens[this.#at];
  }

  #sign(): string {
    const next = this.#next();
    return next?.kind === 'sign' ? next.raw : '';
  }

  #deeper<T>(read: () => T): T {
    if (++this.#depth > MOST_DEPTH) throw new Unreadable(TOO_DEEP);
    const found = read();
    this.#depth--;
    return found;
  }

  #joined(strength: number): Expression {
    let left = this.#percent();
    for (;;) {
      const sign = this.#sign();
      const mine = STRENGTH.get(sign) ?? -1;
      if (mine < strength) {
        this.#skipSpace();
        return left;
      }
      this.#at++;
      left = { kind: 'joined', sign, left, right: this.#joined(mine + 1) };
    }
  }

  #percent(): Expression {
    let of = this.#inFront();
    while (this.#sign() === '%') {
      this.#at++;
      of = { kind: 'signed', sign: '%', of };
    }
    return of;
  }

  /** A sign in front binds more tightly than ^: =-2^2 is 4. A + there changes nothing, not even the sort of value. */
  #inFront(): Expression {
    const sign = this.#sign();
    if (sign !== '-' && sign !== '+' && sign !== '@') return this.#common();
    this.#at++;
    const of = this.#deeper(() => this.#inFront());
    return sign === '+' ? of : { kind: 'signed', sign, of };
  }

  #common(): Expression {
    let left = this.#range();
    for (;;) {
      const before = this.#at;
      const next = this.#next();
      const isCommon =
        this.#at > before &&
        next !== undefined &&
        STARTS.includes(next.kind) &&
        REFERENCES.includes(left.kind);
      if (!isCommon) return left;
      left = { kind: 'common', left, right: this.#range() };
    }
  }

  #range(): Expression {
    let from = this.#behind();
    for (;;) {
      const end = this.#at;
      if (this.#sign() !== ':') {
        // A space may be the sign that asks for common cells.
        this.#at = end;
        return from;
      }
      this.#at++;
      from = { kind: 'range', from, to: wholeColumn(this.#behind(), from) };
    }
  }

  /** What stands directly behind a value: the # of a spill, the arguments of a function made on the spot. */
  #behind(): Expression {
    let found = this.#single();
    for (;;) {
      const next = this.#tokens[this.#at];
      if (next?.kind === 'sign' && next.raw === '#') {
        this.#at++;
        found = { kind: 'signed', sign: '#', of: found };
      } else if (next?.kind === 'open' && (found.kind === 'call' || found.kind === 'applied')) {
        this.#at++;
        found = { kind: 'applied', callee: found, args: this.#args() };
      } else return found;
    }
  }

  #single(): Expression {
    const token = this.#next();
    this.#at++;
    switch (token?.kind) {
      case 'value':
        return { kind: 'value', value: token.value };
      case 'list':
        return { kind: 'list', rows: token.rows };
      case 'cells':
        return this.#cells(token);
      case 'lines':
        return this.#ends(token.from, token.to, token.before);
      case 'columns':
        return { kind: 'columns', text: inFiles(token) };
      case 'name':
        return this.#name(token);
      case 'call':
        return { kind: 'call', name: (token.before ?? '') + token.name, args: this.#args() };
      case 'open':
        return this.#brackets();
      default:
        throw unexpected(token);
    }
  }

  #cells({ from, to, before = '', spills }: TokenOf<'cells'>): Expression {
    const cells = to === undefined ? corner(before + from) : this.#ends(from, to, before);
    return spills ? { kind: 'signed', sign: '#', of: cells } : cells;
  }

  #ends(from: string, to: string, before = ''): Expression {
    return { kind: 'range', from: corner(before + from), to: corner(to) };
  }

  /** =SUM (A1) is a call. */
  #name({ name, before = '' }: TokenOf<'name'>): Expression {
    const end = this.#at;
    if (this.#next()?.kind === 'open' && this.#at > end) {
      this.#at++;
      return { kind: 'call', name: before + name.toUpperCase(), args: this.#args() };
    }
    this.#at = end;
    return { kind: 'name', name, before };
  }

  #brackets(): Expression {
    return this.#deeper(() => {
      const parts = this.#parts(() => this.#next()?.kind === 'close');
      this.#at++;
      return this.#oneOf(parts);
    });
  }

  /** Up to the bracket that closes, each between commas or left out. */
  #args(): Argument[] {
    return this.#deeper(() => {
      const args: Argument[] = [];
      for (;;) {
        const start = this.#next()?.kind;
        args.push(start === 'comma' || start === 'close' ? undefined : this.#joined(0));
        const end = this.#next();
        this.#at++;
        if (end?.kind === 'close') return args.length === 1 && args[0] === undefined ? [] : args;
        if (end?.kind !== 'comma') throw unexpected(end);
      }
    });
  }
}

/** The C of A:B:C reads like a name. */
function wholeColumn(to: Expression, from: Expression): Expression {
  if (from.kind !== 'range' || to.kind !== 'name' || !/^\$?[a-z]{1,3}$/i.test(to.name)) return to;
  return { kind: 'range', from: corner(to.before + to.name), to: corner(to.name) };
}

const corner = (text: string): Expression => ({ kind: 'corner', text });

/** Lights[@Reading] is short for Lights[[#This Row],[Reading]], which is how files have it. */
function inFiles({ table, inside, raw }: TokenOf<'columns'>): string {
  if (table === undefined) throw new Unreadable(NO_TABLE, '#NAME?');
  if (!inside.startsWith('@')) return raw;
  const column = inside.slice(1).trim();
  if (column === '') return `${table}[#This Row]`;
  return `${table}[[#This Row],${column.startsWith('[') ? column : `[${column}]`}]`;
}

/** A formula, with or without its =. Throws `Unreadable`. */
export function readExpression(formula: string): Expression {
  if (isTooLong(formula)) throw new Unreadable(TOO_LONG);
  return new Reader(formula.replace(/^\s*=/, '')).whole();
}
