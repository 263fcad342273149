import { type CellError, cellError, type ErrorCode, ERROR_CODES } from './errors';

/** What a formula is made of. Each piece keeps its text as typed. */
export type Piece =
  | { readonly kind: 'value'; readonly text: string; readonly value: Constant }
  /** An array constant, {8;11;16}. */
  | { readonly kind: 'list'; readonly text: string; readonly rows: readonly (readonly Constant[])[] }
  /** Cells, a named range or a column of a table. */
  | { readonly kind: 'reference'; readonly text: string }
  | { readonly kind: 'call'; readonly text: string; readonly name: string; readonly args: readonly Piece[] }
  /** Nothing between two commas. */
  | { readonly kind: 'left out'; readonly text: '' }
  /** Pieces joined by a sign; without one it is something that only the spreadsheet understands. */
  | { readonly kind: 'calculation'; readonly text: string; readonly sign?: string; readonly parts: readonly Piece[] }; // prettier-ignore

export type Constant = number | string | boolean | CellError;

const LETTER = '\\p{L}_\\\\';
const NAME = `[${LETTER}][${LETTER}\\p{N}.?]*`;
const CELL = '\\$?[A-Za-z]{1,3}\\$?[1-9]\\d*';
const AREA = `(?:${CELL}(?::${CELL})?#?|\\$?[A-Za-z]{1,3}:\\$?[A-Za-z]{1,3}|\\$?[1-9]\\d*:\\$?[1-9]\\d*)(?![${LETTER}\\p{N}.(!\\[])`;
const SHEET = `(?:'(?:[^']|'')+'|(?:\\[[^\\]]+\\])?[\\p{L}\\p{N}_.]+(?::[\\p{L}\\p{N}_.]+)?)!`;

const sticky = (pattern: string): RegExp => new RegExp(pattern, 'uy');
const SPACE = sticky('\\s*');
const TEXT = sticky('"(?:[^"]|"")*"');
const NUMBER = sticky('(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?');
const ERRORS = ERROR_CODES.map((code) => code.replace('?', '\\?')).join('|');
const ERROR = sticky(ERRORS);
const AFTER_NAME = `(?![(!\\[${LETTER}\\p{N}.?])`;
const TRUTH = sticky(`(?:[Tt][Rr][Uu][Ee]|[Ff][Aa][Ll][Ss][Ee])${AFTER_NAME}`);
const REFERENCE = sticky(`(?:${SHEET})?(?:${AREA}|${NAME}${AFTER_NAME})`);
const CALL = sticky(`(${NAME})\\(`);
/** Brackets within those of a table, [[#This Row],[Light]]; an apostrophe escapes a sign there. */
const TABLE = sticky(`(?:${NAME})?\\[(?:[^\\[\\]']|'.|\\[(?:[^\\[\\]']|'.)*\\])*\\]`);
const SIGN = sticky('<=|>=|<>|[-+*/^&=<>]');
const MEMBER_FORM = `\\s*(?:"((?:[^"]|"")*)"|(TRUE|FALSE)|(${ERRORS})|([+-]?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?))\\s*`;
const MEMBER = new RegExp(`${MEMBER_FORM}([,;]|$)`, 'g');
const LIST = sticky(`\\{${MEMBER_FORM}(?:[,;]${MEMBER_FORM})*\\}`);

/** How tightly the signs bind, the loosest first. */
const STRENGTH: Readonly<Record<string, number>> = {
  '=': 1, '<': 1, '>': 1, '<=': 1, '>=': 1, '<>': 1, '&': 2, '+': 3, '-': 3, '*': 4, '/': 4, '^': 5,
}; // prettier-ignore

/** Where a value should stand and nothing known does. */
const ODD: Piece = { kind: 'calculation', text: '', parts: [] };

/**
 * Reads a formula of a spreadsheet as far as needed to explain the calls in it. It takes every text: what it does not
 * understand becomes a calculation that keeps its text and the pieces found within. It never goes back over a call.
 */
class FormulaReader {
  readonly #text: string;
  #at = 0;

  constructor(text: string) {
    this.#text = text;
  }

