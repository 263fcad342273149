import { at } from '../../core/at';
import { spokenHeads } from '../../core/spokenHeads';
import { SLACK } from '../../core/numbers';
import { fail, type Fail } from '../../core/result';
import type { Vector } from '../../core/vector';
import { length, type PivotedQr } from './pivotedQr';

/** A head has a part in a dependence from this share on; below it is rounding error. */
const PART = 1e-7;

/** Heads at the start of a sentence. */
export const named = (heads: readonly number[]): string => spokenHeads(heads).replace('h', 'H');

/**
 * Heads that hang together because one of them can be made of others: the connected parts of the graph that joins each
 * dependent column to those it is made of. A head that is in none can be told from all others.
 */
function tangles(qr: PivotedQr): { heads: number[]; dependent: number }[] {
  let all: { heads: Set<number>; dependent: number }[] = [];
  for (const [k, parts] of qr.makeUp().entries()) {
    const heads = new Set([
      at(qr.order, qr.rank + k),
      ...parts.flatMap((part, i) => (Math.abs(part) > PART ? [at(qr.order, i)] : [])),
    ]);
    const touching = all.filter((other) => [...other.heads].some((h) => heads.has(h)));
    const dependent = touching.reduce((sum, t) => sum + t.dependent, 1);
    all = all.filter((other) => !touching.includes(other));
    all.push({ heads: new Set([...heads, ...touching.flatMap((t) => [...t.heads])]), dependent });
  }
  return all.map(({ heads, dependent }) => ({ heads: [...heads].sort((a, b) => a - b), dependent }));
}

/** Whether two columns are the same up to a factor, and whether the factor is 1. */
function alike(a: Vector, b: Vector): { proportional: boolean; same: boolean } {
  const near = (x: number, y: number): boolean => Math.abs(x - y) <= SLACK;
  const [p, q] = [length(a), length(b)];
  return {
    proportional: a.every((x, i) => near(x / p, at(b, i) / q)),
    same: a.every((x, i) => near(x / p, at(b, i) / p)),
  };
}

/**
 * A refusal for each head that no evaluation can tell from others, undefined for those that stand alone.
 *
 * @param pattern - one column a head, as the user gave it.
 * @param qr - of the columns as they are solved.
 */
export function notToldApart(pattern: readonly Vector[], qr: PivotedQr): (Fail | undefined)[] {
  const refusals: (Fail | undefined)[] = pattern.map(() => undefined);
  for (const { heads, dependent } of tangles(qr)) {
    const [first, ...others] = heads.map((h) => at(pattern, h)) as [Vector, ...Vector[]];
    const twins = others.map((other) => alike(first, other));
    const more = dependent === 1 ? 'add a measurement' : `add ${dependent} measurements`;
    const some = heads.length === 2 ? 'one of them off' : 'some of them off';
    const why = heads.every((h) => length(at(pattern, h)) === 0)
      ? 'is never lit: light it in at least one measurement'
      : twins.every(({ same }) => same)
        ? `are always lit together: ${more} with ${some}`
        : twins.every(({ proportional }) => proportional)
          ? `are always lit in the same proportion: ${more} with ${some}`
          : `cannot be told apart by these measurements: ${more} with other combinations of them lit`;
    for (const h of heads) refusals[h] = fail('no-answer', `${named(heads)} ${why}.`);
  }
  return refusals;
}
