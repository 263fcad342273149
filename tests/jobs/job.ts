import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { TestCell } from '../engine/book';

/** What cells hold from a corner: one value, or rows of them. A text that begins with "=" is a formula. */
export type Cells = Readonly<Record<string, TestCell | readonly (readonly TestCell[])[]>>;

/**
 * A recorded flash in columns A (seconds from 0) and B: so many samples of nothing, the samples of the rise, and then a tail of
 * e^(−i/decay), i = 1 … samples.
 */
export interface Recording {
  readonly says: string;
  /** Seconds from one sample to the next. */
  readonly interval: number;
  readonly nothing: number;
  readonly rise: readonly number[];
  readonly tail: { readonly samples: number; readonly decay: number };
}

/** What goes to the balance of several heads at several points: readings point by head, as typed. */
export interface Balance {
  readonly readings: readonly (readonly string[])[];
  readonly targets: readonly string[];
  readonly powers: readonly number[];
  readonly least: readonly number[];
  readonly most: readonly number[];
}

/** What is asked of a balance. `step` null: before the powers are settled on the steps of the dials. */
export interface BalanceCall {
  readonly targets?: readonly string[];
  readonly step: number | null;
  readonly answer: 'worst error' | 'powers' | 'powers and worst error';
}

/** An error value and part of its sentence. */
export interface Refused {
  readonly error: string;
  readonly says?: string;
}
/** Part of a text whose wording is free. */
export interface Contains {
  readonly contains: string;
}
/** A cell's value; null where nothing is laid down. */
export type Value = number | string | null;
export type Expected = Value | readonly Value[] | readonly (readonly Value[])[] | Refused | Contains | Parts;
/** The parts of a library's answer, by name. */
export interface Parts {
  readonly powers: readonly number[];
  readonly worst: number;
}

/** How near a number must come: by a name, or by figures and the reason for them. */
export type Within = keyof typeof MARGINS | Margin;
export interface Margin {
  readonly why: string;
  readonly absolute?: number;
  readonly relative?: number;
  /** How far below, and how far above. */
  readonly under?: number;
  readonly over?: number;
}
export const MARGINS = {
  'seven figures': { relative: 1e-6, why: 'as many as a pocket calculator shows' },
  exactly: { absolute: 1e-9, why: 'counted, or a decimal number without a rest' },
  'to the cent': { absolute: 0.001, why: 'a cent more or less is another price' },
} satisfies Record<string, Margin>;

/** One question of a job. Its cells stand on the sheet of the job, in place of what the job has there. */
export interface Step {
  readonly asks: string;
  readonly cells?: Cells;
  /** The formula as typed, or what is asked of the balance, for which there is no function. */
  readonly formula?: string;
  readonly balance?: BalanceCall;
  readonly expect: Expected;
  readonly within?: Within;
  /** The sum, line by line, by somebody who did not write the function. */
  readonly working: readonly string[];
  /** Where the rule comes from. */
  readonly source: string;
  /** What is not laid down, or, beginning with "doubt", what the answer must not hide. */
  readonly note?: string;
}

export interface Job {
  readonly title: string;
  readonly story: string;
  /** What stands in the columns. */
  readonly columns?: Readonly<Record<string, string>>;
  readonly cells?: Cells;
  readonly recording?: Recording;
  readonly balance?: Balance;
  readonly steps: readonly Step[];
}

/** Every job of the folder, by the name of its file. */
export const JOBS: ReadonlyMap<string, Job> = new Map(
  readdirSync(import.meta.dirname)
    .filter((name) => name.endsWith('.json'))
    .sort()
    .map((name) => [
      name.replace(/\.json$/, ''),
      JSON.parse(readFileSync(join(import.meta.dirname, name), 'utf8')) as Job,
    ]),
);

export const isRefused = (expected: Expected): expected is Refused =>
  typeof expected === 'object' && expected !== null && 'error' in expected;
export const isContains = (expected: Expected): expected is Contains =>
  typeof expected === 'object' && expected !== null && 'contains' in expected;
export const isParts = (expected: Expected): expected is Parts =>
  typeof expected === 'object' && expected !== null && 'powers' in expected;
/** The numbers and texts that are laid down, in rows. */
export function rowsOf(expected: Exclude<Expected, Refused | Contains>): Value[][] {
  if (isParts(expected)) return [[...expected.powers], [expected.worst]];
  if (!Array.isArray(expected)) return [[expected as Value]];
  const list = expected as readonly (Value | readonly Value[])[];
  return list.every(Array.isArray) ? (list as Value[][]) : [list as Value[]];
}