  whole(): Piece {
    const parts: Piece[] = [];
    while (this.#at < this.#text.length) {
      parts.push(this.#expression());
      this.#at++;
    }
    const [only = ODD] = parts;
    return parts.length === 1 ? only : { kind: 'calculation', text: this.#text.trim(), parts };
  }

  /** One expression, up to the end, a comma or a closing bracket. */
  #expression(): Piece {
    if (this.#ends()) return { kind: 'left out', text: '' };
    const start = this.#at;
    const parts = [this.#joined(0)];
    while (!this.#ends()) {
      const before = this.#at;
      parts.push(this.#joined(0));
      if (this.#at === before) this.#at++;
    }
    const [only = ODD] = parts;
    if (parts.length === 1) return only;
    return { kind: 'calculation', text: this.#since(start), parts: parts.filter((part) => part !== ODD) };
  }

  /** Expressions with commas between them, and the bracket that closes. */
  #expressions(): Piece[] {
    const found: Piece[] = [];
    do found.push(this.#expression());
    while (this.#text.charAt(this.#at++) === ',');
    return found;
  }

  #take(pattern: RegExp): RegExpExecArray | undefined {
    pattern.lastIndex = this.#at;
    const found = pattern.exec(this.#text);
    if (!found) return undefined;
    this.#at += found[0].length;
    return found;
  }

  #ends(): boolean {
    this.#take(SPACE);
    return this.#at >= this.#text.length || /[,)]/.test(this.#text.charAt(this.#at));
  }

  #since(start: number): string {
    return this.#text.slice(start, this.#at).trim();
  }

  #joined(strength: number): Piece {
    const start = this.#at;
    let left = this.#signed();
    for (;;) {
      const before = this.#at;
      this.#take(SPACE);
      const sign = this.#take(SIGN)?.[0];
      const mine = sign === undefined ? 0 : (STRENGTH[sign] as number);
      if (sign === undefined || mine <= strength) {
        this.#at = before;
        return left;
      }
      const right = this.#joined(mine);
      left = { kind: 'calculation', text: this.#since(start), sign, parts: [left, right] };
    }
  }

  #signed(): Piece {
    this.#take(SPACE);
    const start = this.#at;
    const sign = this.#text.charAt(this.#at);
    if (sign === '-' || sign === '+' || sign === '@') {
      this.#at++;
      const part = this.#signed();
      return { kind: 'calculation', text: this.#since(start), sign, parts: [part] };
    }
    let piece = this.#single();
    while (piece !== ODD && this.#text.charAt(this.#at) === '%') {
      this.#at++;
      piece = { kind: 'calculation', text: this.#since(start), sign: '%', parts: [piece] };
    }
    return piece;
  }

  #single(): Piece {
    const start = this.#at;
    const first = this.#text.charAt(start);
    if (first === '(') {
      this.#at++;
      const parts = this.#expressions();
      const [only = ODD] = parts;
      return parts.length === 1 ? only : { kind: 'calculation', text: this.#since(start), parts };
    }
    const error = this.#take(ERROR)?.[0];
    if (error !== undefined) return constant(error, cellError(error as ErrorCode));
    const quoted = this.#take(TEXT)?.[0];
    if (quoted !== undefined) return constant(quoted, quoted.slice(1, -1).replaceAll('""', '"'));
    const truth = this.#take(TRUTH)?.[0];
    if (truth !== undefined) return constant(truth, truth.toUpperCase() === 'TRUE');
    const list = this.#take(LIST)?.[0];
    if (list !== undefined) return { kind: 'list', text: list, rows: listRows(list.slice(1, -1)) };
    const reference = (this.#take(REFERENCE) ?? this.#take(TABLE))?.[0];
    if (reference !== undefined) return { kind: 'reference', text: reference };
    const name = this.#take(CALL)?.[1];
    if (name !== undefined) return this.#call(name, start);
    const number = this.#take(NUMBER)?.[0];
    return number === undefined ? ODD : constant(number, Number(number));
  }

  #call(name: string, start: number): Piece {
    const args = this.#expressions();
    const none = args.length === 1 && (args[0] as Piece).kind === 'left out';
    return { kind: 'call', text: this.#since(start), name: name.toUpperCase(), args: none ? [] : args };
  }
}

const constant = (text: string, value: Constant): Piece => ({ kind: 'value', text, value });

/** The members of an array constant, whose form the pattern has checked. */
function listRows(inside: string): Constant[][] {
  const rows: Constant[][] = [[]];
  for (const [, text, truth, error, number, after] of inside.matchAll(MEMBER)) {
    const value =
      text !== undefined
        ? text.replaceAll('""', '"')
        : truth !== undefined
          ? truth.toUpperCase() === 'TRUE'
          : error !== undefined
            ? cellError(error as ErrorCode)
            : Number(number);
    (rows[rows.length - 1] as Constant[]).push(value);
    if (after === ';') rows.push([]);
  }
  return rows;
}

/** A formula in its pieces; nothing where the text is no formula. */
export const readFormula = (formula: string): Piece | undefined =>
  /^\s*=\s*\S/.test(formula) ? new FormulaReader(formula.replace('=', '')).whole() : undefined;

/** Every reference of a formula, each once, as typed. */
export function referencesIn(formula: string): readonly string[] {
  const found = new Set<string>();
  const look = (piece: Piece): void => {
    if (piece.kind === 'reference') found.add(piece.text);
    if (piece.kind === 'call') piece.args.forEach(look);
    if (piece.kind === 'calculation') piece.parts.forEach(look);
  };
  const piece = readFormula(formula);
  if (piece) look(piece);
  return [...found];
}
