import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { kelvinShift, miredShift } from '../../../src/exposure/colour/mired';
import { expectNear, itKeepsItsRanges, refusal, value } from '../support';

const kelvin = fc.double({ min: 1500, max: 20_000, noNaN: true });

describe('mired shift', () => {
  it('from 5000 to 4000 K is 50, worked by hand', () => {
    expectNear(value(miredShift(5000, 4000)), 50);
    expectNear(value(miredShift(4000, 5000)), -50);
    expectNear(value(kelvinShift(5000, 50)), 4000);
  });

  it('to the same temperature is none', () => {
    expect(miredShift(5600, 5600)).toBe(0);
    expectNear(value(kelvinShift(5600, 0)), 5600);
  });

  it('is undone by the temperature it leads to', () => {
    fc.assert(
      fc.property(kelvin, kelvin, (a, b) => {
        expectNear(value(kelvinShift(a, value(miredShift(a, b)))), b, 1e-11);
      }),
      trials(271),
    );
  });

  it('adds up over a stop on the way, and turns its sign on the way back', () => {
    fc.assert(
      fc.property(kelvin, kelvin, kelvin, (a, b, c) => {
        expect(value(miredShift(a, b)) + value(miredShift(b, c))).toBeCloseTo(value(miredShift(a, c)), 9);
        expect(value(miredShift(b, a))).toBeCloseTo(-value(miredShift(a, b)), 10);
      }),
      trials(272),
    );
  });

  it('warms where it is positive', () => {
    fc.assert(
      fc.property(kelvin, fc.double({ min: 0.01, max: 400, noNaN: true }), (t, shift) => {
        expect(value(kelvinShift(t, shift))).toBeLessThan(t);
      }),
      trials(273),
    );
  });

  it('is k times as large between temperatures k times as low', () => {
    fc.assert(
      fc.property(kelvin, kelvin, fc.double({ min: 0.2, max: 5, noNaN: true }), (a, b, k) => {
        expect(value(miredShift(a / k, b / k))).toBeCloseTo(k * value(miredShift(a, b)), 9);
      }),
      trials(274),
    );
  });

  it('keeps its digits a hundred-millionth of a kelvin apart', () => {
    const to = 5600 + 2 ** -26;
    expectNear(value(miredShift(5600, to)), -(2 ** -26) * (1e6 / 5600 / to));
  });

  itKeepsItsRanges('MIREDSHIFT', { from: [5600, 'above 0'], to: [3200, 'above 0'] });
});

describe('temperature after a shift', () => {
  it('is refused where no mired is left, in words that say how many there are', () => {
    for (const shift of [-200, -200.001, -1000]) {
      const { fail, message } = refusal(kelvinShift(5000, shift));
      expect(fail).toBe('domain');
      expect(message).toContain('200 mired');
    }
    expectNear(value(kelvinShift(5000, -199)), 1e6);
  });

  it('is refused as well where rounding error alone is left', () => {
    // 10⁶ / 3000 as it is typed: a ten-billionth of a mired less than there is.
    expect(refusal(kelvinShift(3000, -333.3333333333)).fail).toBe('domain');
  });

  it('is refused where the mireds to begin with are more than any number', () => {
    expect(refusal(kelvinShift(1e-310, -50)).message).toContain('too large');
  });

  itKeepsItsRanges('KELVINSHIFT', { kelvin: [5600, 'above 0'], mireds: [50, 'any'] });
});
