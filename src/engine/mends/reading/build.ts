import { LexerNode } from '@univerjs/engine-formula';
import { placeOf } from '../../../formula/sheetPlace';
import { cellError } from '../../../formula/errors';
import { type Argument, type Expression, type ExpressionOf, readExpression, Unreadable } from './grammar';
import { commonNode, constant, letNode, list, nameOf, type OwnNode, rangeNode } from './nodes';

/** What the parser of the library takes: an operator or a word, or a node; operators stand behind their two values. */
type Piece = string | LexerNode;

/** What a name of LET or LAMBDA stands for. */
type Binding =
  /** A value that the call of a LAMBDA gives, told apart from all others by its token. */
  | { readonly token: string }
  | {
      readonly scope: OwnNode;
      readonly index: number;
      readonly value: Argument;
      /** The names that hold where the value is written. */
      readonly names: Names;
    };
type Names = ReadonlyMap<string, Binding>;
const NO_NAMES: Names = new Map();

interface Lambda {
  readonly params: readonly string[];
  readonly body: Argument;
  readonly names: Names;
}

/** The text that a name of the workbook stands for. */
export type NameText = (name: string, before: string) => string | undefined;

const ARGUMENT = 'P_1';
/** Signs of a sum that are built one below the other. */
const STRETCH = 100;
/** Calls of functions that names stand for, one in the other, and in all: each is written out in its place. */
const MOST = { depth: 64, calls: 2000 } as const;
const ENDLESS =
  'A LAMBDA calls itself here, or others call each other without end: this grid does not calculate that.';

/** Functions that take any number of ranges, and a range in several pieces like the pieces one by one. */
const TAKES_PIECES: ReadonlySet<string> = new Set(
  `SUM AVERAGE COUNT COUNTA MAX MIN PRODUCT SUMSQ MEDIAN MODE MODE.SNGL MODE.MULT STDEV STDEV.S STDEV.P STDEVP STDEVA STDEVPA
  VAR VAR.S VAR.P VARP VARA VARPA AVERAGEA MAXA MINA GEOMEAN HARMEAN DEVSQ AVEDEV KURT SKEW SKEW.P GCD LCM MULTINOMIAL AND OR
  XOR CONCAT SUBTOTAL AGGREGATE`.split(/\s+/),
);
/** Those that look at the numbers of a list, in whatever pieces: they get one column of all that is not empty. */
const TAKES_COLUMN: ReadonlySet<string> = new Set(
  `LARGE SMALL RANK RANK.EQ RANK.AVG PERCENTILE PERCENTILE.INC PERCENTILE.EXC QUARTILE QUARTILE.INC QUARTILE.EXC PERCENTRANK
  PERCENTRANK.INC PERCENTRANK.EXC TRIMMEAN`.split(/\s+/),
);
const NO_PIECES =
  'Ranges with a comma between them, in brackets, are not understood here: write a comma only between arguments.';

function nodeOf(token: string, children: readonly Piece[] = []): LexerNode {
  const node = new LexerNode();
  node.setToken(token);
  return filled(node, children);
}

function filled<T extends LexerNode>(node: T, children: readonly Piece[]): T {
  node.setChildren([...children]);
  for (const child of children) if (child instanceof LexerNode) child.setParent(node);
  return node;
}

/** Turns a formula into the pieces of which the library makes its tree. */
export class Builder {
  /** Names of the workbook that the formula uses, known or not. */
  readonly used = new Set<string>();
  readonly #textOf: NameText;
  #tokens = 0;
  #calls = 0;
  #depth = 0;

  constructor(textOf: NameText) {
    this.#textOf = textOf;
  }

