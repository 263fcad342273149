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

/** Passes a finite number on (with -0 as 0) and refuses what no cell can hold. */
export function answer(x: number): Result<number> {
  if (Number.isFinite(x)) return x + 0;
  return fail('domain', 'The answer is too large or too small for a cell: check the numbers that go in.');
}
