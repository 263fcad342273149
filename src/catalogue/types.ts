import { at } from '../exposure/core/at';
import { ANY, type Range } from '../exposure/core/range';
import type { Result } from '../exposure/core/result';
import type { Quantity } from './quantities';
import type { SourceKey } from './sources';

/** One of a few words. */
export interface Choice {
  readonly choices: readonly string[];
}

/** TRUE or FALSE. */
export interface Truth {
  readonly truth: true;
}

/** A quantity that another argument decides: by its word, or by whether it is given, and not as none. */
export type Chosen =
  | { readonly by: string; readonly of: Readonly<Record<string, Quantity>> }
  | { readonly given: string; readonly yes: Quantity; readonly no: Quantity };

export type Kind = Quantity | Choice | Truth | Chosen;

/**
 * How many cells an argument takes: `one` (a range then spills); a `list`, whose members pair up with those of the first
 * list; `pairs`, a list that may have a second column; a `pool`, a list that pairs up with none; a `series`, one column of a recording; a `grid`, rows that pair up with
 * the members of the first list.
 */
export type Takes = 'one' | 'list' | 'pairs' | 'pool' | 'series' | 'grid';

export interface Arg<T = unknown> {
  readonly name: string;
  readonly about: string;
  readonly kind: Kind;
  readonly takes: Takes;
  readonly optional: boolean;
  /**
   * Value of an argument that is blank or left out, or of a blank member of a list that may be left out; without one the
   * function is told that it is not there.
   */
  readonly fallback?: T | (T extends readonly (infer Member)[] ? Member : never);
  /** For a list beside another: what a blank member counts as. Without it, the member must be there. */
  readonly blankMember?: number;
  /** For a list: a blank member stays in its place as undefined, and nothing is left out. */
  readonly gaps?: true;
  /** For a list with gaps of what may be 0: an empty text is a gap, and an empty cell is 0 all the same. */
  readonly emptyText?: 'gap';
  readonly range: Range;
  /** What formulas call it, where that is not the sign of its quantity. */
  readonly sign?: string;
  /** One bare number that is no mark makes every bare number of the list exact: a list read to decimals. */
  readonly exactTogether?: true;
}

/** An example: cells as they are typed, and what the function gives. A list is a column; a list of lists is rows. */
export interface Example {
  readonly cells: readonly ExampleCell[];
  readonly gives: Given | readonly Given[] | readonly (readonly Given[])[];
  readonly source?: SourceKey;
}
type Given = number | string;
type Constant = number | string | null;
export type ExampleCell = Constant | boolean | readonly Constant[] | readonly (readonly Constant[])[];

/** One column of an answer that is a table. */
export interface AnswerColumn {
  readonly name: string;
  readonly quantity: Quantity;
}
/** An answer of rows: the columns by name. `endless` has the last of them repeat as often as the answer needs. */
export interface TableAnswer {
  readonly table: readonly AnswerColumn[];
  /** What a row stands for. */
  readonly each: string;
  readonly endless?: true;
}

/** Rows of an answer; a cell of them may be a refusal of its own, or an empty text. */
export type AnswerRows = readonly (readonly Result<number | string>[])[];
/** Several values: of a list, or side by side. A gap leaves its cell blank; a refusal is that of its own cell. */
export type AnswerList = readonly (Result<number> | undefined)[];
export type FunctionAnswer = number | string | AnswerList | AnswerRows;

/** One function as its users meet it. The compiler checks `args` against `run`. */
export interface Row<A extends readonly unknown[] = readonly unknown[]> {
  /** The name after the dot. It never changes once released; new arguments come last and optional. */
  readonly id: string;
  readonly family: Family;
  /** What it gives, in one line. */
  readonly gives: string;
  readonly args: { readonly [K in keyof A]: Arg<A[K]> };
  readonly result: Quantity;
  /** `one` answer; a `list` in the shape of the row's first list; several values side by side, named here; or a table. */
  readonly answers: 'one' | 'list' | readonly string[] | TableAnswer;
  /** The formula in words and signs. */
  readonly formula: string;
  readonly run: (...args: A) => Result<FunctionAnswer>;
  readonly sources: readonly SourceKey[];
  readonly examples: readonly Example[];
  /** Conventions, limits, traps. */
  readonly notes?: string;
  /** What can go wrong on the set, or hurt somebody. */
  readonly caution?: string;
  /** Words of the trade that lead here, beyond those in the texts above. */
  readonly words?: readonly string[];
}
// oxlint-disable-next-line no-explicit-any -- a table of functions with differing arguments has to forget them
export type AnyRow = Row<any>;

export type Family =
  | 'stops'
  | 'light'
  | 'metering'
  | 'loss'
  | 'distance'
  | 'pops'
  | 'duration'
  | 'trace'
  | 'motion'
  | 'sharpness'
  | 'colour'
  | 'supply'
  | 'hire';

/** Headings of the families, in the order shown to people. */
export const FAMILIES: Readonly<Record<Family, string>> = {
  stops: 'Stops and marks',
  light: 'Adding light',
  metering: 'Exposure',
  loss: 'Light lost on the way',
  distance: 'Distance and power',
  pops: 'Building exposure with pops',
  duration: 'Flash and shutter',
  trace: 'Recorded flashes',
  motion: 'Freezing motion',
  sharpness: 'Depth and sharpness',
  colour: 'Colour',
  supply: 'Mains supply',
  hire: 'Hire',
};

