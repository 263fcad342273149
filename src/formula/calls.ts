import { lex, type Token } from './lex';
import { isOurs, OURS } from './names';

/** One call in a formula: its name, and the pieces of each argument. */
export interface FormulaCall {
  readonly name: string;
  readonly args: readonly (readonly Token[])[];
  /** Calls around it, this one included, whose names begin with SWEEP. */
  readonly depth: number;
  /** The call that it is an argument of, alone or with others. */
  readonly within: string | undefined;
}

interface Open {
  readonly name: string | undefined;
  readonly ours: number;
  /** Where each argument begins. */
  readonly starts: number[];
}

/** Every call of a formula, the inner ones before the outer. Throws nothing: a bracket that is not closed makes no call. */
export function calls(tokens: readonly Token[]): readonly FormulaCall[] {
  const found: FormulaCall[] = [];
  const stack: Open[] = [];
  for (const [at, token] of tokens.entries()) {
    const around = stack.at(-1);
    if (token.kind === 'call' || token.kind === 'open') {
      const name = token.kind === 'call' ? (token.before ?? '') + token.name : undefined;
      const ours = (around?.ours ?? 0) + (name !== undefined && isOurs(name) ? 1 : 0);
      stack.push({ name, ours, starts: [at + 1] });
    } else if (token.kind === 'comma') around?.starts.push(at + 1);
    else if (token.kind === 'close') {
      stack.pop();
      if (around?.name === undefined) continue;
      const { name, ours: depth, starts } = around;
      const args = starts.map((start, i) => tokens.slice(start, (starts[i + 1] ?? at + 1) - 1));
      const isEmpty = args.length === 1 && args[0]?.every(({ kind }) => kind === 'space');
      found.push({ name, args: isEmpty ? [] : args, depth, within: stack.at(-1)?.name });
    }
  }
  return found;
}

/** Whether every bracket of a formula is closed. */
export function isBalanced(tokens: readonly Token[]): boolean {
  let open = 0;
  for (const { kind } of tokens) {
    if (kind === 'call' || kind === 'open') open++;
    if (kind === 'close') open--;
    if (open < 0) return false;
  }
  return open === 0;
}

/** Names that the LET and LAMBDA of a formula give to values, in small letters. */
export function ownNames(tokens: readonly Token[]): ReadonlySet<string> {
  const found = new Set<string>();
  const named = (token: Token): boolean =>
    token.kind === 'call' && (token.name === 'LET' || token.name === 'LAMBDA');
  if (!tokens.some(named)) return found;
  for (const { name: call, args } of calls(tokens)) {
    if (call !== 'LET' && call !== 'LAMBDA') continue;
    for (const [i, argument] of args.slice(0, -1).entries()) {
      const [only, more] = argument.filter(({ kind }) => kind !== 'space');
      const isName = call === 'LAMBDA' || i % 2 === 0;
      if (isName && only?.kind === 'name' && !more) found.add(only.name.toLowerCase());
    }
  }
  return found;
}

/** The functions that a formula calls, in capitals and their order; not those that it has made itself by LET. */
export function functionsIn(tokens: readonly Token[]): readonly string[] {
  const own = ownNames(tokens);
  return tokens.flatMap((token, i) => {
    const [next, more] = [tokens[i + 1]?.kind, tokens[i + 2]?.kind];
    const isCalled = token.kind === 'call' || (token.kind === 'name' && next === 'space' && more === 'open');
    const name = isCalled && token.before === undefined ? token.name : undefined;
    return name === undefined || own.has(name.toLowerCase()) ? [] : [name.toUpperCase()];
  });
}

/** Whether a formula calls a function of ours. */
export const callsOurs = (formula: string): boolean =>
  formula.toUpperCase().includes(OURS) && functionsIn(lex(formula)).some(isOurs);
