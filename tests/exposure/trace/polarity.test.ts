import { describe, expect, it } from 'vitest';
import { polarityOf } from '../../../src/exposure/trace/polarity';
import { signalOf } from './signals';

const wayOf = (values: readonly number[], base?: number) => polarityOf(signalOf(values).samples, base);
/** The same light, recorded downward. */
const turned = (values: readonly number[]): number[] => values.map((value) => 500 - value);
const row = (count: number, value: number): number[] => Array.from({ length: count }, () => value);

describe('the way light goes above a base that is given', () => {
  it('is that of the extreme which lies farther from it', () => {
    expect(wayOf([1, 5, 2], 2.9)).toBe(1);
    expect(wayOf([1, 5, 2], 3.1)).toBe(-1);
    expect(wayOf([-3, 1, -1], 0)).toBe(-1);
    expect(wayOf([-3, 1, -1], -2)).toBe(1);
  });

  it('is upward where both lie as far', () => {
    expect(wayOf([1, 5, 2], 3)).toBe(1);
  });
});

describe('the way light goes', () => {
  it('is that on which a pulse stands out from both ends, however long it is', () => {
    for (const [first, last] of [
      [100, 100],
      [108, 100],
      [100, 108],
    ] as const) {
      const long = [first, ...row(50, 110), last];
      expect(wayOf(long)).toBe(1);
      expect(wayOf(turned(long))).toBe(-1);
    }
  });

  it('is that of the ends where these differ by more than a tenth of the range, else that of the mean', () => {
    // From ends at 100 and `last`, the range of 10 rises by 10 and falls by `last` − 100.
    const mostlyBright = (last: number): number[] => [100, ...row(50, 110), last];
    expect(wayOf(mostlyBright(108.9))).toBe(1);
    expect(wayOf(mostlyBright(109.1))).toBe(-1);
    expect(wayOf(mostlyBright(109))).toBe(-1);
    const mostlyDark = (last: number): number[] => [110, ...row(50, 100), last];
    expect(wayOf(mostlyDark(101.1))).toBe(-1);
    expect(wayOf(mostlyDark(100.9))).toBe(1);
  });

  it('is that of the mean as far as the ends differ by four times their noise besides', () => {
    // A bright recording with a range of 10, which rises by 10 and falls by `first` − 100. Before its end it goes up and down
    // by 1, so that the noise is 1 / (0.6745·√2), and four times that 4.193.
    const noisy = (count: number, jumping: number, first: number): number[] => [
      first,
      ...row(count - jumping - 2, 110),
      ...Array.from({ length: jumping }, (_, i) => 109 + (i % 2)),
      100,
    ];
    // The noise is told by the last tenth, or the last 200.
    for (const [count, jumping] of [
      [200, 20],
      [400, 40],
      [3000, 120],
    ] as const) {
      expect(wayOf(noisy(count, jumping, 104.7))).toBe(1);
      expect(wayOf(noisy(count, jumping, 104.9))).toBe(-1);
    }
    // A tenth of fewer than 200 samples is too short to tell noise by, so a tenth of the range alone decides.
    expect(wayOf(noisy(199, 20, 108.9))).toBe(1);
    expect(wayOf(noisy(199, 20, 109.1))).toBe(-1);
  });

  it('is that which is dark for most of the time, where the recording goes from the peak to the dark', () => {
    expect(wayOf([110, ...row(9, 101), 100])).toBe(1);
    expect(wayOf([100, ...row(9, 109), 110])).toBe(-1);
    expect(wayOf([-10, ...row(9, -1), -0.5])).toBe(-1);
    expect(wayOf([10, 6, 4, 0.5])).toBe(1);
  });

  it('is upward where the mean lies in the middle', () => {
    expect(wayOf([2, 3, 4])).toBe(1);
  });
});
