import { Decimal } from 'decimal.js';
import * as fc from 'fast-check';
import { expect, it } from 'vitest';
import { trials } from '../full';
import type { Result } from '../../src/exposure/core/result';
import { value } from './support';

/**
 * Every closed formula worked out a second time, from its statement, in decimal arithmetic of 50 digits.
 * Numbers are held to a relative 1e-12. Results in stops are rounded to 1e-12 on purpose: they are held to that, and to
 * one such rounding more for each rounded part they are made of.
 */
Decimal.set({ precision: 50 });
/** The number itself and not its shortest decimal text, which Decimal would read: a whole number over a power of two. */
export function D(x: Decimal.Value): Decimal {
  if (typeof x !== 'number') return new Decimal(x);
  let whole = x;
  let halvings = 0;
  while (!Number.isInteger(whole)) {
    whole *= 2;
    halvings++;
  }
  return new Decimal(BigInt(whole).toString()).div(new Decimal(2).pow(halvings));
}
const TWO = D(2);
export const PI = Decimal.acos(-1);
export const two = (power: Decimal.Value): Decimal => TWO.pow(D(power));
export const log2 = (x: Decimal.Value): Decimal => Decimal.log2(D(x));
export const sum = (list: readonly Decimal[]): Decimal => list.reduce((a, b) => a.plus(b), D(0));

const RUNS = trials(2024, 120);
export const decades = (low: number, high: number): fc.Arbitrary<number> =>
  fc.double({ min: low, max: high, noNaN: true }).map((x) => 10 ** x);
export const wide = decades(-6, 6);
export const reading = decades(-2, 3);
export const metres = decades(-2, 2);
export const stops = fc.double({ min: -12, max: 12, noNaN: true });
export const readings = fc.array(reading, { minLength: 1, maxLength: 8 });
/** Two numbers any distance apart, nearly equal ones as well. */
export const pair = fc.oneof(
  fc.tuple(wide, wide),
  fc
    .tuple(wide, fc.double({ min: -12, max: -2, noNaN: true }))
    .map(([a, e]) => [a, a * (1 + 10 ** e)] as const),
);

export type Wanted =
  | Decimal
  | { readonly stops: Decimal; readonly roundings?: number }
  | { readonly of: Decimal; readonly relative: number };

function agree(came: number, wanted: Wanted): void {
  const exact = wanted instanceof Decimal ? wanted : 'stops' in wanted ? wanted.stops : wanted.of;
  const off = D(came).minus(exact).abs().toNumber();
  const allowed =
    wanted instanceof Decimal
      ? 1e-12 * exact.abs().toNumber()
      : 'stops' in wanted
        ? 1e-12 * (wanted.roundings ?? 1)
        : wanted.relative * exact.abs().toNumber();
  expect(off, `${came} for ${exact.toPrecision(20)}`).toBeLessThanOrEqual(allowed);
}

/** States that a function of the arguments drawn gives what its formula gives. */
export function oracle<A extends unknown[]>(
  title: string,
  draw: fc.Arbitrary<A>,
  run: (...args: A) => Result<number>,
  formula: (...args: A) => Wanted,
): void {
  it(title, () => {
    fc.assert(
      fc.property(draw, (args) => agree(value(run(...args)), formula(...args))),
      RUNS,
    );
  });
}
export const args = fc.tuple;
