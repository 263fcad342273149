import { type Constant, lex, type Token, type TokenOf } from './lex';

export type { Constant } from './lex';

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

/** How tightly the signs bind, the loosest first. */
const STRENGTH: ReadonlyMap<string, number> = new Map([
  ['=', 1], ['<', 1], ['>', 1], ['<=', 1], ['>=', 1], ['<>', 1], ['&', 2], ['+', 3], ['-', 3], ['*', 4], ['/', 4], ['^', 5],
]); // prettier-ignore
const IN_FRONT: readonly string[] = ['-', '+', '@'];
/** Brackets and signs in front, one in the other. Spreadsheets take 64 calls; what lies deeper is passed over. */
const MOST_DEPTH = 256;

/** Where a value should stand and nothing known does. */
const ODD: Piece = { kind: 'calculation', text: '', parts: [] };

/**
 * Reads a formula of a spreadsheet as far as needed to explain the calls in it. It takes every text: what it does not
 * understand becomes a calculation that keeps its text and the pieces found within. It never goes back over a call.
 */
class FormulaReader {
  readonly #text: string;
  readonly #tokens: readonly Token[];
  /** Where each piece begins in the text, and behind the last where it ends. */
  readonly #starts: readonly number[];
  #at = 0;
  #depth = 0;

  constructor(text: string) {
    this.#text = text;
    this.#tokens = lex(text);
    let end = 0;
    this.#starts = [0, ...this.#tokens.map(({ raw }) => (end += raw.length))];
  }

  whole(): Piece {
    const parts: Piece[] = [];
    while (this.#at < this.#tokens.length) {
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
    this.#depth++;
    do found.push(this.#expression());
    while (this.#tokens[this.#at++]?.kind === 'comma');
    this.#depth--;
    return found;
  }

  #skipSpace(): void {
    if (this.#tokens[this.#at]?.kind === 'space') this.#at++;
  }

  #ends(): boolean {
    this.#skipSpace();
    const next = this.#tokens[this.#at];
    return next === undefined || next.kind === 'comma' || next.kind === 'close';
  }

  /** The sign that comes next; empty where none does. */
  #sign(): string {
    const next = this.#tokens[this.#at];
    return next?.kind === 'sign' ? next.raw : '';
  }

  #since(start: number): string {
    return this.#text.slice(this.#starts[start], this.#starts[this.#at]).trim();
  }

  #joined(strength: number): Piece {
    const start = this.#at;
    let left = this.#signed();
    for (;;) {
      const before = this.#at;
      this.#skipSpace();
      const sign = this.#sign();
      const mine = STRENGTH.get(sign) ?? 0;
      if (mine <= strength) {
        this.#at = before;
        return left;
      }
      this.#at++;
      const right = this.#joined(mine);
      left = { kind: 'calculation', text: this.#since(start), sign, parts: [left, right] };
    }
  }

  #signed(): Piece {
    this.#skipSpace();
    const start = this.#at;
    const sign = this.#sign();
    if (IN_FRONT.includes(sign)) {
      if (this.#depth >= MOST_DEPTH) return ODD;
      this.#at++;
      this.#depth++;
      const part = this.#signed();
      this.#depth--;
      return { kind: 'calculation', text: this.#since(start), sign, parts: [part] };
    }
    let piece = this.#single();
    while (piece !== ODD && this.#sign() === '%') {
      this.#at++;
      piece = { kind: 'calculation', text: this.#since(start), sign: '%', parts: [piece] };
    }
    return piece;
  }

  #single(): Piece {
    const start = this.#at;
    const token = this.#tokens[start];
    if (this.#depth >= MOST_DEPTH && (token?.kind === 'open' || token?.kind === 'call')) return ODD;
    this.#at++;
    switch (token?.kind) {
      case 'open': {
        const parts = this.#expressions();
        const [only = ODD] = parts;
        return parts.length === 1 ? only : { kind: 'calculation', text: this.#since(start), parts };
      }
      case 'value':
        return { kind: 'value', text: token.raw, value: token.value };
      case 'list':
        return { kind: 'list', text: token.raw, rows: token.rows };
      case 'cells':
      case 'lines':
      case 'columns':
      case 'name':
        return { kind: 'reference', text: token.raw };
      case 'call':
        return this.#call(token, start);
      default:
        this.#at = start;
        return ODD;
    }
  }

  #call({ before = '', name }: TokenOf<'call'>, start: number): Piece {
    const args = this.#expressions();
    const none = args.length === 1 && args[0]?.kind === 'left out';
    return { kind: 'call', text: this.#since(start), name: before + name, args: none ? [] : args };
  }
}

/** A formula in its pieces; nothing where the text is no formula. */
export const readFormula = (formula: string): Piece | undefined =>
  /^\s*=\s*\S/.test(formula) ? new FormulaReader(formula.replace('=', '')).whole() : undefined;

/** Every reference of a formula, each once, as typed. */
export function referencesIn(formula: string): readonly string[] {
  const found = new Set<string>();
  const whole = readFormula(formula);
  // no call for each piece: a sum of thousands is nested as deep as it is long
  const left = whole ? [whole] : [];
  for (let piece = left.pop(); piece; piece = left.pop()) {
    if (piece.kind === 'reference') found.add(piece.text);
    if (piece.kind === 'call') left.push(...[...piece.args].reverse());
    if (piece.kind === 'calculation') left.push(...[...piece.parts].reverse());
  }
  return [...found];
}
