/** Where something lies between left and right, in pixels. */
export interface Span {
  readonly left: number;
  readonly right: number;
}

/** Pixels beside a cell up to the nearest others of its row that show something; without end where none does. */
export function freeBeside({ left, right }: Span, others: readonly Span[]) {
  const ends = others.filter((other) => other.right <= left).map((other) => other.right);
  const starts = others.filter((other) => other.left >= right).map((other) => other.left);
  return { before: left - Math.max(-Infinity, ...ends), after: Math.min(Infinity, ...starts) - right };
}

/** Further than any paper reaches. */
const FAR = 100_000;

/** The shape that cuts words where they would run into what stands beside them, as the screen does. */
export function cutBeside(cell: Span, others: readonly Span[]): string {
  const { before, after } = freeBeside(cell, others);
  const edge = (free: number): string => `${-Math.min(free, FAR)}px`;
  return `inset(${edge(FAR)} ${edge(after)} ${edge(FAR)} ${edge(before)})`;
}
