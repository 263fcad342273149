import { at } from '../exposure/core/at';
import type { Spot } from './shapes';

const APART = 4;

/** Lines at 45° through a convex polygon. */
export function hatched(polygon: readonly Spot[]): (readonly [Spot, Spot])[] {
  const sums = polygon.map(([x, y]) => x + y);
  const lines: (readonly [Spot, Spot])[] = [];
  for (let sum = Math.ceil(Math.min(...sums) / APART) * APART; sum < Math.max(...sums); sum += APART) {
    const crossings = polygon.flatMap((here, i): Spot[] => {
      const next = at(polygon, (i + 1) % polygon.length);
      const [a, b] = [here[0] + here[1] - sum, next[0] + next[1] - sum];
      if (a < 0 === b < 0) return [];
      const part = a / (a - b);
      return [[here[0] + (next[0] - here[0]) * part, here[1] + (next[1] - here[1]) * part]];
    });
    const [from, to] = crossings;
    if (from && to) lines.push([from, to]);
  }
  return lines;
}
