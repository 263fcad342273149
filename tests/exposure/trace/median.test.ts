import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { median } from '../../../src/exposure/trace/median';

describe('the middle value', () => {
  it('is what a sort puts in the middle, or the mean of the two there', () => {
    const number = fc.oneof(fc.double({ min: -1e6, max: 1e6, noNaN: true }), fc.integer({ min: 0, max: 3 }));
    fc.assert(
      fc.property(fc.array(number, { minLength: 1, maxLength: 200 }), (list) => {
        const sorted = Float64Array.from(list).sort();
        const half = sorted.length / 2;
        const wanted = ((sorted[Math.ceil(half) - 1] as number) + (sorted[Math.floor(half)] as number)) / 2;
        // 0 and −0 are one number
        expect(median(Float64Array.from(list)) + 0).toBe(wanted + 0);
      }),
      trials(308),
    );
  });

  it('is found in long lists that are sorted, alike, or turned about', () => {
    const n = 100_000;
    expect(median(Float64Array.from({ length: n + 1 }, (_, i) => i))).toBe(n / 2);
    expect(median(Float64Array.from({ length: n + 1 }, (_, i) => n - i))).toBe(n / 2);
    expect(median(new Float64Array(n).fill(7))).toBe(7);
  });
});
