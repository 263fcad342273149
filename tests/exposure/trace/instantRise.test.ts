import { describe, expect, it } from 'vitest';
import { instantRise } from '../../../src/exposure/trace/instantRise';
import { signalOf } from './signals';

/** The rise at the third sample of a recording, from `dark` to `lit` and on to `next`, with so many samples after it. */
const risen = (
  dark: number,
  lit: number,
  next: number,
  { noise = 0, length = 1000 }: { noise?: number; length?: number } = {},
): number | undefined => instantRise(signalOf([0.3, dark, lit, next, 0.7, 0.2]), 2, 2 + length, noise);

describe('an instant rise', () => {
  it('is the first lit sample, dark before it and next to no step after it', () => {
    expect(risen(0, 1, 0.995)).toBe(2);
    expect(risen(-0.005, 0.9, 0.905)).toBe(2);
  });

  it('is more than half of the height in one cell', () => {
    expect(risen(0, 0.51, 0.51)).toBe(2);
    expect(risen(0, 0.5, 0.5)).toBeUndefined();
    expect(risen(0, 0.49, 0.49)).toBeUndefined();
    // 0.505 from 0.01 below, 0.495 from 0.01 above
    expect(risen(-0.01, 0.495, 0.495)).toBe(2);
    expect(risen(0.01, 0.505, 0.505)).toBeUndefined();
    expect(risen(0, -1, -1)).toBeUndefined();
  });

  it('has no more than a hundredth before it, and takes no more than a hundredth as a step after it', () => {
    for (const side of [1, -1]) {
      expect(risen(side * 0.01, 1, 1)).toBe(2);
      expect(risen(side * 0.011, 1, 1)).toBeUndefined();
      expect(risen(0, 0.9, 0.9 + side * 0.0099)).toBe(2);
      expect(risen(0, 0.9, 0.9 + side * 0.011)).toBeUndefined();
    }
  });

  it('allows for six times the noise more of either', () => {
    // 0.01 + 6 × 0.04 is 0.25
    const noise = 0.04;
    expect(0.01 + 6 * noise).toBe(0.25);
    for (const side of [1, -1]) {
      expect(risen(side * 0.25, 1, 1, { noise })).toBe(2);
      expect(risen(side * 0.26, 1, 1, { noise })).toBeUndefined();
      expect(risen(0, 0.75, 0.75 + side * 0.25, { noise })).toBe(2);
      expect(risen(0, 0.75, 0.75 + side * 0.26, { noise })).toBeUndefined();
    }
  });

  it('is told in a pulse of a thousand steps and more', () => {
    expect(risen(0, 1, 1, { length: 1000 })).toBe(2);
    expect(risen(0, 1, 1, { length: 999 })).toBeUndefined();
  });

  it('is the second sample at the earliest: one must be dark before it', () => {
    const signal = signalOf([0, 1, 1, 0.5]);
    expect(instantRise(signal, 1, 1001, 0)).toBe(1);
    expect(instantRise(signalOf([1, 1, 1, 0.5]), 0, 1001, 0)).toBeUndefined();
  });
});
