/**
 * Why there is no answer.
 * `unreadable`: a cell that cannot be read, or is missing. `domain`: a number outside its meaning.
 * `no-answer`: the question is sound but nothing within reach answers it.
 */
export type FailKind = 'unreadable' | 'domain' | 'no-answer';

/** A refusal: a plain value, never thrown. `message` is one sentence for the person at the sheet. */
export interface Fail {
  readonly fail: FailKind;
  readonly message: string;
}

/** `number | Fail` does not compile in arithmetic, so no refusal can be overlooked. */
export type Result<T> = T | Fail;

export const fail = (kind: FailKind, message: string): Fail => ({ fail: kind, message });

export const isFail = (x: unknown): x is Fail => typeof x === 'object' && x !== null && 'fail' in x;

const BEYOND = fail(
  'domain',
  'The answer is too large or too small for a cell: check the numbers that go in.',
);

/** Passes a finite number on (with -0 as 0) and refuses what no cell can hold. */
export const answer = (x: number): Result<number> => (Number.isFinite(x) ? x + 0 : BEYOND);

/** The same for a number above 0, which is 0 only where it has lost all its digits. */
export const answerAboveZero = (x: number): Result<number> => (x > 0 ? answer(x) : BEYOND);
