import { describe, expect, test } from 'vitest';
import { filterNamed } from '../../src/cells/filter';

describe('the name of a filter', () => {
  test('says its density to the last digit where a density is wanted', () => {
    // the decimal logarithm of 10^0.07 is 0.07 only to sixteen digits
    for (const density of [0.04, 0.07, 0.9, 1.2])
      expect(filterNamed(`nd ${density}`, 'density')).toBe(density);
  });
  test('says the same in whatever is wanted', () => {
    // a density of 0.6 lets 10^-0.6 = 0.2512 of the light pass, which takes 0.6 / 0.30103 = 1.9932 stops
    expect(filterNamed('nd 0.6', 'transmission')).toBeCloseTo(0.251_189, 6);
    expect(filterNamed('nd 0.6', 'factor')).toBeCloseTo(3.981_072, 6);
    expect(filterNamed('nd 0.6', 'stops')).toBeCloseTo(1.993_157, 6);
    // 8 is 2^3, of which the decimal logarithm is 3 × 0.30103
    expect(filterNamed('8x', 'density')).toBeCloseTo(0.903_09, 5);
    expect(filterNamed('x8', 'transmission')).toBe(0.125);
    expect(filterNamed('nd8', 'stops')).toBe(3);
    expect(filterNamed('3 stops', 'density')).toBeCloseTo(0.903_09, 5);
  });

  /** By 0.30103 a stop: 3 stops are ND 0.9 and a factor of 2^3; 20 stops, the most, are ND 6.0 and one of 2^20. */
  test.each([
    ['nd3', 'may be a factor, a density or stops: write ND 0.9 or 8x where it takes 3 stops'],
    ['nd20', 'may be a factor, a density or stops: write ND 6.0 or 1048576x where it takes 20 stops'],
    ['nd21', 'may be a factor, a density or stops: write 21x where that is its factor'],
    ['0.5x', 'is a factor below 1: a density is written ND 0.9'],
    ['1.000x', 'can be read two ways: write 1000, or 1'],
    ['nd 1.200', 'can be read two ways: write 1200, or 1.2'],
  ])('%s is refused, and says why', (text, message) =>
    expect(filterNamed(text, 'stops')).toEqual({ fail: 'unreadable', message }),
  );
});
