import { describe, expect, it } from 'vitest';
import { exactly, exponential, gaussian, halfSine, trapezoid, twoTimes } from './shapes';

/**
 * Widths in µs and shares inside them, worked apart by other programs: the closed forms, and for two decay times three
 * methods that agree (bisection in 60 digits, the roots of a polynomial, floating bisection with Simpson's rule).
 */
const APART = [
  [exponential(1000), 0.1, 2302.585092994, 0.9],
  [exponential(1000), 0.5, 693.14718055995, 0.5],
  [exponential(1000), 0.9, 105.36051565783, 0.1],
  [twoTimes(50, 400), 0.1, 1089.3918330173, 0.92533466700166],
  [twoTimes(50, 400), 0.4, 520.57220548895, 0.69556987142236],
  [twoTimes(50, 400), 0.9, 135.309057286, 0.2425066802397],
  [twoTimes(10, 1000), 0.1, 2358.1485302826, 0.90449643726768],
  [twoTimes(10, 1000), 0.5, 743.19432816918, 0.52099966460534],
  [twoTimes(10, 1000), 0.9, 141.46713880878, 0.12924465336791],
  [twoTimes(100, 300), 0.5, 445.26267088435, 0.68404028665134],
  [twoTimes(200, 250), 0.1, 1091.4382404843, 0.95424593067574],
  [gaussian(100), 0.2, 358.82451559882, 0.92720639393637],
  [gaussian(100), 0.5, 235.48200450309, 0.76096810855049],
  [gaussian(100), 0.9, 91.808721005284, 0.35379714683506],
  [halfSine(1000), 0.1, 936.23143914148, 0.99498743710662],
  [halfSine(1000), 0.6, 590.33447060173, 0.8],
  [halfSine(1000), 0.9, 287.13258625741, 0.43588989435407],
  [trapezoid(100, 300, 200), 0.1, 570, 0.99666666666667],
  [trapezoid(100, 300, 200), 0.9, 330, 0.73],
  [trapezoid(20, 0, 480), 0.5, 250, 0.75],
] as const;

describe('the shapes that recordings are made of', () => {
  it.each(APART)(
    'are as wide and hold as much light as was worked out apart (%#)',
    (shape, level, width, share) => {
      const exact = exactly(shape, level);
      expect(exact.width / width).toBeCloseTo(1, 10);
      expect(exact.inside).toBeCloseTo(share, 10);
      expect(exact.before + exact.inside + exact.after).toBeCloseTo(1, 14);
    },
  );

  it('rise and fall through a level just where they say', () => {
    for (const [shape, level] of APART) {
      expect(shape.light(shape.fall(level))).toBeCloseTo(level, 12);
      if (shape.name !== 'exponential') expect(shape.light(shape.rise(level))).toBeCloseTo(level, 12);
    }
  });
});
