import * as fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { trials } from '../../full';
import { dialChange } from '../../../src/exposure/distance/dialChange';
import { answerOf, expectNear, itKeepsItsRanges } from '../support';

describe('what to turn a head by', () => {
  it.each([
    [0.4, 0.1, '+0.4'],
    [-1.3, 0.1, '−1.3'],
    [1, 0.1, '+1'],
    [-2, 0.1, '−2'],
    [0, 0.1, '0'],
    [0.04, 0.1, '0'],
    [-0.04, 0.1, '0'],
    [0.3, 0.1, '+0.3'],
    [1 / 3, 1 / 3, '+1/3'],
    [-5 / 3, 1 / 3, '−1 2/3'],
    [2, 1 / 3, '+2'],
    [-0.5, 0.5, '−1/2'],
    [1.5, 0.5, '+1 1/2'],
    [0.5, 1 / 4, '+1/2'],
    [-1.25, 1 / 4, '−1 1/4'],
    [0.5, 1 / 6, '+1/2'],
    [2.4, 1, '+2'],
    [0.4, 0.2, '+0.4'],
    [3, 1.5, '+3'],
    [0.07, 0.01, '+0.07'],
  ])('for %d stops, set in %d, is %s', (stops, step, text) => {
    expect(dialChange(400, 400 * 2 ** stops, step)).toBe(text);
  });

  it('is in tenths unless a step is given', () => {
    // tenth-stops, DIALCHANGE: thirteen tenths down are a factor of 2^(−13 / 10)
    expect(dialChange(400, 400 * 2 ** -1.3)).toBe('−1.3');
    expect(answerOf('DIALCHANGE', 400, 100)).toBe('−2');
  });

  it('of a tie goes to the higher', () => {
    expect(dialChange(100, 100 * 2 ** 0.5, 1)).toBe('+1');
    expect(dialChange(100, 100 * 2 ** -0.5, 1)).toBe('0');
    expect(dialChange(100, 100 * 2 ** -1.5, 1)).toBe('−1');
  });

  it('is read back as the nearest whole number of steps', () => {
    const energy = fc.double({ min: 1, max: 3000, noNaN: true });
    fc.assert(
      fc.property(energy, energy, fc.constantFrom(0.1, 1 / 8, 0.2, 1 / 3, 0.5, 1), (from, to, step) => {
        // Added to a plain f-number's stops, so that the reader of stops reads the text.
        const read =
          2 * Math.log2((answerOf('STOPSHIFT', '8 exact', dialChange(from, to, step)) as number) / 8);
        const exact = Math.log2(to / from);
        expect(Math.abs(read - exact)).toBeLessThanOrEqual(step / 2 + 1e-8);
        expectNear(1 + Math.abs(read / step - Math.round(read / step)), 1, 1e-8);
      }),
      trials(3313),
    );
  });

  itKeepsItsRanges('DIALCHANGE', {
    power: [100, 'above 0'],
    newPower: [200, 'above 0'],
    step: [0.1, 'above 0'],
  });
});
