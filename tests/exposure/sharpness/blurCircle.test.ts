import { describe, expect, it } from 'vitest';
import { blurCircle, DIAGONAL_PARTS } from '../../../src/exposure/sharpness/blurCircle';
import { expectNear, itKeepsItsRanges, value } from '../support';

describe('blur circle of a format', () => {
  it('of 45 by 60 is a diagonal of 75 divided by 1500: 0.05, worked by hand', () => {
    expectNear(value(blurCircle(45, 60)), 0.05);
    expectNear(value(blurCircle(45, 60, 1000)), 0.075);
    expect(DIAGONAL_PARTS).toBe(1500);
  });

  it('is the same upright, and k times as large for a format k times as large', () => {
    expect(blurCircle(24, 36)).toBe(blurCircle(36, 24));
    expectNear(value(blurCircle(36 * 4, 24 * 4)), 4 * value(blurCircle(36, 24)));
  });

  itKeepsItsRanges('BLURCIRCLE', {
    width: [36, 'above 0'],
    height: [24, 'above 0'],
    divisor: [1500, 'above 0'],
  });
});
