import { NAMESPACE } from '../catalogue';

/** What the names of our functions begin with. */
export const OURS = `${NAMESPACE}.`;
export const isOurs = (name: string): boolean => name.startsWith(OURS);

/** One piece of a formula as a template writes it. */
export type Token =
  | { readonly kind: 'text' | 'number' | 'operator' | 'space'; readonly raw: string }
  /** Rows of constants: `{16;11;8}`. */
  | { readonly kind: 'constants'; readonly raw: string }
  /** A function's name, with the bracket that follows it. */
  | { readonly kind: 'call'; readonly raw: string; readonly name: string }
  | { readonly kind: 'open' | 'close' | 'comma'; readonly raw: string }
  /** `{reading}`: the cell of that id. */
  | { readonly kind: 'cell'; readonly raw: string; readonly id: string }
  /** `[@Reading]`: this row's cell of the table the formula stands in. */
  | { readonly kind: 'row'; readonly raw: string; readonly column: string }
  /** `Heads[Reading]`: a whole column of a table. */
  | { readonly kind: 'column'; readonly raw: string; readonly table: string; readonly column: string }
  | { readonly kind: 'unknown'; readonly raw: string };

const COLUMN = '[A-Za-z][A-Za-z0-9 ]*';
const CONSTANT = '(?:"(?:[^"]|"")*"|-?(?:\\d+\\.?\\d*|\\.\\d+)(?:[eE][+-]?\\d+)?)';
const PIECES: readonly (readonly [RegExp, (m: RegExpExecArray) => Token])[] = [
  [/\s+/y, (m) => ({ kind: 'space', raw: m[0] })],
  [/"(?:[^"]|"")*"/y, (m) => ({ kind: 'text', raw: m[0] })],
  [/(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y, (m) => ({ kind: 'number', raw: m[0] })],
  [/\{([A-Za-z][A-Za-z0-9]*)\}/y, (m) => ({ kind: 'cell', raw: m[0], id: m[1] as string })],
  [new RegExp(`\\{${CONSTANT}(?:[,;]${CONSTANT})*\\}`, 'y'), (m) => ({ kind: 'constants', raw: m[0] })],
  [new RegExp(`\\[@(${COLUMN})\\]`, 'y'), (m) => ({ kind: 'row', raw: m[0], column: m[1] as string })],
  [
    new RegExp(`([A-Za-z][A-Za-z0-9]*)\\[(${COLUMN})\\]`, 'y'),
    (m) => ({ kind: 'column', raw: m[0], table: m[1] as string, column: m[2] as string }),
  ],
  [/([A-Za-z][A-Za-z0-9.]*)\(/y, (m) => ({ kind: 'call', raw: m[0], name: (m[1] as string).toUpperCase() })],
  [/TRUE|FALSE/y, (m) => ({ kind: 'number', raw: m[0] })],
  [/\(/y, (m) => ({ kind: 'open', raw: m[0] })],
  [/\)/y, (m) => ({ kind: 'close', raw: m[0] })],
  [/,/y, (m) => ({ kind: 'comma', raw: m[0] })],
  [/<=|>=|<>|[-+*/^&=<>%:]/y, (m) => ({ kind: 'operator', raw: m[0] })],
  [/./y, (m) => ({ kind: 'unknown', raw: m[0] })],
];

/** The pieces of a formula, without its leading =. */
export function tokens(formula: string): readonly Token[] {
  const found: Token[] = [];
  const text = formula.replace(/^=/, '');
  for (let at = 0; at < text.length;) {
    for (const [piece, make] of PIECES) {
      piece.lastIndex = at;
      const match = piece.exec(text);
      if (!match) continue;
      found.push(make(match));
      at += match[0].length;
      break;
    }
  }
  return found;
}

/** One call in a formula: its name, and the pieces of each argument. */
export interface Call {
  readonly name: string;
  readonly args: readonly (readonly Token[])[];
  /** Calls around it, this one included, whose names begin with SWEEP. */
  readonly depth: number;
  /** The call that it is an argument of, alone or with others. */
  readonly within: string | undefined;
}

/** Every call of a formula, the inner ones before the outer. Throws nothing: brackets that do not match end the reading. */
export function calls(pieces: readonly Token[]): readonly Call[] {
  const found: Call[] = [];
  interface Open {
    name: string | undefined;
    args: Token[][];
    ours: number;
  }
  const stack: Open[] = [];
  for (const piece of pieces) {
    if (piece.kind !== 'comma' && piece.kind !== 'close')
      for (const open of stack) open.args[open.args.length - 1]?.push(piece);
    if (piece.kind === 'call' || piece.kind === 'open') {
      const name = piece.kind === 'call' ? piece.name : undefined;
      const around = stack[stack.length - 1]?.ours ?? 0;
      stack.push({ name, args: [[]], ours: around + (name !== undefined && isOurs(name) ? 1 : 0) });
    } else if (piece.kind === 'comma') {
      stack[stack.length - 1]?.args.push([]);
      for (const open of stack.slice(0, -1)) open.args[open.args.length - 1]?.push(piece);
    } else if (piece.kind === 'close') {
      const done = stack.pop();
      for (const open of stack) open.args[open.args.length - 1]?.push(piece);
      if (done?.name !== undefined) {
        const args =
          done.args.length === 1 && done.args[0]?.every((t) => t.kind === 'space') ? [] : done.args;
        found.push({ name: done.name, args, depth: done.ours, within: stack[stack.length - 1]?.name });
      }
    }
  }
  return found;
}

/** Whether every bracket of a formula is closed. */
export function isBalanced(pieces: readonly Token[]): boolean {
  let open = 0;
  for (const { kind } of pieces) {
    if (kind === 'call' || kind === 'open') open++;
    if (kind === 'close') open--;
    if (open < 0) return false;
  }
  return open === 0;
}