type More = { readonly range?: Range; readonly sign?: string };
type TextKind<T extends string> = { readonly choices: readonly T[] };

/** A required argument of one cell. */
export const one = (name: string, about: string, kind: Quantity | Chosen, more: More = {}): Arg<number> => ({
  name,
  about,
  kind,
  takes: 'one',
  optional: false,
  range: ANY,
  ...more,
});

/** An optional argument with a default. */
export const withDefault = (
  name: string,
  about: string,
  kind: Quantity | Chosen,
  fallback: number,
  more: More = {},
): Arg<number> => ({
  ...one(name, about, kind, more),
  optional: true,
  fallback,
});

/** An optional argument that may simply not be there. */
export const maybe = (
  name: string,
  about: string,
  kind: Quantity | Chosen,
  more: More = {},
): Arg<number | undefined> => ({
  ...one(name, about, kind, more),
  optional: true,
});

/** An optional word out of a few; the first of them is the default. */
export const choice = <T extends string>(name: string, about: string, choices: readonly T[]): Arg<T> => ({
  name,
  about,
  kind: { choices } as TextKind<T>,
  takes: 'one',
  optional: true,
  fallback: at(choices, 0),
  range: ANY,
});

/** An optional TRUE or FALSE; FALSE where it is left out. */
export const flag = (name: string, about: string): Arg<boolean> => ({
  name,
  about,
  kind: { truth: true },
  takes: 'one',
  optional: true,
  fallback: false,
  range: ANY,
});

/** A range of cells. Lists of one function pair up by position; positions where the first is blank are left out. */
export const list = (
  name: string,
  about: string,
  kind: Quantity | Chosen,
  more: More & { readonly blankMember?: number; readonly exactTogether?: true } = {},
): Arg<readonly number[]> => ({ name, about, kind, takes: 'list', optional: false, range: ANY, ...more });

/** A range of cells by itself, without the blank ones. */
export const pool = (
  name: string,
  about: string,
  kind: Quantity,
  more: More & { readonly optional?: true } = {},
): Arg<readonly number[]> => ({
  ...list(name, about, kind, more),
  takes: 'pool',
});

/** A range of cells in which a blank one stays in its place, as undefined. */
export const gappedList = (
  name: string,
  about: string,
  kind: Quantity,
  more: More & { readonly emptyText?: 'gap' } = {},
): Arg<readonly (number | undefined)[]> => ({
  name,
  about,
  kind,
  takes: 'list',
  optional: false,
  gaps: true,
  range: ANY,
  ...more,
});

/** The same where it may be left out: undefined where one blank cell, or nothing, is given. */
export const maybeList = (
  name: string,
  about: string,
  kind: Quantity,
  more: More = {},
): Arg<readonly (number | undefined)[] | undefined> => ({
  ...gappedList(name, about, kind, more),
  optional: true,
});

/** A list in which a blank cell counts as the fallback, and which may be left out: then all of it does. */
export const listWithDefault = (
  name: string,
  about: string,
  kind: Quantity,
  fallback: number,
  more: More = {},
): Arg<readonly number[]> => ({ ...list(name, about, kind, more), optional: true, fallback });

/** A list of TRUE and FALSE, or yes and no. A blank cell, and all of them where it is left out, is TRUE. */
export const flags = (name: string, about: string): Arg<readonly boolean[]> => ({
  name,
  about,
  kind: { truth: true },
  takes: 'list',
  optional: true,
  fallback: true,
  range: ANY,
});

/** A range of cells that may have a second column; in both a blank cell stays in its place, as undefined. */
export const pairList = (
  name: string,
  about: string,
  kind: Quantity,
  more: More = {},
): Arg<readonly (readonly [number | undefined, number | undefined])[]> => ({
  name,
  about,
  kind,
  takes: 'pairs',
  optional: false,
  gaps: true,
  range: ANY,
  ...more,
});

/** One column of a recording, as long as it may be. A blank cell is 0. */
export const series = (name: string, about: string, kind: Quantity): Arg<ArrayLike<number>> => ({
  name,
  about,
  kind,
  takes: 'series',
  optional: false,
  range: ANY,
});

/** Rows and columns of cells, a row beside each member of the first list of the function. A blank cell is 0. */
export const grid = (
  name: string,
  about: string,
  kind: Quantity,
  more: More = {},
): Arg<readonly (readonly number[])[]> => ({
  name,
  about,
  kind,
  takes: 'grid',
  optional: false,
  range: ANY,
  ...more,
});

export const define = <A extends readonly unknown[]>(row: Row<A>): Row<A> => row;

export const isChoice = (kind: Kind): kind is Choice => 'choices' in kind;
export const isTable = (answers: AnyRow['answers']): answers is TableAnswer =>
  typeof answers === 'object' && 'table' in answers;
export const isTruth = (kind: Kind): kind is Truth => 'truth' in kind;
export const isChosen = (kind: Kind): kind is Chosen => 'by' in kind || 'given' in kind;
export const isQuantity = (kind: Kind): kind is Quantity => 'title' in kind;
/** Every quantity an argument may turn out to be. */
export const quantitiesOf = (kind: Kind): readonly Quantity[] =>
  isChoice(kind) || isTruth(kind)
    ? []
    : isChosen(kind)
      ? 'by' in kind
        ? Object.values(kind.of)
        : [kind.no, kind.yes]
      : [kind];
