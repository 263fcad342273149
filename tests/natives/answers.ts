/** What a cell shows. */
export type Answer = number | string | boolean | null | { readonly error: string };

/** Numbers that are nearer than this, as a share of the larger, are one: sums in another order differ by less. */
const CLOSE = 1e-10;
const NOTHING = 1e-11;

export const isError = (answer: Answer): answer is { readonly error: string } =>
  typeof answer === 'object' && answer !== null;

const near = (a: number, b: number): boolean =>
  Math.abs(a - b) <= Math.max(NOTHING, CLOSE * Math.max(Math.abs(a), Math.abs(b)));

/** Whether a cell shows the same by both: kind and value. */
export function agree(one: Answer, other: Answer): boolean {
  if (typeof one === 'number' && typeof other === 'number') return near(one, other);
  if (isError(one) && isError(other)) return one.error === other.error;
  return one === other;
}

export const shown = (answer: Answer): string => (isError(answer) ? answer.error : JSON.stringify(answer));