  root(expression: Expression): LexerNode {
    const root = nodeOf('R_1', this.#pieces(expression, NO_NAMES));
    root.setDefinedNames([...this.used]);
    return root;
  }

  #argument(argument: Argument, names: Names): LexerNode {
    return nodeOf(ARGUMENT, argument ? this.#pieces(argument, names) : []);
  }

  #pieces(expression: Expression, names: Names): Piece[] {
    switch (expression.kind) {
      case 'value':
        return [constant(expression.value)];
      case 'list':
        return [list(expression.rows)];
      case 'corner':
        return [oneSheet(expression.text)];
      case 'columns':
        return [expression.text];
      case 'name':
        return this.#name(expression, names);
      case 'call':
        return this.#call(expression, names);
      case 'applied': {
        const lambda = this.#lambdaOf(expression.callee, names);
        if (!lambda)
          throw new Unreadable('Only a LAMBDA can be given arguments in brackets behind a bracket.');
        return [this.#applied(lambda, expression.args, names)];
      }
      case 'joined':
        return this.#joined(expression, names);
      case 'signed':
        return this.#signed(expression, names);
      case 'range':
        return [this.#range(expression, names)];
      case 'common':
        return [
          filled(commonNode(), [
            ...this.#pieces(expression.left, names),
            ...this.#pieces(expression.right, names),
          ]),
        ];
      case 'union':
        throw new Unreadable(NO_PIECES);
    }
  }

  /**
   * Long sums lean to the left, and the engine goes down them step by step, in deep trees until it falls. So they are built in
   * stretches of a flat LET, each of which begins with what the one before gave.
   */
  #joined(expression: ExpressionOf<'joined'>, names: Names): Piece[] {
    const rights: ExpressionOf<'joined'>[] = [];
    let first: Expression = expression;
    for (; first.kind === 'joined'; first = first.left) rights.push(first);
    rights.reverse();
    const stretches: Piece[][] = [this.#pieces(first, names)];
    const scope = letNode();
    for (const [i, { sign, right }] of rights.entries()) {
      if (i > 0 && i % STRETCH === 0) stretches.push([nameOf(scope, stretches.length - 1)]);
      stretches.at(-1)?.push(...this.#pieces(right, names), sign);
    }
    const [only = []] = stretches;
    return stretches.length === 1
      ? only
      : [
          filled(
            scope,
            stretches.map((pieces) => nodeOf(ARGUMENT, pieces)),
          ),
        ];
  }

  /** The library's own minus takes no value that another sign or a name gives: it is taken from 0, which is the same. */
  #signed({ sign, of }: ExpressionOf<'signed'>, names: Names): Piece[] {
    const pieces = this.#pieces(of, names);
    return sign === '-' ? [constant(0), ...pieces, '-'] : [nodeOf(sign, pieces)];
  }

  /** The library's own sign joins two corners of one sort. What else stands there is joined by what it refers to. */
  #range({ from, to }: ExpressionOf<'range'>, names: Names): LexerNode {
    const corners = [from, to].map(cornerOf);
    const [start, end] = corners;
    if (start === undefined || end === undefined)
      return filled(rangeNode(), [...this.#pieces(from, names), ...this.#pieces(to, names)]);
    return nodeOf(
      ':',
      [start, end].map((corner) => nodeOf(ARGUMENT, [nodeOf(corner)])),
    );
  }

  #name({ name, before }: ExpressionOf<'name'>, names: Names): Piece[] {
    const bound = before === '' ? names.get(name.toLowerCase()) : undefined;
    if (bound) return ['token' in bound ? bound.token : nameOf(bound.scope, bound.index)];
    const stands = this.#definition(name, before);
    return stands ? this.#inside(() => this.#pieces(stands, NO_NAMES)) : [before + name];
  }

  /** What a name of the workbook stands for. */
  #definition(name: string, before: string): Expression | undefined {
    this.used.add(name);
    const text = this.#textOf(name, before);
    return text === undefined ? undefined : readExpression(text);
  }

  /** Goes into what a name stands for. */
  #inside<T>(build: () => T): T {
    if (++this.#depth > MOST.depth || ++this.#calls > MOST.calls) throw new Unreadable(ENDLESS);
    const built = build();
    this.#depth--;
    return built;
  }

  #call({ name, args }: ExpressionOf<'call'>, names: Names): Piece[] {
    if (name === 'LET') return [this.#let(args, names)];
    if (name === 'LAMBDA') return [this.#lambda(lambdaFrom(args, names))];
    const [first] = args;
    const areas = name === 'AREAS' && first ? this.#unionIn(first, names) : undefined;
    if (areas) return [constant(areas.parts.length)];
    const made = this.#lambdaNamed(name, names);
    if (made) return [this.#applied(made, args, names)];
    return [
      nodeOf(
        name,
        args.flatMap((argument) => this.#given(name, argument, names)),
      ),
    ];
  }

  /** One argument of a function; several where it is a range in pieces. */
  #given(name: string, argument: Argument, names: Names): LexerNode[] {
    const union = argument && this.#unionIn(argument, names);
    if (!union) return [this.#argument(argument, names)];
    const pieces = union.parts.map((part) => this.#argument(part, names));
    if (TAKES_PIECES.has(name)) return pieces;
    if (name === 'INDEX') return [nodeOf(ARGUMENT, [nodeOf('CUBE', pieces)])];
    if (TAKES_COLUMN.has(name)) return [nodeOf(ARGUMENT, [this.#column(union, names)])];
    throw new Unreadable(NO_PIECES);
  }

  /** A range in pieces, also one that has a name. */
  #unionIn(argument: Expression, names: Names): ExpressionOf<'union'> | undefined {
    if (argument.kind === 'union') return argument;
    if (argument.kind !== 'name' || names.has(argument.name.toLowerCase())) return undefined;
    const stands = this.#definition(argument.name, argument.before);
    return stands?.kind === 'union' ? stands : undefined;
  }

  /** All cells of several ranges that are not empty, in one column. */
  #column({ parts }: ExpressionOf<'union'>, names: Names): LexerNode {
    const columns = parts.map((part) => {
      const withoutEmpty = nodeOf(ARGUMENT, [constant(1)]);
      return nodeOf(ARGUMENT, [nodeOf('TOCOL', [this.#argument(part, names), withoutEmpty])]);
    });
    return nodeOf('VSTACK', columns);
  }

  /** LET(a,1,b,a+1,a*b): each value knows the names before it. */
  #let(args: readonly Argument[], names: Names): LexerNode {
    if (args.length < 3 || args.length % 2 === 0)
      throw new Unreadable('LET takes names and values by turns, and last what is made of them.');
    const scope = letNode();
    let inside = names;
    const children: LexerNode[] = [];
    for (let i = 0; i + 1 < args.length; i += 2) {
      const value = args[i + 1];
      children.push(this.#argument(value, inside));
      const bound: Binding = { scope, index: i / 2, value, names: inside };
      inside = new Map([...inside, [plainName(args[i]), bound]]);
    }
    return filled(scope, [...children, this.#argument(args.at(-1), inside)]);
  }

  /** A function as a value, for MAP and its like: they give values to the tokens. */
  #lambda({ params, body, names }: Lambda): LexerNode {
    const tokens = params.map((param) => [param, { token: `λ${++this.#tokens}` }] as const);
    const inside: Names = new Map([...names, ...tokens]);
    return nodeOf('LAMBDA', [
      ...tokens.map(([, { token }]) => nodeOf(ARGUMENT, [token])),
      this.#argument(body, inside),
    ]);
  }

  /** A call of a LAMBDA that stands there or has a name is what LET says: its parameters are names for the arguments. */
  #applied({ params, body, names }: Lambda, args: readonly Argument[], outside: Names): LexerNode {
    if (args.length !== params.length) return constant(cellError('#VALUE!'));
    return this.#inside(() => {
      const scope = letNode();
      const children = args.map((argument) => this.#argument(argument, outside));
      const bound = params.map(
        (param, index) => [param, { scope, index, value: args[index], names: outside }] as const,
      );
      return filled(scope, [
        ...children,
        this.#argument(body, new Map<string, Binding>([...names, ...bound])),
      ]);
    });
  }

  #lambdaNamed(name: string, names: Names): Lambda | undefined {
    const bound = names.get(name.toLowerCase());
    if (bound) return 'token' in bound || !bound.value ? undefined : this.#lambdaOf(bound.value, bound.names);
    const stands = this.#definition(name, '');
    return stands && this.#lambdaOf(stands, NO_NAMES);
  }

  #lambdaOf(expression: Expression, names: Names): Lambda | undefined {
    if (expression.kind === 'name') return this.#inside(() => this.#lambdaNamed(expression.name, names));
    return expression.kind === 'call' && expression.name === 'LAMBDA'
      ? lambdaFrom(expression.args, names)
      : undefined;
  }
}

function lambdaFrom(args: readonly Argument[], names: Names): Lambda {
  if (args.length === 0) throw new Unreadable('LAMBDA takes names, and last what is made of them.');
  return { params: args.slice(0, -1).map(plainName), body: args.at(-1), names };
}

const cornerOf = (expression: Expression): string | undefined =>
  expression.kind === 'corner' ? oneSheet(expression.text) : undefined;

function plainName(argument: Argument): string {
  if (argument?.kind === 'name' && argument.before === '') return argument.name.toLowerCase();
  throw new Unreadable('The names that LET and LAMBDA give are words, and no cells: rate, not A1.', '#NAME?');
}

/** Jan:Dec!A1 is understood by no function here. */
function oneSheet(text: string): string {
  const cut = text.lastIndexOf('!') + 1;
  if (cut > 0 && placeOf(text.slice(0, cut)).sheets.length > 1)
    throw new Unreadable('Cells of several sheets at once are not known here: name each sheet by itself.');
  return text;
}

/** The function that refuses a formula. No formula can call it: its name has a sign that no name has. */
export const REFUSES = '†';

/** The pieces of a formula that gives an error, with a sentence that says why. */
export const unreadable = ({ code, message }: Unreadable): LexerNode =>
  nodeOf('R_1', [
    nodeOf(
      REFUSES,
      [code, message].map((text) => nodeOf(ARGUMENT, [constant(text)])),
    ),
  ]);
