import { describe, expect, it } from 'vitest';
import { bendIn } from '../../../src/exposure/trace/bendBetween';
import { expectNear } from '../support';
import { signalOf } from './signals';

/** Values a second apart with these second differences, from 0.5 and level at the start. */
function withBends(...bends: readonly number[]): number[] {
  const values = [0.5, 0.5];
  let step = 0;
  for (const bend of bends) {
    step += bend;
    values.push((values.at(-1) as number) + step);
  }
  return values;
}
/** Bend in the cell between the two samples at which the light bends so. */
const between = (left: number, right: number): number =>
  bendIn(signalOf(withBends(left, right), { times: [0, 1, 2, 3] }), 1);

describe('the bend of the light between two samples', () => {
  it('is that of the parabola on which they lie: k·width² of k·t², at even times or not', () => {
    const k = 3e-5;
    for (const side of [1, -1])
      for (const times of [
        [1, 2, 3, 4, 5, 6],
        [1, 1.5, 3.5, 4, 6, 6.25],
      ]) {
        const signal = signalOf(
          times.map((t) => 0.3 + side * k * (t - 2) ** 2),
          { times },
        );
        for (const i of [1, 2, 3]) {
          const width = (times[i + 1] as number) - (times[i] as number);
          expectNear(bendIn(signal, i), side * k * width * width, 1e-9);
        }
      }
  });

  it('is the same at a steady interval of any length', () => {
    const values = [5, 4, 3, 2, 1, 2, 3].map((x) => 0.1 + 1e-5 * x * x);
    for (const step of [0.25, 4]) expectNear(bendIn(signalOf(values, { times: [step] }), 1), 1e-5, 1e-9);
  });

  it('is the mean of those at either end, of which none is more than twice the other', () => {
    const unit = 2 ** -12;
    expectNear(between(unit, 1.5 * unit), 0.625 * unit);
    expectNear(between(1.5 * unit, unit), 0.625 * unit);
    // just twice is told, as these numbers have no rounding
    expect(between(unit, 2 * unit)).toBe(0.75 * unit);
    expect(between(2 * unit, unit)).toBe(0.75 * unit);
    expect(between(-unit, -2 * unit)).toBe(-0.75 * unit);
    for (const wide of [2.1, 8, -2.1]) {
      expect(between(unit, wide * unit)).toBe(0);
      expect(between(wide * unit, unit)).toBe(0);
    }
  });

  it('is none where samples are coarse: from 5 parts in 10 000 of the height', () => {
    for (const side of [1, -1]) {
      expectNear(between(side * 9.8e-4, side * 9.8e-4), side * 4.9e-4, 1e-9);
      expect(between(side * 1.02e-3, side * 1.02e-3)).toBe(0);
    }
    expectNear(between(8e-4, 1.16e-3), 4.9e-4, 1e-9);
    expect(between(8e-4, 1.24e-3)).toBe(0);
  });

  it('is none in the first and the last cell, where one end has no samples on both sides', () => {
    const signal = signalOf(withBends(1e-4, 1e-4, 1e-4), { times: [1, 2, 3, 4, 5] });
    expect([0, 1, 2, 3].map((i) => bendIn(signal, i) !== 0)).toEqual([false, true, true, false]);
  });

  it('is none in the last cell though blank rows follow, which would go on with the parabola', () => {
    const values = [5, 4, 3, 2, 1, 0, 0].map((x) => 1e-4 * x * x);
    const signal = signalOf(values);
    expect(signal.samples.count).toBe(5);
    expectNear(bendIn(signal, 2), 1e-4, 1e-9);
    expect(bendIn(signal, 3)).toBe(0);
  });
});
