/** Standard deviation of a median of Gaussian noise, where that of a mean of as many samples is 1: √(π/2). */
export const MEDIAN = 1.25;

const at = (list: Float64Array, i: number): number => list[i] as number;

/**
 * Middle value of the numbers in a buffer, which is reordered on the way: Hoare's FIND (Communications of the ACM 4, 1961),
 * which takes time in proportion to the length where a sort takes more.
 */
export function median(buffer: Float64Array): number {
  const middle = buffer.length >> 1;
  select(buffer, middle);
  const upper = at(buffer, middle);
  if (buffer.length % 2 === 1) return upper;
  let lower = -Infinity;
  for (let i = 0; i < middle; i++) lower = Math.max(lower, at(buffer, i));
  return (lower + upper) / 2;
}

/** Reorders until place k holds what a sort would put there, and nothing before it is greater. */
function select(buffer: Float64Array, k: number): void {
  let left = 0;
  let right = buffer.length - 1;
  while (left < right) {
    const pivot = at(buffer, k);
    let i = left;
    let j = right;
    while (i <= j) {
      while (at(buffer, i) < pivot) i++;
      while (at(buffer, j) > pivot) j--;
      if (i <= j) {
        const held = at(buffer, i);
        buffer[i++] = at(buffer, j);
        buffer[j--] = held;
      }
    }
    if (j < k) left = i;
    if (k < i) right = j;
  }
}
