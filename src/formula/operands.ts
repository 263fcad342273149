import type { Token } from './lex';

const isReference = (token: Token | undefined): boolean =>
  ['cells', 'lines', 'name', 'columns'].includes(token?.kind ?? '');
const isSign = (token: Token | undefined, sign: string): boolean =>
  token?.kind === 'sign' && token.raw === sign;

/** Tells where operands begin and end: cells, a name, a call or brackets. The brackets of a formula are paired once. */
export class Operands {
  readonly #tokens: readonly Token[];
  readonly #otherEnds = new Map<number, number>();

  constructor(tokens: readonly Token[]) {
    this.#tokens = tokens;
    const open: number[] = [];
    for (const [at, { kind }] of tokens.entries()) {
      if (kind === 'call' || kind === 'open') open.push(at);
      const start = kind === 'close' ? open.pop() : undefined;
      if (start === undefined) continue;
      this.#otherEnds.set(start, at);
      this.#otherEnds.set(at, start);
    }
  }

  /** Where the operand ends that begins here, with what a colon joins to it. */
  end(start: number): number | undefined {
    let end: number | undefined;
    for (let at = start; ;) {
      const last = isReference(this.#tokens[at]) ? at : this.#otherEnds.get(at);
      if (last === undefined || last < at) return end;
      end = isSign(this.#tokens[last + 1], '#') ? last + 2 : last + 1;
      if (!isSign(this.#tokens[end], ':')) return end;
      at = end + 1;
    }
  }

  /** Where the operand begins that ends before a piece. */
  start(end: number): number | undefined {
    const last = end - 1;
    if (isReference(this.#tokens[last])) return last;
    return this.#tokens[last]?.kind === 'close' ? this.#otherEnds.get(last) : undefined;
  }
}
